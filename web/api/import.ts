import type { Sheet } from '../../sheets/model.ts';
import { post, postFile } from './client.ts';
import { shopPath } from './shops.ts';

/** How the columns of a file are to be read (`mapping/1`); kept by the server per shape of file. */
export interface Mapping {
  readonly sparwright: 'mapping/1';
  readonly shape?: string;
  readonly sheet?: string;
  readonly header_row: number;
  readonly columns: Readonly<Record<string, number>>;
  readonly day_order: string;
  readonly two_digit_years_from?: number;
  readonly decimal: string;
  readonly flight_unit?: string;
  readonly meter?: string;
  readonly uses?: Readonly<Record<string, string>>;
  readonly wordings?: Readonly<Record<string, unknown>>;
}

/** A file as it was read, before anything is decided. */
export interface ReadFile {
  readonly importId: string;
  readonly fileName: string;
  readonly sheets: readonly string[];
  readonly header: readonly string[];
  readonly sample: readonly (readonly string[])[];
  readonly rows?: number;
  readonly remembered?: boolean;
  readonly mapping: Mapping;
}

/** Where the rows go: an aircraft of the shop, or a new one. */
export type Target =
  | { readonly id: string }
  | {
      readonly registration: string;
      readonly type: string;
      readonly model: string;
      readonly serial: string;
      readonly built: string;
    };

export interface PreviewRow {
  readonly row: number;
  readonly verdict: 'accepted' | 'refused';
  readonly reason?: string;
  readonly warning?: string;
  readonly cells: readonly string[];
}
export interface Preview {
  readonly rows: readonly PreviewRow[];
  readonly counts: { readonly accepted: number; readonly refused: number; readonly warned?: number };
  readonly totals?: Readonly<Record<string, string>>;
  /** Questions that a person must answer before the rows can be taken. */
  readonly open?: readonly string[];
  readonly notes?: readonly string[];
}

export interface AircraftChoice {
  readonly id: string;
  readonly registration: string;
}

export const readFile = (shop: string, file: File, sent: (part: number | null) => void) =>
  postFile<ReadFile>(shopPath(shop, 'import', 'read'), file, sent);
export const readSheet = (shop: string, importId: string, sheet: string) =>
  post<ReadFile>(shopPath(shop, 'import', importId, 'sheet'), { sheet });
export const preview = (shop: string, importId: string, mapping: Mapping, aircraft: Target) =>
  post<Preview>(shopPath(shop, 'import', importId, 'preview'), { mapping, aircraft });
export const commit = (shop: string, importId: string, mapping: Mapping, aircraft: Target) =>
  post<{ aircraft: string }>(shopPath(shop, 'import', importId, 'commit'), { mapping, aircraft });

/** The aircraft that a list names: from its links. */
export function aircraftOf(sheet: Sheet | undefined, shop: string): readonly AircraftChoice[] {
  const start = `/${shop}/aircraft/`;
  const found = new Map<string, string>();
  for (const block of sheet?.blocks ?? [])
    if (block.block === 'table')
      for (const row of block.rows)
        for (const cell of Object.values(row.cells))
          if (cell.is === 'link' && cell.href.startsWith(start))
            found.set(decodeURIComponent(cell.href.slice(start.length)), cell.text);
  return [...found]
    .map(([id, registration]) => ({ id, registration }))
    .sort((a, b) => a.registration.localeCompare(b.registration, 'en', { numeric: true }));
}
