import { useQuery } from '@tanstack/react-query';
import { get } from './client.ts';

export interface Shop {
  readonly id: string;
  readonly name: string;
  readonly invented: boolean;
  readonly aircraft: number;
  readonly entries: number;
  /** Said while the clock of the machine is behind what was recorded. */
  readonly clock?: string;
}

/** Asked again while a page is open, so that the page can say when the program is gone. */
const AGAIN_MS = 10_000;
export const useShops = () =>
  useQuery({
    queryKey: ['shops'],
    queryFn: () => get<readonly Shop[]>('/api/shops'),
    refetchInterval: AGAIN_MS,
  });
export const shopPath = (shop: string, ...rest: readonly string[]) =>
  ['/api/shops', encodeURIComponent(shop), ...rest.map(encodeURIComponent)].join('/');
