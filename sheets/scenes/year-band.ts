import { scaleLinear } from 'd3-scale';
import { addDays, type Day, dayNumber } from '../../engine/index.ts';
import { count, number, yearOf } from '../display.ts';
import { rangeOf, type ShownAircraft, type ShownLine } from '../fleet/model.ts';
import type { Mark, Scene, TableBlock, Zone } from '../model.ts';
import { atOnce } from '../standing.ts';
import { line, newYear, r, text } from './axis.ts';

const YEARS = 10;
const [WIDTH, LEFT, NOW, RIGHT, TOP] = [1000, 8, 96, 992, 34] as const;
const LATER = 60;
/** More marks than this are counted by the month. */
const MOST_MARKS = 150;
const LANE = 9;

interface DueMark {
  readonly registration: string;
  readonly shown: ShownLine;
  readonly at: number;
}
interface Stretch {
  readonly key: string;
  readonly title: string;
  readonly from: Day | null;
  readonly to: Day | null;
  readonly x: number;
  readonly w: number;
  readonly aircraft: number;
  readonly dates: number;
}

/** Every due date of the fleet over the next ten years; what is overdue or due now hangs over the left end. */
export function yearBand(rows: readonly ShownAircraft[], today: Day): Scene {
  const start = dayNumber(today);
  const first = yearOf(today);
  const end = newYear(first + YEARS + 1);
  const x = scaleLinear()
    .domain([start, end])
    .range([NOW, RIGHT - LATER])
    .clamp(true);
  const now: DueMark[] = [];
  const ahead: DueMark[] = [];
  for (const row of rows)
    for (const shown of row.lines) {
      if (shown.when === null) continue;
      const mark = { registration: row.aircraft.registration, shown, at: shown.at };
      if (atOnce(shown)) now.push(mark);
      else if (shown.at < end) ahead.push(mark);
    }
  const drawn = ahead.length > MOST_MARKS ? byMonth(ahead, x, first, today) : inLanes(ahead, x);
  const bottom = TOP + drawn.height;
  const stretches = stretchesOf(rows, today, x);
  const axis = stretches.flatMap((s) => axisMarks(s, bottom));
  return {
    title: 'Years in which they fall due',
    description: describe(stretches, now.length),
    width: WIDTH,
    height: bottom + 40,
    marks: [
      ...axis,
      ...hanging(now, rows, bottom),
      ...drawn.marks,
      line(NOW, TOP - 12, NOW, bottom + 6, 'ink', 1.4),
      text(NOW, TOP - 18, 'today', { size: 11, anchor: 'middle' }),
    ],
    table: tableOf(stretches),
    zones: stretches.map(
      (s): Zone => ({ key: s.key, text: zoneWords(s), x: r(s.x), w: r(s.w), from: s.from, to: s.to }),
    ),
  };
}

type X = (day: number) => number;

/** Aircraft and due dates by stretch, in one walk. */
function counted(rows: readonly ShownAircraft[], today: Day) {
  const last = String(yearOf(today) + YEARS);
  const counts = new Map<string, { aircraft: number; dates: number }>();
  const keyOf = (d: Day): string => {
    if (d <= today) return 'now';
    const year = d.slice(0, 4);
    return year > last ? 'later' : year;
  };
  for (const row of rows) {
    const mine = new Map<string, number>(row.settling ? [['now', 0]] : []);
    for (const l of row.lines) {
      if (l.when === null) continue;
      const key = keyOf(l.when);
      mine.set(key, (mine.get(key) ?? 0) + 1);
    }
    for (const [key, n] of mine) {
      const c = counts.get(key) ?? { aircraft: 0, dates: 0 };
      counts.set(key, { aircraft: c.aircraft + 1, dates: c.dates + n });
    }
  }
  return counts;
}

function stretchesOf(rows: readonly ShownAircraft[], today: Day, x: X): Stretch[] {
  const first = yearOf(today);
  const counts = counted(rows, today);
  const of = (key: string, title: string, from: Day | null, to: Day | null, left: number, right: number): Stretch => ({
    ...(counts.get(key) ?? { aircraft: 0, dates: 0 }),
    key,
    title,
    from,
    to,
    x: left,
    w: right - left,
  });
  const years = Array.from({ length: YEARS + 1 }, (_, i) => {
    const y = first + i;
    const from = i === 0 ? addDays(today, 1) : (`${y}-01-01` as Day);
    return of(String(y), String(y), from, `${y}-12-31` as Day, x(dayNumber(from)), x(newYear(y + 1)));
  });
  return [
    of('now', 'Overdue or due now', null, today, LEFT, NOW),
    ...years.filter((y) => y.from !== null && y.to !== null && y.from <= y.to),
    of('later', `After ${first + YEARS}`, `${first + YEARS + 1}-01-01` as Day, null, RIGHT - LATER, RIGHT),
  ];
}
const falls = (n: number): string => (n === 1 ? 'falls' : 'fall');
const zoneWords = (s: Stretch): string =>
  s.key === 'now'
    ? `${count(s.aircraft, 'aircraft', 'aircraft')} overdue or due now`
    : `${s.title}: ${count(s.aircraft, 'aircraft', 'aircraft')} ${falls(s.aircraft)} due`;
const describe = (all: readonly Stretch[], now: number): string =>
  all
    .filter((s) => s.aircraft > 0 || (s.key === 'now' && now > 0))
    .map((s) => `${zoneWords(s)}.`)
    .join(' ') || 'Nothing falls due.';

function axisMarks(s: Stretch, bottom: number): Mark[] {
  const middle = s.x + s.w / 2;
  const edge = line(s.x, TOP - 6, s.x, bottom, 'hair');
  if (s.key === 'now')
    return [text(middle, bottom + 16, 'overdue or due', { ink: 'soft', size: 11, anchor: 'middle' })];
  if (s.w < 26) return [edge];
  const title = s.key === 'later' ? 'later' : s.title;
  return [
    edge,
    text(middle, bottom + 16, title, { ink: 'soft', size: 11, anchor: 'middle' }),
    ...(s.aircraft ? [text(middle, bottom + 31, number(s.aircraft), { size: 12, anchor: 'middle', bold: true })] : []),
  ];
}

/** What is due now hangs over the left end, one bar for all of it, its aircraft counted. */
function hanging(now: readonly DueMark[], rows: readonly ShownAircraft[], bottom: number): Mark[] {
  const aircraft = new Set(now.map((m) => m.registration));
  for (const row of rows) if (row.settling) aircraft.add(row.aircraft.registration);
  const middle = (LEFT + NOW) / 2;
  // The first of the row says what its figures count.
  if (!aircraft.size) return [text(middle, bottom + 31, 'aircraft', { ink: 'soft', size: 12, anchor: 'middle' })];
  const counted = count(aircraft.size, 'aircraft', 'aircraft');
  const overdue = new Set(now.filter((m) => m.shown.standing.worst === 'overdue').map((m) => m.registration)).size;
  const words = overdue ? `${number(overdue)} overdue` : `${number(aircraft.size)} due`;
  return [
    { is: 'rect', x: LEFT + 6, y: TOP, w: NOW - LEFT - 6, h: 12, stroke: 'none', fill: 'dye', width: 0, title: words },
    text(LEFT + 6, TOP + 28, words, { ink: 'dye', bold: true, size: 12 }),
    text(middle, bottom + 31, counted, { ink: 'dye', size: 12, anchor: 'middle', bold: true }),
  ];
}

/** Few enough to draw one by one: a tick on its day, a hairline over its range, lanes so that none covers another. */
function inLanes(all: readonly DueMark[], x: X): { marks: Mark[]; height: number } {
  const ends: number[] = [];
  const marks: Mark[] = [];
  for (const same of onOneDay(all)) {
    const m = same[0]!;
    const range = rangeOf(m.shown);
    const [from, at, to] = [range ? x(range.from) : x(m.at), x(m.at), range ? x(range.to) : x(m.at)];
    const free = ends.findIndex((e) => e + 4 < from);
    const lane = free < 0 ? ends.length : free;
    ends[lane] = Math.max(to, at + (same.length > 1 ? 48 : 2));
    const y = TOP + 6 + lane * LANE;
    const act = same.some((d) => d.shown.standing.worst === 'soon due');
    if (to - from > 1) marks.push(line(r(from), y, r(to), y, 'soft', 0.8));
    marks.push({
      is: 'path',
      d: `M${r(at)} ${y - 4}V${y + 4}`,
      stroke: act ? 'dye' : 'ink',
      fill: 'none',
      width: act || same.length > 1 ? 3 : 1.8,
      title: same.length > 1 ? `${m.shown.about}: ${count(same.length, 'due date')}` : nameOf(m),
    });
    if (same.length > 1) marks.push(text(r(at) + 4, y + 3, `${number(same.length)} dates`, { size: 10 }));
  }
  return { marks, height: Math.max(60, ends.length * LANE + 12) };
}
const nameOf = (m: DueMark): string =>
  `${m.registration}, ${m.shown.line.directive}, ${m.shown.line.partName}: ${m.shown.about}`;
/** Dates without a range that fall on one day are one mark, counted beside it. */
function onOneDay(all: readonly DueMark[]): DueMark[][] {
  const groups = new Map<string, DueMark[]>();
  for (const [i, m] of [...all].sort((a, b) => a.at - b.at).entries()) {
    const range = rangeOf(m.shown);
    const key = range && range.to > range.from ? `one ${i}` : `day ${m.at}`;
    groups.set(key, [...(groups.get(key) ?? []), m]);
  }
  return [...groups.values()];
}

const BARS = 120;
/** Too many to draw one by one: a bar for each month, its height the number of due dates, the highest one named. */
function byMonth(all: readonly DueMark[], x: X, first: number, today: Day): { marks: Mark[]; height: number } {
  const counts = new Map<string, { n: number; act: number }>();
  for (const m of all) {
    const key = m.shown.when!.slice(0, 7);
    const c = counts.get(key) ?? { n: 0, act: 0 };
    counts.set(key, { n: c.n + 1, act: c.act + (m.shown.standing.worst === 'soon due' ? 1 : 0) });
  }
  const most = Math.max(...[...counts.values()].map((c) => c.n));
  const y = scaleLinear().domain([0, most]).range([0, BARS]);
  const base = TOP + BARS + 8;
  const marks: Mark[] = [];
  for (const [key, { n, act }] of counts) {
    const from = Math.max(dayNumber(today), dayNumber(`${key}-01` as Day));
    const month = Number(key.slice(5, 7));
    const next =
      month === 12
        ? `${Number(key.slice(0, 4)) + 1}-01-01`
        : `${key.slice(0, 5)}${String(month + 1).padStart(2, '0')}-01`;
    const left = x(from) + 0.5;
    const w = Math.max(1, x(dayNumber(next as Day)) - left - 0.5);
    const bar = (h: number, from: number, ink: 'dye' | 'ink'): Mark => ({
      is: 'rect',
      x: r(left),
      y: r(base - from - h),
      w: r(w),
      h: r(h),
      stroke: 'none',
      fill: ink,
      width: 0,
      title: `${key}: ${count(n, 'due date')}`,
    });
    if (act) marks.push(bar(y(act), 0, 'dye'));
    if (n > act) marks.push(bar(y(n - act), y(act), 'ink'));
    if (n === most)
      marks.push(text(r(left + w / 2), r(base - y(n) - 4), count(n, 'due date'), { size: 11, anchor: 'middle' }));
  }
  marks.push(line(x(dayNumber(today)), base, x(newYear(first + YEARS + 1)), base, 'ink', 1));
  return { marks, height: BARS + 10 };
}

function tableOf(stretches: readonly Stretch[]): TableBlock {
  const figure = (n: number) => ({ is: 'quantity' as const, value: n, unit: '', places: 0, text: number(n) });
  return {
    block: 'table',
    title: 'Years in which they fall due',
    columns: [
      { key: 'years', title: 'Year', align: 'left' },
      { key: 'aircraft', title: 'Aircraft', align: 'right' },
      { key: 'dates', title: 'Due dates', align: 'right' },
    ],
    rows: stretches.map((s) => ({
      id: s.key,
      cells: { years: { is: 'text', text: s.title }, aircraft: figure(s.aircraft), dates: figure(s.dates) },
    })),
    empty: 'Nothing falls due.',
  };
}
