import { SECONDS_PER_HOUR } from '../../foundation/convert.ts';
import { type Day, dayNumber } from '../../foundation/day.ts';
import { beforeCut, isLot, NotPlain, SPAN, spanHours_s, spanLandings } from '../../record/index.ts';
import { factAt, type SwiftLife } from './life.ts';
import type { Linear, Term } from './linear.ts';

/** Both ends of a figure, with the spans that leave it open (of a figure since a day they settle: those before it). */
export interface Ends {
  readonly low: number;
  readonly high: number;
  readonly papers: readonly number[];
}

/** Weights of one use, or of none that is named. */
interface Weight {
  readonly hour: number;
  readonly landing: number;
}

/**
 * Ends of a weighted sum of facts, since a day or since new.
 *
 * In a gap of H hours and L landings, at most c landings an hour in any use: with the landings of a use as one part
 * of its hours and s = c h - l as the other, the histories are a product of two simplices, sum l = L and
 * sum s = c H - L. A weighted sum a h + b l = (a / c + b) l + (a / c) s is then at an end where all landings lie in
 * the use that weighs them most (least), and all the rest in the use that weighs an hour most (least).
 *
 * @throws NotPlain where a cut splits a stretch whose weights pull two ways
 */
export function linearEnds(f: Linear, terms: readonly Term[], life: SwiftLife, then: Day | null): Ends {
  const { sums, now } = life;
  let value = f.constant * (then === null ? 1 : 0);
  for (const t of terms)
    if (t.weight !== 0)
      value += t.weight * (settled(life, t, life.asked.day) - (then === null ? 0 : settled(life, t, then)));
  let [low, high] = [value, value];
  const was = then === null ? null : life.at(dayNumber(then));
  const papers: number[] = [];
  const before: number[] = [];
  const from = was === null ? 0 : was.spans + (was.cut >= 0 ? 1 : 0);
  let weights: Weight[] | null = null;
  for (let i = 0; i < now.spans; i++) {
    if (!isLot(sums, i)) continue;
    weights ??= weightsOf(f, sums.uses);
    if (weights.every((w) => w.hour === 0 && w.landing === 0)) break;
    if (i < from) {
      before.push(i);
      continue;
    }
    papers.push(i);
    const perHour = life.asked.policy.ceiling_landings_per_hour;
    const [a, b] = lotEnds(weights, spanHours_s(sums, i), spanLandings(sums, i), perHour);
    low += a;
    high += b;
  }
  if (was && was.cut >= 0) {
    const [a, b] = cutEnds(f, life, was.cut, dayNumber(then!));
    if (a !== b) papers.push(was.cut);
    low += a;
    high += b;
  }
  return { low, high, papers: papers.length > 0 ? papers : before };
}

/** A fact as far as it is settled: gaps and cut spans left out, whole spans in the totals. */
function settled(life: SwiftLife, { name, what, use }: Term, day: Day): number {
  if (what !== 'hours' && what !== 'landings') return factAt(life, name, day)!;
  const a = day === life.asked.day ? life.now : life.at(dayNumber(day));
  const unit = what === 'hours' ? SECONDS_PER_HOUR : 1;
  if (use === 'total') return (what === 'hours' ? a.total_s : a.landings) / unit;
  const u = life.sums.uses.indexOf(use);
  return u < 0 ? 0 : (what === 'hours' ? a.hours_s : a.landingsBy)[u]! / unit;
}

/** Weights by use; uses that the formula does not name weigh nothing and stand for one. */
function weightsOf(f: Linear, uses: readonly string[]): Weight[] {
  const named = uses.filter((u) => f.weights.get(`hours.${u}`) || f.weights.get(`landings.${u}`));
  const out = named.map((u) => ({
    hour: f.weights.get(`hours.${u}`) ?? 0,
    landing: f.weights.get(`landings.${u}`) ?? 0,
  }));
  return named.length < uses.length ? [...out, { hour: 0, landing: 0 }] : out;
}

function lotEnds(weights: readonly Weight[], hours_s: number, landings: number, perHour: number): [number, number] {
  const rest = (perHour * hours_s) / SECONDS_PER_HOUR - landings;
  let [leastLanding, mostLanding, leastHour, mostHour] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const w of weights) {
    const hour = w.hour / perHour;
    leastLanding = Math.min(leastLanding, hour + w.landing);
    mostLanding = Math.max(mostLanding, hour + w.landing);
    leastHour = Math.min(leastHour, hour);
    mostHour = Math.max(mostHour, hour);
  }
  return [landings * leastLanding + rest * leastHour, landings * mostLanding + rest * mostHour];
}

/** What the part of a cut span before the cut takes off. */
function cutEnds(f: Linear, life: SwiftLife, span: number, day: number): [number, number] {
  const { sums } = life;
  const u = sums.spans[span * SPAN + 4]!;
  const of = (what: string) =>
    (f.weights.get(`${what}.total`) ?? 0) + (u < 0 ? 0 : (f.weights.get(`${what}.${sums.uses[u]}`) ?? 0));
  const named = [...f.weights].some(([n, w]) => w !== 0 && /^(hours|landings)\.(?!total$)/.test(n));
  if (u < 0 && named) throw new NotPlain('a gap that is cut where use counts');
  const [h, l] = [of('hours'), of('landings')];
  if (h * l < 0) throw new NotPlain('weights that pull two ways');
  const cut = beforeCut(sums, span, day, life.asked.policy);
  const low =
    Math.min(h * cut.hours_s[0], h * cut.hours_s[1]) / SECONDS_PER_HOUR +
    Math.min(l * cut.landings[0], l * cut.landings[1]);
  const high =
    Math.max(h * cut.hours_s[0], h * cut.hours_s[1]) / SECONDS_PER_HOUR +
    Math.max(l * cut.landings[0], l * cut.landings[1]);
  return [-high, -low];
}
