import { useQuery } from '@tanstack/react-query';
import type { Sheet } from '../../sheets/model.ts';
import { get } from './client.ts';
import { withQuery } from './sheets.ts';
import { shopPath } from './shops.ts';

/** Asked again soon while answers are being computed, else now and then: a page stays open for a day. */
const COMPUTING_MS = 1_500;
const OPEN_MS = 60_000;
export const useFleet = (shop: string, day?: string) =>
  useQuery({
    queryKey: ['sheet', shop, 'fleet', { day }],
    queryFn: () => get<Sheet>(withQuery(shopPath(shop, 'fleet'), { day })),
    placeholderData: (last) => last,
    refetchInterval: (query) => (query.state.data?.computing ? COMPUTING_MS : OPEN_MS),
  });
