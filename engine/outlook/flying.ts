import { SECONDS_PER_HOUR } from '../foundation/convert.ts';
import { type Day, dayFromNumber, dayNumber } from '../foundation/day.ts';
import { Refusal } from '../foundation/refusal.ts';
import { type Counted, type HabitKnown, RATES, readHabit } from './habit.ts';
import { intervalsOf, landingsPerHour, type TotalReading } from './intervals.ts';
import type { OutlookOptions, RateFound } from './model.ts';
import { DEFAULT_PRIOR, type Prior } from './prior.ts';

/** An aircraft's flying as its readings show it; habits of hours, landings or a mix are read when asked for. */
export interface Flying {
  readonly last: TotalReading;
  readonly from: number;
  readonly prior: Prior;
  readonly hours: HabitKnown;
  readonly landingsPerHour: number;
  /** Readings that carry landings, the last included, are two or more. */
  readonly landingsKnown: boolean;
  landings(): HabitKnown;
  mixed(perHour: number, perLanding: number): HabitKnown;
  readonly rate: RateFound;
}

const refuse = (
  code: ConstructorParameters<typeof Refusal>[0],
  given: string,
  allowed: string,
  remedy: string,
): never => {
  throw new Refusal(code, { given, allowed, remedy });
};

/** Readings in order of day, each possible. @throws Refusal `outlook.no-reading`, `outlook.reading-in-future`, `outlook.readings-run-backwards`, `outlook.too-much-flown`, `foundation.not-finite` */
export function checkedReadings(readings: readonly TotalReading[], day: Day): TotalReading[] {
  if (readings.length === 0)
    refuse(
      'outlook.no-reading',
      'no reading',
      'one reading or more',
      'Give the total and the day on which it was read',
    );
  const sorted = [...readings].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.total_s - b.total_s));
  sorted.forEach((r, i) => {
    if (![r.total_s, r.landings ?? 0].every(Number.isFinite) || r.total_s < 0 || (r.landings ?? 0) < 0)
      refuse(
        'foundation.not-finite',
        `${r.total_s} s, ${r.landings ?? 'no'} landings on ${r.day}`,
        'finite totals from zero up',
        'Correct this reading',
      );
    if (r.day > day)
      refuse(
        'outlook.reading-in-future',
        `a reading of ${r.day}`,
        `days up to ${day}`,
        'Correct the day of the reading, or the day asked for',
      );
    const before = sorted[i - 1];
    if (!before) return;
    const flown = r.total_s - before.total_s;
    if (flown < 0)
      refuse(
        'outlook.readings-run-backwards',
        `${before.total_s / SECONDS_PER_HOUR} h on ${before.day}, then ${r.total_s / SECONDS_PER_HOUR} h on ${r.day}`,
        'totals that never fall',
        'Correct the reading, or enter the meter change in the record first',
      );
    if (flown > (dayNumber(r.day) - dayNumber(before.day) + 1) * 86_400)
      refuse(
        'outlook.too-much-flown',
        `${flown / SECONDS_PER_HOUR} h from ${before.day} to ${r.day}`,
        '24 h a day at most',
        'Correct the reading: a digit too many, or another meter',
      );
  });
  const counted = sorted.filter((r) => r.landings !== undefined);
  counted.slice(1).forEach((r, i) => {
    if (r.landings! < counted[i]!.landings!)
      refuse(
        'outlook.readings-run-backwards',
        `${counted[i]!.landings} landings by ${counted[i]!.day}, then ${r.landings} by ${r.day}`,
        'totals that never fall',
        'Correct the landings',
      );
  });
  return sorted;
}

/** @throws Refusal `outlook.prior-invalid` */
export function priorOf(given: Partial<Prior> | undefined): Prior {
  const prior = { ...DEFAULT_PRIOR, ...given };
  const within: Record<keyof Prior, [number, number]> = {
    median_h_per_year: [1, 1000],
    spread: [0.1, 2],
    idle_share: [0, 0.5],
    busy_share: [0, 0.5],
    changes_per_year: [0, 1],
    idle_spells_per_year: [0, 1],
  };
  for (const [field, [low, high]] of Object.entries(within) as [keyof Prior, [number, number]][])
    if (!(prior[field] >= low && prior[field] <= high))
      refuse(
        'outlook.prior-invalid',
        `${field} ${prior[field]}`,
        `${low} to ${high}`,
        'Give a figure in this range, or leave the field out',
      );
  return prior;
}

/** Rate at the last reading below which a share p of the weight lies, interpolated on the grid. */
function rateAt(known: HabitKnown, p: number): number {
  const all = RATES.map((_, k) => known.weights.reduce((t, of) => t + of.reduce((u, w) => u + w[k]!, 0), 0));
  let sum = 0;
  for (let k = 0; k < all.length; k++) {
    if (sum + all[k]! >= p) return RATES[k]! * Math.exp(0.07 * ((p - sum) / all[k]! - 0.5));
    sum += all[k]!;
  }
  return RATES[RATES.length - 1]!;
}

function changeIn(known: HabitKnown, intervals: ReturnType<typeof intervalsOf>): RateFound['changed'] {
  // A change between two readings shows in one interval or in its neighbour: the two are taken together.
  let best = { i: -1, n: 1, chance: 0.5 };
  known.changed.forEach((c, i) => {
    const pair = c + (known.changed[i + 1] ?? 0);
    if (c > best.chance) best = { i, n: 1, chance: c };
    else if (pair > best.chance + 0.2) best = { i, n: 2, chance: Math.min(1, pair) };
  });
  if (best.i < 0) return null;
  const last = intervals[best.i + best.n - 1]!;
  return { from: dayFromNumber(intervals[best.i]!.from), to: dayFromNumber(last.to), chance: best.chance };
}

/**
 * Reads an aircraft's flying from its readings.
 * @param readings of one total, corrected for meter changes, in any order
 * @throws Refusal as `checkedReadings`, `priorOf`, and `outlook.rate-invalid` for landings per hour that are none
 */
export function readFlying(readings: readonly TotalReading[], day: Day, options: OutlookOptions = {}): Flying {
  const sorted = checkedReadings(readings, day);
  const prior = priorOf(options.prior);
  const perHour = options.landingsPerHour ?? landingsPerHour(sorted);
  if (!(perHour > 0 && perHour < 1000))
    refuse(
      'outlook.rate-invalid',
      `${perHour} landings per hour`,
      'more than 0',
      'Give the landings per hour to come, or leave it out',
    );
  const last = sorted[sorted.length - 1]!;
  const read = (of: Parameters<typeof intervalsOf>[1], counted: Counted) =>
    readHabit(intervalsOf(sorted, of), counted, prior);
  const intervals = intervalsOf(sorted, 'hours');
  const hours = read('hours', { is: 'flow', scale: 1 });
  const landingsKnown = last.landings !== undefined && intervalsOf(sorted, 'landings').length > 0;
  return {
    last,
    from: dayNumber(last.day),
    prior,
    hours,
    landingsPerHour: perHour,
    landingsKnown,
    landings: () => read('landings', { is: 'count', scale: landingsPerHour(sorted) }),
    mixed: (a, b) => read({ perHour: a, perLanding: b }, { is: 'flow', scale: a + b * landingsPerHour(sorted) }),
    rate: {
      h_per_year: { p10: rateAt(hours, 0.1), p50: rateAt(hours, 0.5), p90: rateAt(hours, 0.9) },
      landingsPerHour: perHour,
      season:
        hours.season.depth === 0
          ? 'none shown'
          : { depth: hours.season.depth, peakDayOfYear: 1 + (Math.round(hours.season.peak) % 366) },
      changed: changeIn(hours, intervals),
      basis: intervals.length === 0 ? 'prior alone' : intervals.length < 3 ? 'few readings and the prior' : 'readings',
    },
  };
}
