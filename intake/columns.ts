import { type Cell, cellAt, type Grid, type Row } from './model.ts';

const SAMPLE = 400;

/** A heading in small letters, without accents, signs and double blanks. */
export const wordOf = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();

/** What headings say, best first; a heading counts for the first line that it matches. */
const HEADINGS: readonly (readonly [string, RegExp])[] = [
  [
    'registration',
    /^(aircraft )?(registration|reg|tail( (no|number))?|aircraft( id| ident)?|immatriculation|kennzeichen)( no| number)?$/,
  ],
  ['day', /^(day|date|datum|fecha|data|on)$|\b(date|datum)\b/],
  [
    'use',
    /\b(use|usage|purpose|mission|nature|(type|kind|sort) of (flight|flying|operation)|flight type|category|zweck|einsatz|startart)\b/,
  ],
  [
    'skip',
    /\b(start|out|off|before|begin|from|depart\w*|takeoff|arriv\w*|(on|in) blocks?|hours? left|due|next)\b|^(landing|ldg) (time|at)$/,
  ],
  [
    'landings_total',
    /\b(total|cum\w*|since new|brought forward|gesamt\w*) .*(landings?|ldgs?|cycles|landungen|atterrissages)\b|\b(landings?|ldgs?|cycles) .*(total|cum\w*|since new|to date)\b/,
  ],
  ['flight_landings', /\b(landings?|ldgs?|cycles|landungen|atterrissages)\b/],
  ['meter_shows_h', /\b(tach\w*|hobbs|meter|recorder|counter)\b/],
  [
    'total_h',
    /\b(ttaf|aftt|ttis|ttsn|tsn|tt|gesamt\w*|cumulative|since new)\b|\b(total|airframe)\b.*\b(time|hours?|hrs?|h|service)\b|\b(time|hours?|hrs?)\b.*\b(total|since new|to date|in service)\b|^(airframe|total)$/,
  ],
  [
    'flight_h',
    /\b(flight|flown|flying|air|block|duration|flugzeit|temps|vol)\b|^(hours?|hrs?|time|h|stunden|heures|minutes|min)( h| min| minutes)?$/,
  ],
  ['use', /\boperation\b/],
  [
    'wording',
    /^(what|text)$|\b(remarks?|entry|entries|details?|events?|occurrences?|description|work|inspections?|notes?|maintenance|wording|comments?|bemerkung\w*|remarques)\b/,
  ],
];

export function headingOf(text: string): string | undefined {
  const word = wordOf(text);
  return word === '' ? undefined : HEADINGS.find(([, says]) => says.test(word))?.[0];
}

/** Row number of the headings; 0 where no row looks like headings. */
export function headerRowOf(grid: Grid): number {
  let best = { row: 0, known: 0 };
  for (const r of grid.rows.slice(0, 30)) {
    const texts = r.cells.filter((c) => c.is === 'text');
    const known = new Set(texts.filter((c) => c.text.length <= 60).map((c) => headingOf(c.text) ?? '')).size;
    const real = texts.some((c) => headingOf(c.text) === 'day') && texts.length >= 2;
    if (real && !r.cells.some((c) => /^\d/.test(c.text)) && known > best.known) best = { row: r.row, known };
  }
  return best.row;
}

export const wordsOf = (grid: Grid, header: number): string[] =>
  grid.rows.find((r) => r.row === header)?.cells.map((c) => wordOf(c.text)) ?? [];

export const rowsBelow = (grid: Grid, header: number): readonly Row[] => grid.rows.filter((r) => r.row > header);

/** The filled cells of a column, the first few hundred below the headings. */
export function cellsOf(grid: Grid, header: number, column: number): Cell[] {
  const out: Cell[] = [];
  for (const r of grid.rows) {
    if (r.row <= header) continue;
    const c = cellAt(r, column);
    if (c.is !== 'empty') out.push(c);
    if (out.length >= SAMPLE) break;
  }
  return out;
}

const DATE_LIKE =
  /^\s*(\d{1,4}[./-]\d{1,2}[./-]\d{1,4}|\d{1,2}[ .-]+[a-z]{3,9}[ .,-]+\d{2,4}|[a-z]{3,9}\.? \d{1,2},? \d{4})\b/i;
const FIGURE_LIKE = /^\s*\d+ ?h ?\d{2}( ?min)?\s*$|^[\s+-]*\d[\d\s.,:'’\u00a0\u2007\u2009\u202f]*(h|hrs?)?\s*$/i;
const isDayLike = (c: Cell) => c.is === 'day' || DATE_LIKE.test(c.text);
const isFigureLike = (c: Cell) =>
  c.is === 'number' || c.is === 'time' || c.is === 'unreadable' || (!isDayLike(c) && FIGURE_LIKE.test(c.text));

/** Share of the filled cells of a column that could be a day, or a figure. */
export function sharesOf(grid: Grid, header: number, column: number): { filled: number; day: number; figure: number } {
  const cells = cellsOf(grid, header, column);
  const share = (test: (c: Cell) => boolean) => (cells.length === 0 ? 0 : cells.filter(test).length / cells.length);
  return { filled: cells.length, day: share(isDayLike), figure: share(isFigureLike) };
}

/** Most cells are a time of day or hours:minutes: no count of landings. */
export const isClock = (grid: Grid, header: number, column: number): boolean => {
  const cells = cellsOf(grid, header, column);
  return cells.filter((c) => c.is === 'time' || /^\d+:\d{2}/.test(c.text.trim())).length > cells.length / 2;
};

/** What most cells of a column are. */
export function kindOf(grid: Grid, header: number, column: number): 'day' | 'figure' | 'text' | 'empty' {
  const shares = sharesOf(grid, header, column);
  if (shares.filled === 0) return 'empty';
  return shares.day > 0.6 ? 'day' : shares.figure > 0.6 ? 'figure' : 'text';
}
