import { type Day, hoursFromSeconds } from '../engine/index.ts';
import { capital, count, datesInWords, day as dayWords, number, yearOf } from './display.ts';
import {
  type FleetAircraft,
  hangsOn,
  partsSaid,
  type ShownAircraft,
  type ShownLine,
  shownAircraft,
  worstAircraftFirst,
} from './fleet/model.ts';
import { type Spare, shelfTable } from './fleet/shelf.ts';
import { emptySheet, f, type ShopNamed, t } from './frame.ts';
import type { Cell, Sheet, Span, TableBlock } from './model.ts';
import { yearBand } from './scenes/year-band.ts';
import { dueLine, dueWords, standingCell } from './standing.ts';

export interface FleetInput {
  readonly shop: ShopNamed & { readonly id: string };
  readonly aircraft: readonly FleetAircraft[];
  readonly day: Day;
  /** Entries up to this number are recorded. */
  readonly known: number;
  /** Parts that sit in no aircraft. */
  readonly shelf?: readonly Spare[];
}

/** Who is due when: one row per aircraft with what bites first, and the years ahead as a band. */
export function fleetSheet(q: FleetInput): Sheet {
  const rows = q.aircraft.map((a) => shownAircraft(a, q.day)).sort(worstAircraftFirst);
  const shelf = shelfTable(q.shelf ?? []);
  return {
    ...emptySheet('fleet', 'Fleet', q.day, q.shop.invented === true),
    subject: q.shop.name,
    titleBlock: {
      fields: [
        { label: 'Shop', value: q.shop.name },
        { label: 'Standing on', value: dayWords(q.day) },
        { label: 'Known to', value: `entry ${number(q.known)}` },
      ],
    },
    answer: answerOf(rows, q.day),
    because: becauseOf(rows),
    blocks: [
      ...(rows.length
        ? [{ block: 'picture' as const, title: 'Years in which they fall due', scene: yearBand(rows, q.day) }]
        : []),
      fleetTable(rows, q),
      ...(shelf ? [shelf] : []),
    ],
    ...(q.shelf?.some((s) => s.answers === null) ? { computing: SHELF_COMPUTING } : {}),
    ...computingOf(rows),
    warnings: warningsOf(rows, q.day),
  };
}

const SHELF_COMPUTING = 'What lies on the shelf is being computed; until then treat it as due.';
export const planes = (n: number): string => count(n, 'aircraft', 'aircraft');
/** Computed, and yet no directive stands against any of them: that nothing is overdue would then say too much. */
export const nothingHeld = (rows: readonly ShownAircraft[]): boolean =>
  rows.every((r) => r.settling === null && r.aircraft.lines.length === 0);
export const NOT_HELD =
  'Adopt a directive, and who is due when stands here. What an authority asks is not known until then.';
function becauseOf(rows: readonly ShownAircraft[]): string {
  if (!rows.length) return 'Answer a caller, or drop a logbook.';
  if (nothingHeld(rows)) return NOT_HELD;
  return 'What bites first on each aircraft, on the worse side and at its owner’s flying rate.';
}
function answerOf(rows: readonly ShownAircraft[], today: Day): Span[] {
  if (!rows.length) return [t('No aircraft is recorded yet.')];
  if (nothingHeld(rows)) return [t(`No directive is held yet against the ${planes(rows.length)} of this shop.`)];
  const all = planes(rows.length);
  const overdue = rows.filter((r) => r.worst === 'overdue').length;
  const due = rows.filter((r) => r.worst === 'due').length;
  const year = rows.filter(
    (r) =>
      r.worst !== 'overdue' && r.worst !== 'due' && r.lines.some((l) => l.when && yearOf(l.when) === yearOf(today)),
  ).length;
  const papers = rows.filter(hangsOn).length;
  const is = (n: number) => (n === 1 ? 'is' : 'are');
  const said: Span[][] = [
    overdue ? [f(`${number(overdue)} of ${all} ${is(overdue)} overdue`)] : [t(`None of ${all} is overdue`)],
    ...(due ? [[f(`${number(due)} ${is(due)} due now`)]] : []),
    [
      year
        ? f(`${number(year)} more ${year === 1 ? 'falls' : 'fall'} due this year`)
        : t('no other falls due this year'),
    ],
    ...(papers ? [[t(`${number(papers)} ${papers === 1 ? 'hangs' : 'hang'} on a missing paper`)]] : []),
  ];
  return [...said.flatMap((s, i) => (i ? [t(', '), ...s] : s)), t('.')];
}

export function computingOf(rows: readonly ShownAircraft[]): { computing?: string } {
  const n = rows.filter((r) => r.settling === 'being computed').length;
  if (!n) return {};
  const are = n === 1 ? 'is' : 'are';
  return {
    computing: `${number(n)} of ${planes(rows.length)} ${are} being computed; until then treat ${n === 1 ? 'it' : 'them'} as due.`,
  };
}
export function warningsOf(rows: readonly ShownAircraft[], today: Day): string[] {
  const behind = rows.filter((r) => r.settling === null && r.aircraft.asOf !== null && r.aircraft.asOf !== today);
  const oldest = behind.map((r) => r.aircraft.asOf!).sort()[0];
  if (!oldest) return [];
  return [
    oldest > today
      ? `Dates are as of ${dayWords(oldest)}: a past day is shown on the page of each aircraft.`
      : `Dates of ${planes(behind.length)} are as of ${dayWords(oldest)} or later, and are being brought up to today.`,
  ];
}

export const text = (words: string | null, small = ''): Cell =>
  words ? { is: 'text', text: words, ...(small ? { small } : {}) } : { is: 'nothing' };

function fleetTable(rows: readonly ShownAircraft[], q: FleetInput): TableBlock {
  return {
    block: 'table',
    title: 'Aircraft',
    columns: [
      { key: 'registration', title: 'Aircraft', align: 'left' },
      { key: 'standing', title: 'Treat as', align: 'left' },
      { key: 'about', title: 'About', align: 'left' },
      { key: 'due', title: 'Due at', align: 'right' },
      { key: 'line', title: 'Ten years', align: 'left' },
      { key: 'directive', title: 'Bites first', align: 'left' },
      { key: 'paper', title: 'Hangs on', align: 'left' },
      { key: 'type', title: 'Type', align: 'left' },
      { key: 'owner', title: 'Owner', align: 'left' },
      { key: 'base', title: 'Base', align: 'left' },
      { key: 'reading', title: 'Read', unit: 'h', align: 'right' },
      { key: 'read', title: 'Read on', align: 'right' },
    ],
    rows: rows.map((r) => rowOnce(r, q)),
    empty: 'No aircraft yet. Answer a caller, or drop a logbook.',
  };
}

export const aircraftLink = (shop: string, a: FleetAircraft): Cell => ({
  is: 'link',
  text: a.registration,
  href: `/${shop}/aircraft/${encodeURIComponent(a.id)}`,
});
export function readingCells({ reading }: FleetAircraft): Record<string, Cell> {
  if (!reading) return {};
  const h = hoursFromSeconds(reading.total_s);
  return {
    reading: { is: 'quantity', value: h, unit: 'h', places: 1, text: number(h, 1) },
    read: { is: 'day', day: reading.day, text: dayWords(reading.day) },
  };
}
/** Told by the worst that is known; where it could not be computed, due and no softer. */
export function aircraftStanding(r: ShownAircraft): Cell {
  const first = r.lines[0];
  if (r.settling) {
    const known = r.worst === 'overdue' ? 'overdue' : 'due';
    const small =
      r.settling === 'being computed'
        ? r.aircraft.asOf
          ? 'being computed again'
          : 'not yet computed'
        : 'not computed';
    return { is: 'standing', worst: known, best: known, act: true, text: `treat as ${known}`, small };
  }
  if (!first) {
    const said = r.aircraft.lines.length ? r.worst : 'no directive held';
    return { is: 'standing', worst: r.worst, best: r.worst, act: false, text: said };
  }
  const worst = r.lines.find((l) => l.standing.worst === r.worst) ?? first;
  return standingCell(worst);
}
const aboutCell = (s: ShownLine): Cell =>
  s.when && s.about ? { is: 'day', day: s.when, text: s.about } : text(s.about);

const made = new WeakMap<ShownAircraft, { readonly shop: string; readonly row: TableBlock['rows'][number] }>();
/** Made once for an aircraft, its day and its shop. */
function rowOnce(r: ShownAircraft, q: FleetInput): TableBlock['rows'][number] {
  const known = made.get(r);
  if (known?.shop === q.shop.id) return known.row;
  const row = fleetRow(r, q);
  made.set(r, { shop: q.shop.id, row });
  return row;
}
function fleetRow(r: ShownAircraft, q: FleetInput): TableBlock['rows'][number] {
  const { aircraft: a } = r;
  const [first] = r.lines;
  const cells: Record<string, Cell> = {
    registration: aircraftLink(q.shop.id, a),
    type: text([a.type, a.model].filter(Boolean).join(' '), a.serial && `serial ${a.serial}`),
    base: text(a.base),
    owner: text(a.owner),
    ...readingCells(a),
    standing: aircraftStanding(r),
    ...(first ? firstCells(r.lines, first, q.day) : {}),
    ...(r.settling === 'not computed' ? { directive: text('not computed', datesInWords(a.notComputed[0]!)) } : {}),
    paper: paperCell(r),
  };
  const kept = Object.entries(cells).filter(([, c]) => c.is !== 'nothing');
  const days = [...new Set([...(r.settling ? [q.day] : []), ...r.lines.flatMap((l) => l.when ?? [])])].sort();
  const words = [...new Set(r.lines.map((l) => l.line.directive))].join(' ');
  return { id: a.id, cells: Object.fromEntries(kept), days, ...(words ? { words } : {}) };
}
function firstCells(lines: readonly ShownLine[], first: ShownLine, today: Day): Record<string, Cell> {
  const { line } = first;
  return {
    directive: text(line.directive, capital(`${partsSaid(lines, first)}: ${line.title}`)),
    due: text(line.notComputed ? 'before further flight' : dueWords(line.treatAs)),
    about: aboutCell(first),
    line: shortLine(dueLine(first, line.dates ?? undefined, today)),
  };
}
function paperCell(r: ShownAircraft): Cell {
  const s = hangsOn(r);
  if (!s) return { is: 'nothing' };
  return text(datesInWords(s.line.hangsOn!), s.line.directive === r.lines[0]?.line.directive ? '' : s.line.directive);
}
const round = (v: number): number => Math.round(v * 1000) / 1000;
const shortLine = (c: Cell): Cell =>
  c.is === 'due-line' ? { ...c, marks: c.marks.map((m) => ({ ...m, from: round(m.from), to: round(m.to) })) } : c;
