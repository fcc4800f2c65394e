import { SECONDS_PER_HOUR } from '../../foundation/convert.ts';
import { type Day, dayFromNumber, dayNumber } from '../../foundation/day.ts';
import { SLIP_S, seconds } from '../amounts.ts';
import type { Entry, Policy } from '../document.ts';
import type { Circle } from './circle.ts';
import { SPAN, type SummedGap, type SummedPeriod } from './model.ts';
import { NotPlain } from './not-plain.ts';

interface Row {
  readonly day: number;
  readonly order: number;
  readonly use: number;
  hours_s: number;
  landings: number;
}
interface Knot {
  readonly day: number;
  readonly order: number;
  readonly total_s: number;
  readonly landings: number | null;
}
/** Flown between two readings, and listed by no row. */
interface Open {
  readonly from: number;
  readonly to: number;
  readonly hours_s: number;
  readonly landings: number;
}
export interface Walk {
  readonly rows: readonly Row[];
  readonly open: readonly Open[];
  readonly readings: readonly { readonly day: number; readonly total_s: number; readonly landings: number | null }[];
  readonly known: number;
}
const before = (a: { day: number; order: number }, b: { day: number; order: number }): boolean =>
  a.day < b.day || (a.day === b.day && a.order < b.order);

/** Readings and rows of an aircraft, added up against each other, in one walk. @throws NotPlain */
export function walkOf(circle: Circle, uses: readonly string[]): Walk {
  const built = dayNumber(circle.opening.body.built as Day);
  const knots = knotsOf(circle, built);
  const rows = rowsOf(circle.own, built, uses);
  const last = knots.at(-1)!;
  const open: Open[] = [];
  let r = 0;
  let counted = knots[0]!;
  let listed = 0;
  let lastRow: Row | null = null;
  let pending: { from: Knot; to: Knot; hours_s: number } | null = null;
  for (let k = 1; k < knots.length; k++) {
    const [from, to] = [knots[k - 1]!, knots[k]!];
    const first = r;
    let sum = 0;
    for (; r < rows.length && !before(to, rows[r]!); r++) {
      sum += rows[r]!.hours_s;
      listed += rows[r]!.landings;
      lastRow = rows[r]!;
    }
    const rest = to.total_s - from.total_s - sum;
    if (r > first) {
      if (Math.abs(rest) > SLIP_S) throw new NotPlain('rows that do not add up to the totals');
      rows[r - 1]!.hours_s = Math.max(0, rows[r - 1]!.hours_s + rest);
    } else if (rest > 0) {
      if (from !== counted || to.landings === null) throw new NotPlain('a reading without landings');
      pending = { from, to, hours_s: rest };
    }
    if (to.landings === null) continue;
    const more = to.landings - counted.landings! - listed;
    if (more < 0) throw new NotPlain('landings that do not add up');
    if (pending) open.push({ from: pending.from.day, to: to.day, hours_s: pending.hours_s, landings: more });
    else if (more > 0) {
      if (!lastRow) throw new NotPlain('landings without hours');
      lastRow.landings += more;
    }
    [counted, listed, lastRow, pending] = [to, 0, null, null];
  }
  const readings = knots.slice(1).map(({ day, total_s, landings }) => ({ day, total_s, landings }));
  readings.push(...carriedOn(rows.slice(r), last));
  const known = Math.max(last.day, rows.at(-1)?.day ?? 0);
  return { rows, open, readings, known };
}

/** A log by flights carries its total on from the last reading: it is shown once a month and at its end. */
function carriedOn(rows: readonly Row[], last: Knot): Walk['readings'][number][] {
  let { total_s, landings } = last;
  const month = (r: Row) => dayFromNumber(r.day).slice(0, 7);
  return rows.flatMap((row, n) => {
    total_s += row.hours_s;
    landings = landings === null ? null : landings + row.landings;
    const next = rows[n + 1];
    return !next || month(next) !== month(row) ? [{ day: row.day, total_s, landings }] : [];
  });
}

function knotsOf(circle: Circle, built: number): Knot[] {
  const found: Knot[] = [];
  const declared = new Set<string>();
  for (const e of circle.own) {
    if (e.kind !== 'reading') continue;
    if (e.body.total_h === undefined) throw new NotPlain('a reading without a total');
    const total_s = seconds(e.body.total_h);
    declared.add(`${e.day} ${total_s}`);
    found.push({ day: dayNumber(e.day), order: e.order, total_s, landings: e.body.landings ?? null });
  }
  for (const e of circle.stating) {
    const total_s = seconds(e.body.total_h!);
    const key = `${e.day} ${total_s}`;
    if (declared.has(key)) continue;
    declared.add(key);
    found.push({ day: dayNumber(e.day), order: e.order, total_s, landings: null });
  }
  if (found.length === 0) throw new NotPlain('no reading');
  found.sort((a, b) => a.day - b.day || a.order - b.order);
  let counted = 0;
  found.forEach((k, i) => {
    const was = found[i - 1] ?? { day: built, order: 10_000, total_s: 0 };
    if (!before(was, k)) throw new NotPlain('two readings at one moment');
    if (k.total_s < was.total_s || (k.landings ?? counted) < counted) throw new NotPlain('a reading that falls');
    counted = k.landings ?? counted;
  });
  return [{ day: built, order: -1, total_s: 0, landings: 0 }, ...found];
}

function rowsOf(own: readonly Entry[], built: number, uses: readonly string[]): Row[] {
  const rows: Row[] = [];
  for (const e of own) {
    if (e.kind !== 'flights') continue;
    const { from, use, landings, hours_h } = e.body;
    if (from !== undefined || use === undefined || landings === undefined) throw new NotPlain('a row that is open');
    const day = dayNumber(e.day);
    if (day <= built) throw new NotPlain('a row on the day it was built');
    rows.push({ day, order: e.order, use: uses.indexOf(use), hours_s: seconds(hours_h), landings });
  }
  return rows;
}

/** Each open stretch with the use that a paper states for it, or the gap in which it lies. @throws NotPlain */
export function spansOf(
  walk: Walk,
  periods: readonly SummedPeriod[],
  gaps: readonly SummedGap[],
  uses: readonly string[],
  policy: Policy,
): Int32Array {
  const out = new Int32Array(walk.open.length * SPAN);
  const perLanding_s = SECONDS_PER_HOUR / policy.ceiling_landings_per_hour;
  walk.open.forEach((o, i) => {
    if (o.hours_s > (o.to - o.from) * policy.ceiling_hours_per_day * SECONDS_PER_HOUR)
      throw new NotPlain('more hours than the ceiling');
    if ((o.landings + 1) * perLanding_s > o.hours_s) throw new NotPlain('more landings than the ceiling');
    out.set([o.from, o.to, o.hours_s, o.landings, useOf(o, periods, gaps, uses)], i * SPAN);
  });
  return out;
}

function useOf(o: Open, periods: readonly SummedPeriod[], gaps: readonly SummedGap[], uses: readonly string[]): number {
  const inside = gaps.findIndex((g) => g.after <= o.from && o.to <= g.to);
  if (inside >= 0) return -1 - inside;
  if (gaps.some((g) => g.after < o.to && o.from < g.to))
    throw new NotPlain('a gap that begins or ends between readings');
  const over = periods.filter((p) => p.after < o.to && o.from < (p.to ?? Number.POSITIVE_INFINITY));
  const [first] = over;
  if (!first || over.some((p) => p.use !== first.use)) throw new NotPlain('time without a stated use');
  let reached = o.from;
  for (const p of [...over].sort((a, b) => a.after - b.after))
    if (p.after <= reached) reached = Math.max(reached, p.to ?? Number.POSITIVE_INFINITY);
  if (reached < o.to) throw new NotPlain('time without a stated use');
  return uses.indexOf(first.use);
}
