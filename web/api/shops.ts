import { useQuery } from '@tanstack/react-query';
import { get } from './client.ts';

export interface Shop {
  readonly id: string;
  readonly name: string;
  readonly invented: boolean;
  readonly aircraft: number;
}

export const useShops = () => useQuery({ queryKey: ['shops'], queryFn: () => get<readonly Shop[]>('/api/shops') });
export const shopPath = (shop: string, ...rest: readonly string[]) =>
  ['/api/shops', encodeURIComponent(shop), ...rest.map(encodeURIComponent)].join('/');
