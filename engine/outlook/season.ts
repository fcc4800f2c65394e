import { DAYS_PER_YEAR } from './prior.ts';

/** The year of a habit: rate times 1 + depth cos(2 pi (day - peak) / year). Depth 0: no season. */
export interface Season {
  readonly depth: number;
  /** Day of the year on which most is flown, counted in days since 1970-01-01 modulo a year. */
  readonly peak: number;
}
export const NO_SEASON: Season = { depth: 0, peak: 0 };

/**
 * Days of operational time from one day to another: as long as the calendar over whole years, faster in the season.
 * @param from, to day numbers
 */
export function operationalDays(season: Season, from: number, to: number): number {
  if (season.depth === 0) return to - from;
  const k = (2 * Math.PI) / DAYS_PER_YEAR;
  return to - from + (season.depth / k) * (Math.sin(k * (to - season.peak)) - Math.sin(k * (from - season.peak)));
}

/** An interval between two readings: day numbers and what was flown, in hours or the like. */
export interface Interval {
  readonly from: number;
  readonly to: number;
  readonly flown: number;
}

/**
 * Squared misfit of constant rates: one rate, or two with the change at the best reading.
 * Sum of (h - v t)^2 / t, which is sum(h^2 / t) - H^2 / T for each stretch.
 */
function misfit(intervals: readonly Interval[], season: Season): number {
  const n = intervals.length;
  const squares = new Float64Array(n + 1);
  const flown = new Float64Array(n + 1);
  const time = new Float64Array(n + 1);
  intervals.forEach((x, i) => {
    const t = operationalDays(season, x.from, x.to);
    squares[i + 1] = squares[i]! + (x.flown * x.flown) / t;
    flown[i + 1] = flown[i]! + x.flown;
    time[i + 1] = time[i]! + t;
  });
  const part = (a: number, b: number) => {
    const h = flown[b]! - flown[a]!;
    return squares[b]! - squares[a]! - (h * h) / (time[b]! - time[a]!);
  };
  let best = part(0, n);
  for (let c = 2; c <= n - 2; c++) best = Math.min(best, part(0, c) + part(c, n));
  return Math.max(best, 1e-9);
}

const DEPTHS = [0.3, 0.5, 0.7, 0.85];
const PEAKS = 24;
/** Fewest intervals that may show a season, and the longest of them in the middle, days. */
const FEWEST = 7;
const LONGEST = 230;

/** Are there enough readings, close enough, that a season would show? */
export function mayShowSeason(intervals: readonly Interval[]): boolean {
  const lengths = intervals.map((x) => x.to - x.from).sort((a, b) => a - b);
  return lengths.length >= FEWEST && lengths[lengths.length >> 1]! <= LONGEST;
}

/** The season that the record shows, or none: the gain in log likelihood must pay for its two parameters. */
export function seasonOf(intervals: readonly Interval[]): Season {
  const n = intervals.length;
  if (!mayShowSeason(intervals)) return NO_SEASON;
  const plain = Math.log(misfit(intervals, NO_SEASON));
  let best = NO_SEASON;
  let gain = Math.log(n) + 1;
  for (const depth of DEPTHS)
    for (let p = 0; p < PEAKS; p++) {
      const season = { depth, peak: (p * DAYS_PER_YEAR) / PEAKS };
      const g = (n / 2) * (plain - Math.log(misfit(intervals, season)));
      if (g > gain) [gain, best] = [g, season];
    }
  return best;
}
