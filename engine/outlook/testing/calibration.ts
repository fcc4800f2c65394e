import { dayNumber } from '../../foundation/day.ts';
import { daysUntil } from '../arrival.ts';
import { readHabit } from '../habit.ts';
import { intervalsOf, landingsPerHour } from '../intervals.ts';
import { DEFAULT_PRIOR, HORIZON_YEARS } from '../prior.ts';
import { type FlownCase, flownCase, HABITS, type Habit } from './habits.ts';

export interface CalibrationRow {
  readonly habit: Habit | 'pooled over the first five';
  /** Shares of cases with the true date within P10 to P90, before P10 (the unsafe side), after P90. */
  readonly held: number;
  readonly early: number;
  readonly late: number;
  /** Median width P10 to P90, and the median of width over P50. */
  readonly width_years: number;
  readonly widthShare: number;
  /** Share without a date for P90. */
  readonly noDate: number;
}
interface Hit {
  readonly side: -1 | 0 | 1;
  readonly width: number;
  readonly share: number;
  readonly noDate: boolean;
}

export function forecastCase(c: FlownCase, of: 'hours' | 'landings'): { days: (number | null)[]; truth: number } {
  const landings = of === 'landings';
  const counted = landings
    ? { is: 'count' as const, scale: landingsPerHour(c.readings) }
    : { is: 'flow' as const, scale: 1 };
  const known = readHabit(intervalsOf(c.readings, landings ? 'landings' : 'hours'), counted, DEFAULT_PRIOR);
  const from = dayNumber(c.readings[c.readings.length - 1]!.day);
  const reached = landings ? c.reachedByLandings : c.reached;
  return {
    days: [0.1, 0.5, 0.9].map((p) => daysUntil(known, from, landings ? c.left_landings : c.left_s / 3600, p)),
    truth: reached ? dayNumber(reached) - from : Number.POSITIVE_INFINITY,
  };
}

function hit(c: FlownCase, of: 'hours' | 'landings'): Hit {
  const { days, truth } = forecastCase(c, of);
  const [p10, p50, p90] = days.map((d) => d ?? Number.POSITIVE_INFINITY) as [number, number, number];
  // The truth is known to a day only; beyond the horizon no date is claimed, so none can be missed.
  const beyond = truth >= HORIZON_YEARS * 365.25;
  const side = beyond && p90 === Number.POSITIVE_INFINITY ? 0 : truth + 1 < p10 ? -1 : truth > p90 + 1 ? 1 : 0;
  const capped = Math.min(p90, HORIZON_YEARS * 365.25);
  return {
    side,
    width: (capped - Math.min(p10, capped)) / 365.25,
    share: (capped - p10) / Math.min(p50, capped),
    noDate: p90 === Number.POSITIVE_INFINITY,
  };
}

const median = (v: number[]) => v.sort((a, b) => a - b)[v.length >> 1]!;
const row = (habit: CalibrationRow['habit'], hits: readonly Hit[]): CalibrationRow => {
  const part = (f: (h: Hit) => boolean) => hits.filter(f).length / hits.length;
  return {
    habit,
    held: part((h) => h.side === 0),
    early: part((h) => h.side === -1),
    late: part((h) => h.side === 1),
    width_years: median(hits.map((h) => h.width)),
    widthShare: median(hits.map((h) => h.share)),
    noDate: part((h) => h.noDate),
  };
};

/** One row per habit, then the five whose change, if any, lies in the record, pooled. */
export function calibrate(seed: number, cases: number, of: 'hours' | 'landings' = 'hours'): CalibrationRow[] {
  const all = HABITS.map((habit) => Array.from({ length: cases }, (_, i) => hit(flownCase(habit, seed, i), of)));
  return [...HABITS.map((habit, h) => row(habit, all[h]!)), row('pooled over the first five', all.slice(0, 5).flat())];
}
