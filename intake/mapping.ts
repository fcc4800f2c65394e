import { z } from 'zod';
import { parseDocument, record } from '../engine/index.ts';
import { headerRowOf, kindOf, wordsOf } from './columns.ts';
import type { Grid } from './model.ts';

const zColumn = z.int().min(0).max(199).meta({ description: 'Column of the file, from 0' });

/** What a column may be. */
export const COLUMNS = [
  'day',
  'total_h',
  'meter_shows_h',
  'landings_total',
  'flight_h',
  'flight_landings',
  'use',
  'wording',
  'registration',
] as const;
export type Column = (typeof COLUMNS)[number];

/** How the columns of a log are to be read. Remembered per shape of file. */
export const zMapping = z.strictObject({
  sparwright: z.literal('mapping/1'),
  shape: z.string().max(4000).optional(),
  sheet: z.string().max(200).optional(),
  header_row: z.int().min(0).meta({ description: 'Row of the headings as the spreadsheet numbers it; 0: none' }),
  columns: z.partialRecord(z.enum(COLUMNS), zColumn),
  /** `to_be_chosen`: the file does not tell, so a person must. */
  day_order: z.enum(['day_first', 'month_first', 'to_be_chosen']),
  /** Years of two digits lie in the hundred years from here. */
  two_digit_years_from: z.int().min(1900).max(2100).default(1950),
  decimal: z.enum(['point', 'comma', 'to_be_chosen']),
  flight_unit: z.enum(['hours', 'minutes']).default('hours'),
  /** Meter that `meter_shows_h` belongs to. */
  meter: record.zSlug.optional(),
  /** Word of the file, in small letters -> use; `unknown` leaves the use open. */
  uses: z.record(z.string(), record.zSlug).default({}),
  /** Wording of the file, in small letters -> what it is; what is not named is judged by its words. */
  wordings: z
    .record(z.string(), z.union([z.literal('inspection'), z.literal('note'), z.strictObject({ event: record.zSlug })]))
    .default({}),
});
export type Mapping = z.output<typeof zMapping>;
export type MappingInput = z.input<typeof zMapping>;

/** @throws Refusal `foundation.document-invalid` */
export const parseMapping = (input: unknown): Mapping => parseDocument(zMapping, input, 'mapping');

/** Signature of a file: its headings and what stands below them. Two files of one shape take one mapping. */
export function shapeOf(grid: Grid): string {
  const header = headerRowOf(grid);
  const words = wordsOf(grid, header);
  const width = Math.max(words.length, ...grid.rows.slice(0, 50).map((r) => r.cells.length));
  return Array.from({ length: width }, (_, c) => `${words[c] ?? ''}:${kindOf(grid, header, c)}`)
    .join('|')
    .slice(0, 4000);
}
