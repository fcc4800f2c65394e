import { SECONDS_PER_HOUR } from '../../foundation/convert.ts';
import { dayNumber } from '../../foundation/day.ts';
import {
  type Amounts,
  beforeCut,
  isLot,
  READING,
  SPAN,
  type Sums,
  spanHours_s,
  spanLandings,
} from '../../record/index.ts';
import { mixFrom, PRIVATE } from '../mix.ts';
import type { Mix } from '../model.ts';
import type { AskedDay } from './asked.ts';

const EXACT_H = 0.01;
const MOSTLY = 0.99;
interface Settled {
  readonly total: number;
  readonly sum: number;
  readonly uses: readonly { readonly use: string; readonly h: number; readonly l: number }[];
}

/** `mixOf` over sums: the recent flying by use, as far as the papers settle it. @throws NotPlain */
export function mixOfSums(s: Sums, asked: AskedDay, cuts: readonly number[], at: (day: number) => Amounts): Mix {
  const from = dayNumber(mixFrom(asked.day));
  const first = settledSince(s, asked, at, from);
  if (first.sum >= MOSTLY * first.total) return mixed(s, asked, first, from);
  for (const since of bordersOf(s, cuts, from)) {
    const cut = cuts.findLast((c) => c <= since) ?? Number.NEGATIVE_INFINITY;
    const found = settledSince(s, asked, at, cut);
    if (found.total > 1 && found.sum >= MOSTLY * found.total) return mixed(s, asked, found, since);
  }
  return mixed(s, asked, first, from);
}

/** Days at which a stretch of the life begins, and the days before them; newest first. */
function bordersOf(s: Sums, cuts: readonly number[], from: number): number[] {
  const built = dayNumber(s.built);
  const edges = [
    ...cuts,
    ...s.periods.flatMap((p) => (p.to === null ? [p.after] : [p.after, p.to])),
    ...s.gaps.flatMap((g) => [g.after, g.to]),
  ].filter((d) => d >= built && d < s.known);
  const all = new Set([built, ...edges].flatMap((d) => [d, d - 1]));
  return [...all].filter((d) => d < from).sort((a, b) => b - a);
}

/** What is settled of the flying since the end of a day. */
function settledSince(s: Sums, asked: AskedDay, at: (day: number) => Amounts, day: number): Settled {
  const now = at(asked.number);
  const was = at(day);
  const policy = asked.policy;
  const cut = was.cut < 0 ? null : beforeCut(s, was.cut, day, policy);
  const cutUse = was.cut < 0 ? -1 : s.spans[was.cut * SPAN + 4]!;
  let [openHours, openLandings] = [0, 0];
  for (let i = was.cut < 0 ? was.spans : was.spans + 1; i < now.spans; i++)
    if (isLot(s, i)) {
      openHours += spanHours_s(s, i);
      openLandings += spanLandings(s, i);
    }
  const hours = (x: number) => x / SECONDS_PER_HOUR;
  const uses: Settled['uses'][number][] = [];
  let sum = 0;
  s.uses.forEach((use, u) => {
    let [h, wide] = [now.hours_s[u]! - was.hours_s[u]!, openHours];
    let [l, wideL] = [now.landingsBy[u]! - was.landingsBy[u]!, openLandings];
    if (cut) {
      const [cutHours, cutLandings] = [spanHours_s(s, was.cut), spanLandings(s, was.cut)];
      if (cutUse === u) {
        // All of the span stands in `now`; what lay before the cut is open.
        h -= cut.hours_s[1];
        wide += cut.hours_s[1] - cut.hours_s[0];
        l -= cut.landings[1];
        wideL += cut.landings[1] - cut.landings[0];
      } else if (cutUse < 0) {
        wide += cutHours - cut.hours_s[0];
        wideL += cutLandings - cut.landings[0];
      }
    }
    if (hours(wide) > EXACT_H || hours(h) <= EXACT_H) return;
    uses.push({ use, h: hours(h), l: wideL <= EXACT_H ? l : 0 });
    sum += hours(h);
  });
  const wide = cut ? cut.hours_s[1] - cut.hours_s[0] : 0;
  const total = now.total_s - was.total_s - (cut ? cut.hours_s[1] : 0);
  return { total: hours(wide) <= EXACT_H ? hours(total) : Number.POSITIVE_INFINITY, sum, uses };
}

function mixed(s: Sums, asked: AskedDay, { sum, uses }: Settled, since: number): Mix {
  if (sum <= 0) return { ...PRIVATE, landingsPerHour: { private: landingsPerHour(s, asked, since) } };
  const hours: Record<string, number> = {};
  const perHour: Record<string, number> = {};
  let overall: number | null = null;
  for (const { use, h, l } of uses) {
    hours[use] = h / sum;
    if (l <= 0) overall ??= landingsPerHour(s, asked, since);
    perHour[use] = l > 0 ? l / h : overall!;
  }
  return { hours, landingsPerHour: perHour, from: 'recent record' };
}

function landingsPerHour(s: Sums, asked: AskedDay, from: number): number {
  const { readings: r } = s;
  let [first, before, last] = [-1, -1, -1];
  for (let i = 0; i < r.length && r[i]! <= asked.number; i += READING) {
    if (r[i + 2]! < 0) continue;
    if (first < 0) first = i;
    if (r[i]! <= from) before = i;
    last = i;
  }
  if (before >= 0) first = before;
  if (last < 0 || r[last + 1]! - r[first + 1]! < SECONDS_PER_HOUR) return 1;
  return ((r[last + 2]! - r[first + 2]!) / (r[last + 1]! - r[first + 1]!)) * SECONDS_PER_HOUR;
}
