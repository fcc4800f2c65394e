import { hoursFromSeconds } from '../engine/index.ts';
import { cellsOf, headerRowOf, headingOf, isClock, kindOf, rowsBelow, sharesOf, wordOf, wordsOf } from './columns.ts';
import { leadingPair } from './figures.ts';
import { COLUMNS, type Column, type Mapping, shapeOf } from './mapping.ts';
import { type Cell, cellAt, type Grid } from './model.ts';
import { suggestUse } from './wording.ts';

/**
 * A first mapping of a file, for a person to look over. Where the file leaves open whether the day or the
 * month stands first, or whether "1,234" is a thousand or a little more than one, it says `to_be_chosen`.
 */
export function suggestMapping(grid: Grid): Mapping {
  const header = headerRowOf(grid);
  const columns = guessColumns(grid, header);
  const cells = (c: Column) => (columns[c] === undefined ? [] : cellsOf(grid, header, columns[c]));
  const words = wordsOf(grid, header);
  const flightHeading = columns.flight_h === undefined ? '' : (words[columns.flight_h] ?? '');
  const figures = (['total_h', 'meter_shows_h', 'flight_h'] as const).flatMap((c) => cells(c));
  const counts = (['landings_total', 'flight_landings'] as const).flatMap((c) => cells(c));
  return {
    sparwright: 'mapping/1',
    shape: shapeOf(grid),
    ...(grid.sheet === undefined ? {} : { sheet: grid.sheet }),
    header_row: header,
    columns,
    day_order: dayOrder(allOf(grid, header, columns.day)),
    two_digit_years_from: 1950,
    decimal: decimalOf(figures, counts),
    flight_unit: /\b(min|mins|minutes|minuten)\b/.test(flightHeading) ? 'minutes' : 'hours',
    ...(columns.meter_shows_h === undefined
      ? {}
      : { meter: /hobbs/.test(words[columns.meter_shows_h] ?? '') ? 'hobbs' : 'tachometer' }),
    uses: usesIn(grid, header, columns.use),
    wordings: {},
  };
}

function allOf(grid: Grid, header: number, column: number | undefined): Cell[] {
  return column === undefined ? [] : rowsBelow(grid, header).map((r) => cellAt(r, column));
}

function guessColumns(grid: Grid, header: number): Mapping['columns'] {
  const out: Partial<Record<Column, number>> = {};
  const width = Math.max(0, ...grid.rows.slice(0, 50).map((r) => r.cells.length));
  const head = grid.rows.find((r) => r.row === header);
  for (let c = 0; c < width; c++) {
    const kind = kindOf(grid, header, c);
    if (!head) {
      if (kind === 'day' && out.day === undefined) out.day = c;
      continue;
    }
    let says = headingOf(cellAt(head, c).text);
    if (says === undefined || says === 'skip' || kind === 'empty') continue;
    const shares = sharesOf(grid, header, c);
    if (says === 'day' && shares.day < 0.3) continue;
    if ((says.endsWith('_h') || says.includes('landings')) && shares.figure < 0.3) continue;
    if (says === 'flight_h' && /^(hours?|hrs?|time|h|stunden|heures)( h)?$/.test(wordOf(cellAt(head, c).text)))
      says = climbs(cellsOf(grid, header, c)) ? 'total_h' : 'flight_h';
    if (says === 'flight_landings' && climbs(cellsOf(grid, header, c))) says = 'landings_total';
    if (says.includes('landings') && isClock(grid, header, c)) continue;
    const column = says as Column;
    if (
      column === 'flight_h' &&
      out.flight_h !== undefined &&
      head &&
      BLOCK.test(wordOf(cellAt(head, out.flight_h).text))
    )
      out.flight_h = c;
    if (COLUMNS.includes(column) && out[column] === undefined) out[column] = c;
  }
  return out;
}

/** Block time holds the taxiing too; time in service runs from wheels off to wheels on (14 CFR 1.1). */
const BLOCK = /\bblock\b/;
const roughly = (c: Cell): number =>
  c.is === 'number'
    ? c.value
    : c.is === 'time'
      ? hoursFromSeconds(c.seconds)
      : Number(c.text.replace(/[^\d:]/g, '').split(':')[0] || 0);
/** Never falls (or, newest first, never rises) and goes far beyond what one day holds: a total. */
function climbs(cells: readonly Cell[]): boolean {
  const n = cells.map(roughly);
  if (n.length < 3 || Math.max(...n) <= 24) return false;
  const steps = n.slice(1).map((v, i) => v - n[i]!);
  const up = steps.filter((s) => s > 0).length;
  const down = steps.filter((s) => s < 0).length;
  return Math.min(up, down) <= steps.length * 0.02 && Math.max(up, down) >= steps.length * 0.3;
}

function dayOrder(cells: readonly Cell[]): Mapping['day_order'] {
  let [first, second, pairs] = [false, false, false];
  for (const c of cells) {
    const pair = c.is === 'text' ? leadingPair(c.text) : undefined;
    if (!pair) continue;
    pairs = true;
    if (pair[0] > 12) first = true;
    if (pair[1] > 12) second = true;
  }
  if (!pairs) return 'day_first';
  return first === second ? 'to_be_chosen' : first ? 'day_first' : 'month_first';
}

/** Which sign parts whole and fraction, where the texts tell it. */
function decimalOf(figures: readonly Cell[], counts: readonly Cell[]): Mapping['decimal'] {
  const tells = { point: false, comma: false };
  let open = false;
  const look = (cells: readonly Cell[], whole: boolean) => {
    for (const c of cells) {
      if (c.is !== 'text' || c.text.includes(':')) continue;
      const signs = c.text.replace(/[^.,]/g, '');
      if (signs === '') continue;
      const last = signs.at(-1) === '.' ? 'point' : 'comma';
      const other = last === 'point' ? 'comma' : 'point';
      const grouped = /^\D*\d{1,3}([.,]\d{3})+\D*$/.test(c.text);
      if (new Set(signs).size === 2) tells[last] = true;
      else if (signs.length > 1 || (whole && grouped)) tells[other] = true;
      else if (grouped && !/^\D*0/.test(c.text)) open = true;
      else tells[last] = true;
    }
  };
  look(figures, false);
  look(counts, true);
  if (tells.point !== tells.comma) return tells.point ? 'point' : 'comma';
  return tells.point || open ? 'to_be_chosen' : 'point';
}

function usesIn(grid: Grid, header: number, column: number | undefined): Record<string, string> {
  const out: Record<string, string> = {};
  for (const c of allOf(grid, header, column)) {
    const word = c.text.trim().toLowerCase();
    if (word !== '' && Object.keys(out).length < 200) out[word] ??= suggestUse(word);
  }
  return out;
}
