import { addDays, type Day, dayNumber, hoursFromSeconds } from '../engine/index.ts';
import { arrivalNumber, capital, count, datesInWords, day as dayWords, number, yearOf } from './display.ts';
import {
  becomeWords,
  bitesBefore,
  type FleetAircraft,
  moves,
  p10Words,
  type ShownAircraft,
  type ShownLine,
  shownAircraft,
} from './fleet/model.ts';
import {
  aircraftLink,
  aircraftStanding,
  computingOf,
  NOT_HELD,
  nothingHeld,
  planes,
  readingCells,
  text,
  warningsOf,
} from './fleet-sheet.ts';
import { caution, emptySheet, f, type ShopNamed, t } from './frame.ts';
import type { AskedSpan, Cell, Sheet, Span, TableBlock } from './model.ts';
import { atOnce, BEFORE_PAPERS, type EndTold, standingCell } from './standing.ts';

export interface DueInput {
  readonly shop: ShopNamed & { readonly id: string };
  readonly aircraft: readonly FleetAircraft[];
  readonly day: Day;
  readonly known: number;
  readonly from: Day;
  readonly to: Day;
}

/** Everything that falls due within a span, on the worse side; what is due or overdue already is never left out. */
export function dueSheet(q: DueInput): Sheet {
  const rows = q.aircraft.map((a) => shownAircraft(a, q.day));
  const waiting = rows.filter((r) => r.settling !== null);
  const unheld = rows.length > 0 && nothingHeld(rows);
  const lines = rows
    .flatMap((r) => r.lines)
    .filter((s) => within(s, q))
    .sort(bitesBefore);
  return {
    ...emptySheet('fleet', 'Due sheet', q.day, q.shop.invented === true),
    subject: `${dayWords(q.from)} to ${dayWords(q.to)}`,
    titleBlock: {
      fields: [
        { label: 'Shop', value: q.shop.name },
        { label: 'From', value: dayWords(q.from) },
        { label: 'To', value: dayWords(q.to) },
        { label: 'Standing on', value: dayWords(q.day) },
        { label: 'Known to', value: `entry ${number(q.known)}` },
      ],
    },
    answer: unheld ? [t('No directive is held yet against any aircraft of this shop.')] : answerOf(lines, waiting, q),
    because: unheld
      ? NOT_HELD
      : 'The worse side counts, at each owner’s own flying rate. What may fall due within these days if more is flown than usual, once in ten, stands here too.',
    blocks: [dueTable(lines, waiting, q)],
    span: { from: q.from, to: q.to, others: spansFrom(q.day) },
    ...computingOf(rows),
    warnings: warningsOf(rows, q.day),
    caution: caution(q.shop.invented === true),
  };
}

/** Spans that are often asked for, the nearest first. */
function spansFrom(today: Day): AskedSpan['others'] {
  const next = [30, 90, 365, 730].map((days) => ({
    text: `the next ${count(days, 'day')}`,
    from: today,
    to: addDays(today, days),
  }));
  const years = [0, 1, 2].map((n) => {
    const year = yearOf(today) + n;
    return { text: `until the end of ${year}`, from: today, to: `${year}-12-31` as Day };
  });
  return [...next, ...years];
}

/** Due now always; else where the day, or the early end of its range, lies within. What has no day at all is kept. */
function within(s: ShownLine, q: DueInput): boolean {
  if (atOnce(s) || s.when === null) return true;
  const dates = s.line.dates;
  const early = Math.min(dayNumber(s.when), dates ? arrivalNumber(dates.treatAs.p10, q.day) : Number.POSITIVE_INFINITY);
  return early <= dayNumber(q.to) && s.when >= q.from;
}

function answerOf(lines: readonly ShownLine[], waiting: readonly ShownAircraft[], q: DueInput): Span[] {
  const span = `from ${dayWords(q.from)} to ${dayWords(q.to)}`;
  const aircraft = new Set(lines.map((s) => s.aircraft.id)).size;
  const overdue = lines.filter((s) => s.standing.worst === 'overdue').length;
  const rest = waiting.length ? [t(` ${planes(waiting.length)} could not be computed yet: treat as due.`)] : [];
  if (!lines.length) return [t(`Nothing falls due ${span}.`), ...rest];
  return [
    f(`${count(lines.length, 'action')} on ${planes(aircraft)}`),
    t(` ${lines.length === 1 ? 'is or falls' : 'are or fall'} due ${span}`),
    ...(overdue ? [t('; '), f(`${number(overdue)} of them ${overdue === 1 ? 'is' : 'are'} overdue`)] : []),
    t('.'),
    ...rest,
  ];
}

function dueTable(lines: readonly ShownLine[], waiting: readonly ShownAircraft[], q: DueInput): TableBlock {
  return {
    block: 'table',
    title: 'What falls due',
    columns: [
      { key: 'registration', title: 'Aircraft', align: 'left' },
      { key: 'part', title: 'Part', align: 'left' },
      { key: 'directive', title: 'Directive', align: 'left' },
      { key: 'action', title: 'Action', align: 'left' },
      { key: 'standing', title: 'Treat as', align: 'left' },
      { key: 'reading', title: 'Last reading', unit: 'h', align: 'right' },
      { key: 'due_h', title: 'Due at', unit: 'h', align: 'right' },
      { key: 'due_landings', title: 'Due at', unit: 'landings', align: 'right' },
      { key: 'due_on', title: 'Due on', align: 'right' },
      { key: 'about', title: 'About', align: 'right' },
      { key: 'early', title: 'Once in ten by', align: 'right' },
      { key: 'become', title: 'Papers could make it', align: 'right' },
      { key: 'paper', title: 'Hangs on', align: 'left' },
    ],
    rows: [...waiting.map((r) => waitingRow(r, q)), ...lines.map((s) => dueRow(s, q))],
    empty: 'Nothing falls due within these days.',
  };
}
const waitingRow = (r: ShownAircraft, q: DueInput): TableBlock['rows'][number] => ({
  id: r.aircraft.id,
  cells: {
    registration: aircraftLink(q.shop.id, r.aircraft),
    action: text(datesInWords(r.aircraft.notComputed[0] ?? 'being computed: open the page again in a moment')),
    standing: aircraftStanding(r),
    ...only(readingCells(r.aircraft), 'reading'),
  },
  days: [q.day],
});
const only = (cells: Record<string, Cell>, key: string): Record<string, Cell> =>
  cells[key] ? { [key]: cells[key] } : {};
const figure = (value: number, unit: string, places: number): Cell => ({
  is: 'quantity',
  value,
  unit,
  places,
  text: number(value, places),
});

function dueRow(s: ShownLine, q: DueInput): TableBlock['rows'][number] {
  const { line, aircraft } = s;
  const { dueAt } = line.treatAs;
  const cells: Record<string, Cell> = {
    registration: aircraftLink(q.shop.id, aircraft),
    part: text(capital(line.partName)),
    directive: text(`${line.directive} issue ${line.issue}`),
    action: text(line.title),
    standing: standingCell(s),
    ...only(readingCells(aircraft), 'reading'),
    ...dueReading(line.treatAs, line.notComputed),
    due_on: dueAt.day && !dueAt.now ? { is: 'day', day: dueAt.day, text: dayWords(dueAt.day) } : text(null),
    about: aboutCell(s),
    early: text(p10Words(s)),
    become: text(becomeWords(s)),
    paper: text(moves(s) ? datesInWords(line.hangsOn!) : null),
  };
  const kept = Object.entries(cells).filter(([, c]) => c.is !== 'nothing');
  return {
    id: `${line.part}|${line.directive}|${line.action}`,
    cells: Object.fromEntries(kept),
    ...(s.when ? { days: [s.when] } : {}),
  };
}
/** Each reading in its own column; what no reading tells stands there in words. */
function dueReading({ dueAt }: EndTold, notComputed: boolean): Record<string, Cell> {
  const { total_s, landings, now } = dueAt;
  if (now || notComputed)
    return { [total_s === null && landings !== null ? 'due_landings' : 'due_h']: text('before further flight') };
  const read = (value: number | null, unit: string, places: number): Cell => {
    if (value === null) return text(null);
    return value < 0.5 * 10 ** -places ? text(BEFORE_PAPERS) : figure(value, unit, places);
  };
  return {
    due_h: read(total_s === null ? null : hoursFromSeconds(total_s), 'h', 1),
    due_landings: read(landings, 'landings', 0),
  };
}
/** A forecast keeps its month in a file; a year that it is not before stays words. */
function aboutCell(s: ShownLine): Cell {
  if (s.when === null) return text('no reading tells');
  const far = s.line.dates?.treatAs.p50.is === 'not before' && !atOnce(s);
  return far ? text(s.about) : { is: 'day', day: s.when, text: s.about };
}
