import { gammaLogDensity, gammaP, negativeBinomialLogMass } from './distributions.ts';
import {
  BUSY_H_PER_YEAR,
  BUSY_SPREAD,
  DAYS_PER_YEAR,
  LUMP_WEIGHTS,
  LUMPS_H,
  METER_STEP_H,
  type Prior,
  UNSEEN,
  UNSEEN_BESIDE,
  WANDER_WEIGHTS,
  WANDERS,
} from './prior.ts';
import { type Interval, mayShowSeason, operationalDays, type Season, seasonOf } from './season.ts';

/** Grid of yearly hours: equal steps of the logarithm from idle to a busy school. */
export const STEP = 0.07;
const LOW_H_PER_YEAR = 0.4;
export const RATES: Float64Array = Float64Array.from({ length: 122 }, (_, k) => LOW_H_PER_YEAR * Math.exp(k * STEP));
const K = RATES.length;

/**
 * What is counted. `scale`: how much of it one hour flown makes, so that rates stay in hours a year.
 * Hours and weighted figures flow (gamma process); landings are counted (its Gamma-Poisson mixture).
 */
export interface Counted {
  readonly is: 'flow' | 'count';
  readonly scale: number;
}

/** What is known of a habit at the last reading: weight per lumpiness, wander and rate; sums to 1. */
export interface HabitKnown {
  readonly counted: Counted;
  readonly season: Season;
  /** Depth of a season that may be there and does not show. */
  readonly seasonUnseen: number;
  readonly weights: readonly (readonly Float64Array[])[];
  /** Chance that the habit changed within the record, per interval. */
  readonly changed: readonly number[];
}

export function priorOverRates(prior: Prior): Float64Array {
  const bell = (median: number, spread: number) => {
    const w = RATES.map((rate) => {
      const z = Math.log(rate / median) / spread;
      return Math.exp((-z * z) / 2);
    });
    const sum = w.reduce((a, b) => a + b, 0);
    return w.map((x) => x / sum);
  };
  const own = bell(prior.median_h_per_year, prior.spread);
  const busy = bell(BUSY_H_PER_YEAR, BUSY_SPREAD);
  const idle = RATES.filter((rate) => rate < 3).length;
  const rest = 1 - prior.idle_share - prior.busy_share;
  return own.map((w, k) => rest * w + prior.busy_share * busy[k]! + (k < idle ? prior.idle_share / idle : 0));
}

interface Kernel {
  readonly deviation: number;
  readonly shift: number;
  readonly reach: number;
  readonly weights: Float64Array;
  readonly total: number;
}
/** The last kernels made: every lumpiness is spread by the same few. */
const MADE: (Kernel | undefined)[] = new Array(16);
let newest = 0;
function kernelOf(deviation: number, shift: number, reach: number): Kernel {
  for (const k of MADE) if (k?.deviation === deviation && k.shift === shift) return k;
  const weights = new Float64Array(2 * reach + 1);
  let total = 0;
  for (let i = 0; i <= 2 * reach; i++) {
    const z = ((i - reach) * STEP - shift) / deviation;
    weights[i] = Math.exp((-z * z) / 2);
    total += weights[i]!;
  }
  const made = { deviation, shift, reach, weights, total };
  newest = (newest + 1) % MADE.length;
  MADE[newest] = made;
  return made;
}

/** Spreads weights over log rate by a normal with this deviation; what would leave the grid stays at its end. */
export function blur(w: Float64Array, deviation: number, shift = 0): Float64Array {
  const reach = Math.ceil((3.5 * deviation + shift) / STEP);
  if (reach === 0 || deviation < STEP / 3) return w;
  const { weights, total } = kernelOf(deviation, shift, reach);
  const out = new Float64Array(K);
  const width = 2 * reach + 1;
  for (let k = 0; k < K; k++) {
    if (w[k]! < 1e-12) continue;
    const mass = w[k]! / total;
    const first = k - reach;
    if (first >= 0 && first + width <= K) for (let i = 0; i < width; i++) out[first + i]! += mass * weights[i]!;
    else
      for (let i = 0; i < width; i++) {
        const to = Math.min(K - 1, Math.max(0, first + i));
        out[to]! += mass * weights[i]!;
      }
  }
  return out;
}

/** Likelihood of an interval at every rate of the grid, for one lumpiness; as logarithm. */
function likelihood(x: Interval, years: number, lump: number, counted: Counted): Float64Array {
  const out = new Float64Array(K);
  const h = x.flown / counted.scale;
  for (let k = 0; k < K; k++) {
    const shape = (RATES[k]! * years) / lump;
    if (counted.is === 'count') {
      const each = lump * counted.scale;
      out[k] = negativeBinomialLogMass(shape, 1 / (1 + each), x.flown);
    } else if (h < METER_STEP_H) out[k] = Math.log(Math.max(gammaP(shape, METER_STEP_H / lump), 1e-300) / METER_STEP_H);
    else out[k] = gammaLogDensity(shape, lump, h);
  }
  return out;
}

/** Likelihood with a chance that the aircraft stood on the ground for some part of the interval. */
function withIdleSpells(like: Float64Array, chance: number): void {
  let below = like[0]! * RATES[0]!;
  for (let k = 0; k < K; k++) {
    if (k > 0) below += like[k]! * RATES[k]! * STEP;
    like[k] = (1 - chance) * like[k]! + (chance * below) / RATES[k]!;
  }
}

/**
 * Reads a habit from intervals between readings, by passing the weights of the grid forward in time.
 *
 * Between the middles of two intervals the log rate wanders; in each interval the habit may change, and then the
 * new one is drawn afresh from the prior, at the start of the interval or within it (then the interval says
 * nothing of the new rate). All sums are over fixed grids: no random numbers.
 *
 * @param intervals in order, 60 or fewer, none of length zero
 */
export function readHabit(intervals: readonly Interval[], counted: Counted, prior: Prior): HabitKnown {
  const hours = intervals.map((x) => ({ ...x, flown: x.flown / counted.scale }));
  const season = seasonOf(hours);
  const fresh = priorOverRates(prior);
  const years = intervals.map((x) => Math.max(operationalDays(season, x.from, x.to), 0.05) / DAYS_PER_YEAR);
  const spans = intervals.map((x) => (x.to - x.from) / DAYS_PER_YEAR);
  const likes = LUMPS_H.map((lump) => intervals.map((x, i) => likelihood(x, years[i]!, lump, counted)));
  intervals.forEach((_, i) => {
    let top = Number.NEGATIVE_INFINITY;
    for (const of of likes) for (const l of of[i]!) top = Math.max(top, l);
    for (const of of likes) {
      const l = of[i]!;
      for (let k = 0; k < K; k++) l[k] = Math.exp(l[k]! - top);
      withIdleSpells(l, 1 - Math.exp(-prior.idle_spells_per_year * spans[i]!));
    }
  });
  const changed = new Float64Array(intervals.length);
  const weights: Float64Array[][] = [];
  let total = 0;
  LUMPS_H.forEach((_, b) => {
    weights.push(
      WANDERS.map((wander, s) => {
        let w: Float64Array = fresh.slice();
        let mass = LUMP_WEIGHTS[b]! * WANDER_WEIGHTS[s]!;
        const jumps = new Float64Array(intervals.length);
        for (let i = 0; i < intervals.length; i++) {
          const like = likes[b]![i]!;
          if (i > 0) w = blur(w, wander * Math.sqrt((spans[i - 1]! + spans[i]!) / 2));
          const q = i === 0 ? 0 : 1 - Math.exp(-prior.changes_per_year * spans[i]!);
          let any = 0;
          for (let k = 0; k < K; k++) any += fresh[k]! * like[k]!;
          let sum = 0;
          let jumped = 0;
          const next = new Float64Array(K);
          for (let k = 0; k < K; k++) {
            const jump = q * 0.5 * fresh[k]! * (like[k]! + any);
            next[k] = (1 - q) * w[k]! * like[k]! + jump;
            jumped += jump;
            sum += next[k]!;
          }
          for (let k = 0; k < K; k++) next[k] = next[k]! / sum;
          jumps[i] = jumped / sum;
          mass *= sum;
          w = next;
        }
        if (intervals.length) w = blur(w, wander * Math.sqrt(spans[spans.length - 1]! / 2));
        for (let k = 0; k < K; k++) w[k] = w[k]! * mass;
        for (let i = 0; i < changed.length; i++) changed[i] = changed[i]! + mass * jumps[i]!;
        total += mass;
        return w;
      }),
    );
  });
  for (const of of weights) for (const w of of) for (let k = 0; k < K; k++) w[k] = w[k]! / total;
  const seasonUnseen = season.depth > 0 || mayShowSeason(hours) ? UNSEEN_BESIDE : UNSEEN;
  return { counted, season, seasonUnseen, weights, changed: [...changed].map((c) => c / total) };
}
