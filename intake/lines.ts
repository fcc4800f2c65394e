import { type Day, Refusal } from '../engine/index.ts';
import { headingOf } from './columns.ts';
import type { IntakeContext } from './context.ts';
import { countIn, dayIn, failed, hoursIn, type Read } from './figures.ts';
import { COLUMNS, type Column, type Mapping } from './mapping.ts';
import { cellAt, type Grid, isBlank, type Row } from './model.ts';
import { type Wording, wordingsOf } from './wording.ts';

/** A row as the mapping reads it. */
export interface Line {
  readonly row: number;
  readonly texts: readonly string[];
  readonly fromFormula: boolean;
  day?: Day;
  total_s?: number;
  shows_s?: number;
  landings_total?: number;
  flight_s?: number;
  flight_landings?: number;
  useWord?: string;
  use?: string;
  remark?: string;
  wordings: readonly Wording[];
  reason?: string;
  /** Refused, and flying may be lost with it. */
  loses?: boolean;
  readonly warnings: string[];
}

const SUMMARY = /^\s*(grand |sub)?-?(totals?|sum|carried forward|brought forward|summe|uebertrag|übertrag)\b/i;
const plainWord = (text: string) => text.toUpperCase().replace(/[^A-Z0-9]/g, '');

/** What a person still has to say before the file can be read. */
export function openQuestions(mapping: Mapping): string[] {
  const c = mapping.columns;
  const open: string[] = [];
  if (c.day === undefined) open.push('Which column holds the day?');
  if (mapping.day_order === 'to_be_chosen') open.push('Does the day or the month stand first in its dates?');
  if (mapping.decimal === 'to_be_chosen') open.push('Does a point or a comma part whole hours from their fraction?');
  if (
    [c.total_h, c.meter_shows_h, c.landings_total, c.flight_h].every((x) => x === undefined) &&
    c.wording === undefined
  )
    open.push('Which column holds the total hours, what the meter shows, or the hours of the flight?');
  if (c.meter_shows_h !== undefined && mapping.meter === undefined) open.push('Which meter does the column show?');
  return open;
}

/** @throws Refusal `intake.mapping-unfit` */
export function requireFit(grid: Grid, mapping: Mapping): void {
  const width = Math.max(0, ...grid.rows.map((r) => r.cells.length));
  const seen = new Map<number, Column>();
  for (const column of COLUMNS) {
    const at = mapping.columns[column];
    if (at === undefined) continue;
    const other = seen.get(at);
    if (at >= width || (other && !(other === 'use' && column === 'wording')))
      throw new Refusal('intake.mapping-unfit', {
        given: other ? `Column ${at + 1} is read as ${other} and as ${column}` : `Column ${at + 1} for ${column}`,
        allowed: `each of the ${width} columns of "${grid.fileName}" for one thing`,
        remedy: 'Choose the columns again',
      });
    seen.set(at, column);
  }
}

/** Every row below the headings, in the order of the file; blank rows, repeated headings and sums are left aside. */
export function linesOf(
  grid: Grid,
  mapping: Mapping,
  context: IntakeContext,
): { lines: Line[]; aside: { row: number; why: string }[] } {
  const aside: { row: number; why: string }[] = [];
  const lines: Line[] = [];
  const wanted = context.registration === undefined ? undefined : plainWord(context.registration);
  grid.rows.forEach((row, i) => {
    if (i % 500 === 0) context.onProgress?.(i, grid.rows.length);
    if (row.row <= mapping.header_row || isBlank(row)) return;
    const dayCell = cellAt(row, mapping.columns.day);
    if (dayCell.is === 'text' && headingOf(dayCell.text) === 'day') {
      aside.push({ row: row.row, why: 'headings again' });
      return;
    }
    if ((dayCell.is === 'empty' || dayCell.is === 'text') && row.cells.some((c) => SUMMARY.test(c.text)))
      if (failed(dayIn(dayCell, mapping))) {
        aside.push({ row: row.row, why: 'a sum, not a row of the log' });
        return;
      }
    lines.push(lineOf(row, mapping, context.today, wanted));
  });
  context.onProgress?.(grid.rows.length, grid.rows.length);
  return { lines, aside };
}

function lineOf(row: Row, mapping: Mapping, today: Day, registration: string | undefined): Line {
  const { columns } = mapping;
  const used = Object.values(columns).map((c) => cellAt(row, c));
  const line: Line = {
    row: row.row,
    texts: row.cells.map((c) => c.text),
    fromFormula: used.some((c) => c.fromFormula),
    wordings: [],
    warnings: [],
  };
  const reasons: string[] = [];
  const refuse = (why: string, loses: boolean) => {
    reasons.push(why);
    if (loses) line.loses = true;
  };
  const day = dayIn(cellAt(row, columns.day), mapping);
  if (failed(day)) refuse(day.why, true);
  else {
    line.day = day.value;
    if (day.value > today) refuse(`${day.value} lies after today, ${today}`, false);
  }
  const figure = (column: Column, name: string, read: (d: 'point' | 'comma') => Read<number>): number | undefined => {
    const cell = cellAt(row, columns[column]);
    if (cell.is === 'empty') return undefined;
    const open = mapping.decimal === 'to_be_chosen';
    if (open && cell.is === 'text' && /[.,]/.test(cell.text)) {
      refuse(`${name}: "${cell.text}": is it a decimal point or comma? Choose it`, true);
      return undefined;
    }
    const r = read(mapping.decimal === 'comma' ? 'comma' : 'point');
    if (failed(r)) refuse(`${name}: ${r.why}`, true);
    return failed(r) ? undefined : r.value;
  };
  const hours = (column: Column, name: string, unit: 'hours' | 'minutes' = 'hours') =>
    figure(column, name, (d) => hoursIn(cellAt(row, columns[column]), d, unit));
  const count = (column: Column, name: string) => figure(column, name, (d) => countIn(cellAt(row, columns[column]), d));
  line.total_s = hours('total_h', 'total hours');
  line.shows_s = hours('meter_shows_h', 'meter');
  line.flight_s = hours('flight_h', 'hours of the flight', mapping.flight_unit);
  line.landings_total = count('landings_total', 'total landings');
  line.flight_landings = count('flight_landings', 'landings');
  if (line.flight_s !== undefined && line.flight_s > 86_400) refuse('more than 24 h in one day', true);

  const useWord = cellAt(row, columns.use).text.trim();
  if (useWord !== '') {
    line.useWord = useWord;
    const use = mapping.uses[useWord.toLowerCase()];
    if (use === undefined) line.warnings.push(`"${useWord}" is no known use: taken as unknown, any use is possible`);
    else if (use !== 'unknown') line.use = use;
  }
  const remark = cellAt(row, columns.wording).text.trim();
  if (remark !== '') {
    line.remark = remark;
    line.wordings = wordingsOf(remark, mapping);
  }
  const reg = plainWord(cellAt(row, columns.registration).text);
  if (registration !== undefined && reg !== '' && reg !== registration)
    refuse(`the row is of another aircraft, ${cellAt(row, columns.registration).text.trim()}`, false);
  if (reasons.length === 0 && !hasFigures(line) && line.wordings.every((w) => w.is === 'note'))
    refuse(
      line.flight_landings === undefined
        ? 'nothing to record: no figures, and no wording of an inspection or event'
        : 'landings without hours',
      line.flight_landings !== undefined,
    );
  if (reasons.length > 0) line.reason = reasons.join('; ');
  return line;
}

export const isReading = (l: Line): boolean =>
  l.total_s !== undefined || l.shows_s !== undefined || l.landings_total !== undefined;
const hasFigures = (l: Line): boolean => isReading(l) || l.flight_s !== undefined;
