import { useQuery } from '@tanstack/react-query';
import type { Sheet } from '../../sheets/model.ts';
import type { ShownLine } from '../../sheets/page-lines.ts';
import type { PapersSheet } from '../../sheets/papers-sheet.ts';
import { get, post, refusalOf, ServerGone, ServerSaidNo } from './client.ts';
import type { NewEntry } from './entries.ts';
import { type Query, withQuery } from './sheets.ts';
import { shopPath } from './shops.ts';

export type { PaperPage, PaperRow, PapersSheet } from '../../sheets/papers-sheet.ts';

/** An entry that may correct another one. */
export interface WrittenEntry extends NewEntry {
  readonly order?: number;
  readonly note?: string;
  readonly replaces?: string;
}
export interface TypedRow {
  readonly day: string;
  readonly flown: string;
  readonly total: string;
  readonly landings: string;
  readonly landings_total: string;
  readonly use: string;
  readonly remarks: string;
}
export interface RowsRead {
  readonly lines: readonly ShownLine[];
  readonly brought: string;
  readonly gaps: readonly { readonly entry: number; readonly words: string }[];
  readonly entries: readonly WrittenEntry[];
}

export const fetchPapers = (shop: string, aircraft: string, query: Query = {}) =>
  get<PapersSheet>(withQuery(shopPath(shop, 'aircraft', aircraft, 'papers'), query));
export const usePapers = (shop: string, aircraft: string, query: Query = {}) =>
  useQuery({
    queryKey: ['papers', shop, aircraft, query],
    queryFn: () => fetchPapers(shop, aircraft, query),
    placeholderData: (last) => last,
  });
export const readRows = (shop: string, aircraft: string, page: unknown) =>
  post<RowsRead>(shopPath(shop, 'aircraft', aircraft, 'papers', 'rows'), page);
export const beforeAndAfter = (shop: string, aircraft: string, entries: readonly WrittenEntry[]) =>
  post<Sheet>(shopPath(shop, 'aircraft', aircraft, 'entries', 'preview'), { entries });
export const writeEntries = (shop: string, entries: readonly WrittenEntry[], expectLast: number) =>
  post<{ numbers: readonly number[] }>(shopPath(shop, 'entries'), { entries, expect_last: expectLast });

/** The log moved on since the page was read, or somebody corrected the same entry first. */
export const cameFirst = (e: unknown): boolean =>
  e instanceof ServerSaidNo && ['store.changed-meanwhile', 'store.entry-replaced'].includes(e.refusal.code);

export interface Scan {
  readonly aircraft: string;
  readonly title: string;
  readonly page: string;
  readonly by: string;
  readonly pages: number;
}
export const LARGEST_BYTES = 20 * 1024 * 1024;
/** Keeps one file as a page of the book, or as the pages of a PDF. */
export async function keepScan(shop: string, file: File, scan: Scan) {
  const form = new FormData();
  for (const [name, value] of Object.entries(scan)) form.append(name, String(value));
  form.append('file', file, file.name);
  let response: Response;
  try {
    response = await fetch(shopPath(shop, 'pages'), { method: 'POST', body: form });
  } catch {
    throw new ServerGone();
  }
  const answer: unknown = await response.json().catch(() => null);
  if (!response.ok) throw new ServerSaidNo(refusalOf(answer, response.status), response.status);
  return answer as { sha256: string; numbers: readonly number[]; already: boolean };
}
