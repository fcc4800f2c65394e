import type { Day, Evidence, record } from '../engine/index.ts';
import { type AddedUp, addUp } from './add-up.ts';
import { entriesFrom } from './entries.ts';
import { dayIn, failed, hoursIn } from './figures.ts';
import type { Line } from './lines.ts';
import type { Mapping } from './mapping.ts';
import { type Cell, EMPTY, type Grid } from './model.ts';
import { judged } from './preview.ts';
import { suggestUse } from './wording.ts';

/** A row of a paper logbook as a person types it beside the scan: text, cell by cell. */
export interface TypedRow {
  readonly day: string;
  readonly flown: string;
  readonly total: string;
  readonly landings: string;
  readonly landings_total: string;
  readonly use: string;
  readonly remarks: string;
}
const COLUMNS = ['day', 'flown', 'total', 'landings', 'landings_total', 'use', 'remarks'] as const;

export interface TypedPage {
  readonly subject: string;
  readonly rows: readonly TypedRow[];
  readonly paper: NonNullable<record.EntryInput['paper']>;
  readonly evidence: Evidence;
  readonly today: Day;
  readonly day_order: 'day_first' | 'month_first';
  /** Uses that the record knows besides the usual ones. */
  readonly uses: readonly string[];
  readonly brought: { readonly total_s: number | null; readonly landings: number | null };
  readonly existing: readonly record.Entry[];
}
/** A typed row as it was understood and added up. */
export interface PageLine {
  readonly row: number;
  readonly day?: Day | undefined;
  readonly flown_s?: number | undefined;
  readonly total_s?: number | undefined;
  readonly landings_total?: number | undefined;
  readonly hours: AddedUp;
  readonly landings: AddedUp;
  /** Why it cannot be written. */
  readonly reason?: string | undefined;
  readonly warnings: readonly string[];
}
export interface PageRead {
  readonly lines: readonly PageLine[];
  /** What would be written; nothing while a row cannot be. */
  readonly entries: readonly record.EntryInput[];
}

/** The rounding of one row to a tenth of an hour: no slip. */
const ROUNDING_S = 180;
const YEARS_FROM = 1950;

/** Reads typed rows by the rules of an imported log, adds them up, and gives the entries that they make. */
export function readPage(page: TypedPage): PageRead {
  const grid = gridOf(page);
  if (grid.rows.length === 0) return { lines: [], entries: [] };
  const mapping = mappingOf(page);
  const context = {
    subject: page.subject,
    title: page.paper.title,
    evidence: page.evidence,
    today: page.today,
    existing: page.existing,
  };
  const { lines } = judged(grid, mapping, context);
  // Adding up is told by its own words at the row, against what was brought forward.
  const told = lines.map((l) => l.warnings.filter((w) => !/grow by/.test(w)));
  const hours = addUp(
    lines.map((l) => ({ flown: l.flight_s, total: l.total_s })),
    page.brought.total_s,
    ROUNDING_S,
  );
  const counts = addUp(
    lines.map((l) => ({ flown: l.flight_landings, total: l.landings_total })),
    page.brought.landings,
    0,
  );
  const shown = lines.map((l, i) => lineOf(l, hours[i]!, counts[i]!, told[i]!));
  const whole = lines.every((l) => l.reason === undefined);
  return { lines: shown, entries: whole ? entriesFrom(grid, mapping, context).map((e) => onPage(e, page)) : [] };
}

const lineOf = (l: Line, hours: AddedUp, landings: AddedUp, warnings: readonly string[]): PageLine => ({
  row: l.row,
  day: l.day,
  flown_s: l.flight_s,
  total_s: l.total_s,
  landings_total: l.landings_total,
  hours,
  landings,
  reason: l.reason,
  warnings,
});
const onPage = (e: record.EntryInput, { paper }: TypedPage): record.EntryInput => ({
  ...e,
  paper: { ...paper, ...(e.paper?.row === undefined ? {} : { row: e.paper.row }) },
});

function gridOf(page: TypedPage): Grid {
  let before: Day | undefined;
  const rows = page.rows.map((typed, i) => {
    const filled = COLUMNS.some((c) => c !== 'day' && typed[c].trim() !== '');
    if (!filled) return { row: i + 1, cells: [] };
    const day = wholeDay(typed.day.trim(), before);
    before = dayRead(day, page) ?? before;
    const texts = COLUMNS.map((c) => (c === 'day' ? day : FIGURES.has(c) ? withPoint(typed[c]) : typed[c].trim()));
    return { row: i + 1, cells: texts.map((text): Cell => (text === '' ? EMPTY : { is: 'text', text })) };
  });
  return { fileName: page.paper.title, format: 'csv', sheets: [], rows: rows.filter((r) => r.cells.length > 0) };
}
const FIGURES: ReadonlySet<string> = new Set(['flown', 'total', 'landings', 'landings_total']);

/** The day of a row: nothing typed is the day above, "14" the 14th of its month, "14.3." of its year. */
function wholeDay(text: string, before: Day | undefined): string {
  if (before === undefined) return text;
  const [, bare] = /^(\d{1,2})\.?$/.exec(text) ?? [];
  const [, short] = /^(\d{1,2}[./-]\d{1,2})[./-]?$/.exec(text) ?? [];
  if (text === '') return before;
  if (bare) return `${before.slice(0, 8)}${bare.padStart(2, '0')}`;
  return short ? `${short.replaceAll(/[/-]/g, '.')}.${before.slice(0, 4)}` : text;
}
const dayRead = (text: string, page: TypedPage): Day | undefined => {
  const r = dayIn({ is: 'text', text }, { day_order: page.day_order, two_digit_years_from: YEARS_FROM });
  return failed(r) ? undefined : r.value;
};

/** A typed figure with a decimal point: "5,4" is 5.4 and "1.204,3" is 1204.3; "1,204" is a group of three. */
function withPoint(typed: string): string {
  const text = typed.trim();
  const [comma, point] = [text.lastIndexOf(','), text.lastIndexOf('.')];
  if (comma < 0 || comma < point) return text;
  const decimals = text.slice(comma + 1).replace(/\D.*$/, '').length;
  if (point < 0 && (decimals === 3 || text.indexOf(',') !== comma)) return text;
  return `${text.slice(0, comma).replaceAll('.', '')}.${text.slice(comma + 1)}`;
}

/** A total as a person types it; null for text that is no time. */
export function typedHours(text: string): number | null {
  const r = hoursIn({ is: 'text', text: withPoint(text) }, 'point');
  return failed(r) ? null : r.value;
}

function mappingOf(page: TypedPage): Mapping {
  const uses: Record<string, string> = {};
  for (const { use } of page.rows) {
    const word = use.trim().toLowerCase();
    const slug = word.replace(/[^a-z0-9]+/g, '_');
    const meant = page.uses.includes(slug) ? slug : suggestUse(word);
    if (word !== '' && meant !== 'unknown') uses[word] = meant;
  }
  return {
    sparwright: 'mapping/1',
    header_row: 0,
    columns: {
      day: 0,
      flight_h: 1,
      total_h: 2,
      flight_landings: 3,
      landings_total: 4,
      use: 5,
      wording: 6,
    },
    day_order: page.day_order,
    two_digit_years_from: YEARS_FROM,
    decimal: 'point',
    flight_unit: 'hours',
    uses,
    wordings: {},
  };
}
