import { stringify } from 'csv-stringify/sync';
import type { Sheet } from '../sheets/index.ts';
import { type FileValue, fileColumns, tablesOf } from './table-cells.ts';

/** Words that a spreadsheet would run as a formula are kept as words by a leading apostrophe. */
const harmless = (words: string): string => (/^[\s]*[=+\-@\t\r\n＝＋－＠]/.test(words) ? `'${words}` : words);
const written = (v: FileValue): string | number | null =>
  v === null || typeof v === 'number' ? v : typeof v === 'string' ? harmless(v) : v.day;

/**
 * The tables of a sheet as CSV, UTF-8 with its mark: one heading line, one line per row. Several tables stand below
 * each other under their titles.
 */
export function sheetCsv(sheet: Sheet): Uint8Array {
  const tables = tablesOf(sheet);
  const lines = tables.flatMap((block, i) => {
    const columns = fileColumns(block);
    const rows = [
      columns.map((c) => harmless(c.heading)),
      ...block.rows.map((r) => columns.map((c) => written(c.of(r)))),
    ];
    return tables.length === 1 ? rows : [...(i ? [[null]] : []), [harmless(block.title)], ...rows];
  });
  return new TextEncoder().encode(stringify(lines, { bom: true, quoted_string: true, record_delimiter: '\r\n' }));
}
