import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { Sheet } from '../../sheets/model.ts';
import { get, post } from './client.ts';
import { type Query, withQuery } from './sheets.ts';
import { shopPath } from './shops.ts';

/** Asked again soon while answers are being computed, else now and then: a page stays open for a day. */
const COMPUTING_MS = 1_500;
const OPEN_MS = 60_000;
/** A page of the fleet: the list itself, its due sheet, its readings wanted. It renews itself. */
export const useFleet = (shop: string, page: readonly ('due' | 'readings')[] = [], query: Query = {}) =>
  useQuery({
    queryKey: ['sheet', shop, 'fleet', ...page, query],
    queryFn: () => get<Sheet>(withQuery(shopPath(shop, 'fleet', ...page), query)),
    placeholderData: (last) => last,
    refetchInterval: (asked) => (asked.state.data?.computing ? COMPUTING_MS : OPEN_MS),
  });

export interface Request {
  readonly aircraft: string;
  readonly words: string;
}
/** Keeps what an owner was asked, in the words that went to him. */
export function useKeepRequest(shop: string) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (kept: { readonly requests: readonly Request[]; readonly by: string }) =>
      post(shopPath(shop, 'fleet', 'readings'), kept),
    onSuccess: () => queries.invalidateQueries(),
  });
}
