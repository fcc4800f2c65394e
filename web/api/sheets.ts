import { useQuery } from '@tanstack/react-query';
import type { Sheet } from '../../sheets/model.ts';
import { get } from './client.ts';
import { shopPath } from './shops.ts';

export type Query = Readonly<Record<string, string | undefined>>;
export const withQuery = (path: string, query: Query = {}): string => {
  const given = new URLSearchParams();
  for (const [key, value] of Object.entries(query)) if (value) given.set(key, value);
  const text = given.toString();
  return text ? `${path}?${text}` : path;
};

/** A sheet of a shop: the page as data. While the next one comes the last one stays. */
export const useSheet = (shop: string, path: readonly string[], query: Query = {}) =>
  useQuery({
    queryKey: ['sheet', shop, ...path, query],
    queryFn: () => get<Sheet>(withQuery(shopPath(shop, ...path), query)),
    placeholderData: (last) => last,
  });
