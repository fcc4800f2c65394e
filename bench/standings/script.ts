import pg from 'pg';
import { type Day, dayNumber } from '../../engine/index.ts';
import { Answers, aircraftNumber, NONE } from './answers.ts';
import { SHOP, TODAY } from './fleet.ts';

/**
 * The straightforward script: reads the rows of the log in order, adds them up aircraft by aircraft and holds the
 * rules against the sums, each written out by hand. Knows nothing of the engine but its calendar.
 */
interface Row {
  readonly number: number;
  readonly subject: string;
  readonly kind: string;
  readonly day: string;
  readonly body: string;
}
const PAGE = 20_000;
const MIX = '2024-11-24';
const EFFECTIVE = '2025-06-01';
const now = dayNumber(TODAY);
const round6 = (x: number) => Math.round(x * 1e6) / 1e6;

class Plane {
  model = '';
  built = '';
  hours = 0;
  landings = 0;
  towLandings = 0;
  tow = 0;
  instruction = 0;
  recent = { h: 0, n: 0, tow: 0, towN: 0, instruction: 0 };
  since = { h: 0, tow: 0, instruction: 0 };
  gap: { from: string; to: string } | null = null;
  readings: { day: string; h: number; n: number }[] = [];
  numbers: Record<string, string> = {};
  done: Record<string, { day: string; h: number }> = {};
}

export async function byScript(url: string, aircraft: number): Promise<{ all: Answers; tried: Answers }> {
  const client = new pg.Client(url);
  await client.connect();
  const { rows: gone } = await client.query<{ replaces: number }>(
    'select replaces from log where shop = $1 and replaces is not null',
    [SHOP],
  );
  const replaced = new Set(gone.map((r) => r.replaces));
  const all = new Answers(aircraft);
  const tried = new Answers(aircraft);
  let plane = new Plane();
  let at = -1;
  const finish = () => at >= 0 && answer(plane, at, all, tried);
  for (let after = 0; ; ) {
    const { rows } = await client.query<Row>(
      'select number, subject, kind, day, body from log where shop = $1 and number > $2 order by number limit $3',
      [SHOP, after, PAGE],
    );
    if (!rows.length) break;
    after = rows.at(-1)!.number;
    for (const r of rows) {
      const i = aircraftNumber(r.subject);
      if (i !== at) {
        finish();
        plane = new Plane();
        at = i;
      }
      if (!replaced.has(r.number)) add(plane, r);
    }
  }
  finish();
  await client.end();
  return { all, tried };
}

function add(p: Plane, r: Row): void {
  const b = JSON.parse(r.body);
  if (r.kind === 'aircraft') {
    p.model = b.model;
    p.built = b.built;
  } else if (r.kind === 'part') p.numbers[r.subject.at(-1)!] = b.part_number;
  else if (r.kind === 'gap') p.gap = b;
  else if (r.kind === 'reading') p.readings.push({ day: r.day, h: b.total_h, n: b.landings });
  else if (r.kind === 'accomplished') p.done[b.directive] = { day: r.day, h: b.total_h };
  else if (r.kind === 'flights') {
    p.hours += b.hours_h;
    p.landings += b.landings;
    const [tow, instruction] = [b.use === 'tow', b.use === 'instruction'];
    if (tow) {
      p.tow += b.hours_h;
      p.towLandings += b.landings;
    }
    if (instruction) p.instruction += b.hours_h;
    if (r.day > MIX) {
      p.recent.h += b.hours_h;
      p.recent.n += b.landings;
      if (tow) {
        p.recent.tow += b.hours_h;
        p.recent.towN += b.landings;
      }
      if (instruction) p.recent.instruction += b.hours_h;
    }
    if (r.day > EFFECTIVE) {
      p.since.h += b.hours_h;
      if (tow) p.since.tow += b.hours_h;
      if (instruction) p.since.instruction += b.hours_h;
    }
  }
}

const near = (left: number, at: boolean, soon: number): number => {
  const r = round6(left);
  if (r < 0) return 6;
  if (r === 0 && at) return 5;
  return round6(r / soon) <= 1 ? 4 : 3;
};
const NOT_AFFECTED = [1, NONE, NONE, NONE];

function answer(p: Plane, i: number, all: Answers, tried: Answers): void {
  const before = p.gap && p.readings.find((r) => dayNumber(r.day as Day) === dayNumber(p.gap!.from as Day) - 1)!;
  const after = p.gap && p.readings.find((r) => r.day === p.gap!.to)!;
  const lost = before && after ? { h: after.h - before.h, n: after.n - before.n } : { h: 0, n: 0 };
  const total = p.hours + lost.h;
  const landings = p.landings + lost.n;
  const total_s = Math.round(total * 3600);
  const { recent } = p;
  const perHour = recent.n / recent.h;
  const dueAt = (hours: number | null) =>
    hours === null ? NONE : Math.max(0, Math.floor(total_s + Math.round(hours * 3600)));
  const dueLandings = (more: number | null) => (more === null ? NONE : Math.max(0, Math.floor(landings + more + 1e-6)));

  const counted = (
    low: number,
    high: number,
    rate: number,
    soon: number,
    steepest: number,
    at: boolean,
    unit: 'h' | 'landings',
  ) => {
    const end = (left: number, s: number) => {
      const hours = rate > 0 ? round6(left) / rate : null;
      return unit === 'h'
        ? [near(left, at, s), dueAt(hours), NONE, NONE]
        : [near(left, at, s), NONE, dueLandings(hours === null ? null : hours * perHour), NONE];
    };
    return [...end(low, p.gap ? Math.max(soon, steepest) : soon), ...end(high, soon)];
  };
  const capRate = (recent.n + 2 * recent.towN) / recent.h;
  const capSoon = (150 / Math.max(perHour, 0.01)) * capRate;
  const cap = (limit: number) =>
    counted(
      limit - (landings + 2 * (p.towLandings + lost.n)),
      limit - (landings + 2 * p.towLandings),
      capRate,
      capSoon,
      450,
      true,
      'landings',
    );
  const weightedRate = 1 + (1.5 * recent.tow + 0.5 * recent.instruction) / recent.h;
  const hardRate = (recent.tow + recent.instruction) / recent.h;
  const twice = (end: number[]) => [...end, ...end];

  for (const [thing, side] of [
    [1, 'L'],
    [2, 'R'],
  ] as const) {
    const done = side === 'L' ? p.done : {};
    const [d1, d4] = [done['B-01'], done['B-04']];
    const afterWork = (n: number, was: object | undefined) => (was && n === 3 ? 2 : n);
    const left1 = d1 ? 500 - (total - d1.h) : 2500 - total;
    all.put(i, thing, 0, twice([afterWork(near(left1, true, 50), d1), dueAt(left1), NONE, NONE]));
    all.put(i, thing, 1, cap(6000));
    const weighted = total + 1.5 * p.tow + 0.5 * p.instruction;
    all.put(
      i,
      thing,
      2,
      counted(3500 - (weighted + 1.5 * lost.h), 3500 - weighted, weightedRate, 50 * weightedRate, 125, false, 'h'),
    );
    const left4 = d4 ? 300 - (total - d4.h) : 100 - p.since.h;
    const day4 = d4 ? dayNumber(d4.day as Day) + 730 : dayNumber(EFFECTIVE as Day) + 500;
    all.put(
      i,
      thing,
      3,
      twice([afterWork(Math.max(near(left4, true, 50), near(day4 - now, true, 180)), d4), dueAt(left4), NONE, day4]),
    );
    all.put(i, thing, 4, twice([near(5000 - landings, true, 150), NONE, dueLandings(5000 - landings), NONE]));
    const on = dayNumber('2027-06-30' as Day);
    all.put(i, thing, 5, twice(p.model === 'B-2' ? [near(on - now, true, 180), NONE, NONE, on] : NOT_AFFECTED));
    const hard = p.tow + p.instruction;
    const hardSoon = 50 * (hardRate > 0 ? hardRate : 1);
    all.put(
      i,
      thing,
      6,
      p.numbers[side] === 'S-100'
        ? counted(1500 - (hard + lost.h), 1500 - hard, hardRate, hardSoon, 50, true, 'h')
        : twice(NOT_AFFECTED),
    );
    const [a, b] = [1500 - total, 50 - p.since.h];
    const [na, nb] = [near(a, true, 50), near(b, true, 50)];
    const firstOne = na < nb || (na === nb && a >= b);
    all.put(i, thing, 7, twice([firstOne ? na : nb, dueAt(firstOne ? a : b), NONE, NONE]));
    tried.put(i, thing, 10, p.model === 'B-1' ? cap(5000) : twice(NOT_AFFECTED));
  }
  const on9 = dayNumber(p.built as Day) + 6000;
  all.put(i, 0, 8, twice([near(on9 - now, true, 180), NONE, NONE, on9]));
  const since = p.since.h + 1.5 * p.since.tow + 0.5 * p.since.instruction;
  all.put(i, 0, 9, counted(400 - since, 400 - since, weightedRate, 50 * weightedRate, 125, true, 'h'));
}
