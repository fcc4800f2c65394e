import { useMutation, useQueryClient } from '@tanstack/react-query';
import { post, postFile } from './client.ts';
import { shopPath } from './shops.ts';

/** An entry as a form writes it; the server gives it its number and checks it whole. */
export interface NewEntry {
  readonly id: string;
  readonly subject: string;
  readonly day: string;
  readonly kind: string;
  readonly evidence: string;
  readonly body: Readonly<Record<string, unknown>>;
  readonly paper?: Readonly<Record<string, unknown>>;
}

/** Writes entries, then everything that rests on them is asked for again; only then is it said to be done. */
export function useWriteEntries(shop: string, done: () => void) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (entries: readonly NewEntry[]) => post(shopPath(shop, 'entries'), { entries }),
    onSuccess: async () => {
      await queries.invalidateQueries();
      done();
    },
  });
}

export const keepFile = (shop: string, file: File) =>
  postFile<{ sha256: string }>(shopPath(shop, 'files'), file, () => undefined);
