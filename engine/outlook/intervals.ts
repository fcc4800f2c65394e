import { SECONDS_PER_HOUR } from '../foundation/convert.ts';
import { type Day, dayNumber } from '../foundation/day.ts';
import type { Interval } from './season.ts';

/** A reading of one total, corrected for meter changes: seconds flown and, where known, landings. */
export interface TotalReading {
  readonly day: Day;
  readonly total_s: number;
  readonly landings?: number | undefined;
}

/** At most so many intervals are looked at; finer ones are joined. */
const MOST = 40;

/**
 * What was flown between the readings, in hours, landings, or a mix of both.
 * Readings of one day count as its last. Of many readings the finest are joined to at most 40 intervals.
 */
export function intervalsOf(
  readings: readonly TotalReading[],
  of: 'hours' | 'landings' | { readonly perHour: number; readonly perLanding: number },
): Interval[] {
  const [perHour, perLanding] = of === 'hours' ? [1, 0] : of === 'landings' ? [0, 1] : [of.perHour, of.perLanding];
  const points = readings
    .filter((r) => perLanding === 0 || r.landings !== undefined)
    .map((r) => ({
      day: dayNumber(r.day),
      total: (perHour * r.total_s) / SECONDS_PER_HOUR + perLanding * (r.landings ?? 0),
    }));
  const days = points.filter((p, i) => i === points.length - 1 || points[i + 1]!.day > p.day);
  const first = days[0];
  if (!first) return [];
  const shortest = (days[days.length - 1]!.day - first.day) / MOST;
  const out: Interval[] = [];
  let from = first;
  days.slice(1).forEach((p, i) => {
    if (days.length - 1 > MOST && p.day - from.day < shortest && i < days.length - 2) return;
    out.push({ from: from.day, to: p.day, flown: p.total - from.total });
    from = p;
  });
  return out;
}

/** Landings for each hour flown while both were counted; shrunk to `expected` as if that had been seen for 10 h. */
export function landingsPerHour(readings: readonly TotalReading[], expected = 1.5): number {
  const both = readings.filter((r) => r.landings !== undefined);
  const [a, b] = [both[0], both[both.length - 1]];
  const hours = a && b ? (b.total_s - a.total_s) / SECONDS_PER_HOUR : 0;
  const count = a && b ? b.landings! - a.landings! : 0;
  return (count + 10 * expected) / (hours + 10);
}
