import { type Day, dayFromNumber, dayNumber, parseDay } from '../../foundation/day.ts';
import { type RandomSource, randomSource } from '../../foundation/random.ts';

/**
 * A simulator of flying habits, to hold forecasts against.
 *
 * It walks through the calendar day by day. On each day somebody flies or does not; who flies makes some
 * flights, each with a length and landings. The meter adds them up, and on some days somebody reads it.
 * It knows nothing of any forecast and shares nothing with one but the calendar and the seeded generator.
 *
 * All figures in it are invented. They are meant to be harder than a well kept logbook: few readings, uneven
 * spacing, idle spells, good and bad years.
 */
export const HABITS = [
  'steady',
  'seasonal',
  'school',
  'changed owner in the record',
  'drifting',
  'changed owner later',
] as const;
export type Habit = (typeof HABITS)[number];

export interface MeterReading {
  readonly day: Day;
  readonly total_s: number;
  readonly landings: number;
}
export interface FlownCase {
  readonly habit: Habit;
  readonly readings: readonly MeterReading[];
  readonly left_s: number;
  readonly left_landings: number;
  /** First day at whose end the limit is reached; null: not within `YEARS_WALKED` of the last reading. */
  readonly reached: Day | null;
  readonly reachedByLandings: Day | null;
  /** The day on which the owner changed, if one did. */
  readonly changed: Day | null;
}

export const YEARS_WALKED = 60;
const YEAR = 365.25;
const between = (r: RandomSource, low: number, high: number) => low + (high - low) * r.next();
const spread = (r: RandomSource, low: number, high: number) => Math.exp(between(r, Math.log(low), Math.log(high)));
const whole = (r: RandomSource, low: number, high: number) => Math.floor(between(r, low, high + 1));

/** One owner: how much in a year, in what pieces, and what shapes the year. */
interface Owner {
  readonly hoursPerYear: number;
  readonly flightsPerDay: number;
  readonly flightHours: number;
  readonly landingsPerFlight: number;
  readonly season: number;
  readonly peak: number;
  readonly yearSpread: number;
  readonly idleSpellsPerYear: number;
  readonly closesAtYearEnd: boolean;
}

const privateOwner = (r: RandomSource, seasonal: boolean): Owner => ({
  hoursPerYear: spread(r, 10, 160),
  flightsPerDay: between(r, 1.2, 2.5),
  flightHours: between(r, 0.6, 1.8),
  landingsPerFlight: between(r, 1, 1.8),
  season: seasonal ? between(r, 0.5, 0.95) : between(r, 0, 0.15),
  peak: (r.next() < 0.8 ? 196 : 14) + between(r, -25, 25),
  yearSpread: 0.2,
  idleSpellsPerYear: r.next() < 1 / 3 ? 0.12 : 0,
  closesAtYearEnd: false,
});
const schoolOwner = (r: RandomSource): Owner => ({
  hoursPerYear: between(r, 200, 700),
  flightsPerDay: between(r, 2, 5),
  flightHours: between(r, 0.8, 1.3),
  landingsPerFlight: between(r, 2, 7),
  season: 0.3,
  peak: 196,
  yearSpread: 0.12,
  idleSpellsPerYear: 0,
  closesAtYearEnd: true,
});

/** How the rate wanders over the years besides: the logarithm of a factor, walked month by month. */
function drift(r: RandomSource): (month: number) => number {
  const trend = r.next() < 0.5;
  const slope = trend ? between(r, -0.2, 0.2) : 0;
  const wander = trend ? 0 : between(r, 0.12, 0.3);
  const end = Math.log(3);
  const at: number[] = [0];
  return (month) => {
    while (at.length <= month)
      at.push(at[at.length - 1]! + slope / 12 + (wander ? wander * r.normal() * Math.sqrt(1 / 12) : 0));
    return trend ? Math.max(-end, Math.min(end, at[month]!)) : at[month]!;
  };
}

/** The days on which the meter is read: a few years apart in a thin record, weeks to months in a kept one. */
function readingDays(r: RandomSource, habit: Habit): number[] {
  const days = [dayNumber(parseDay('2000-01-01')) + whole(r, 0, 5000)];
  const thin = r.next() < 0.5;
  const count = thin ? whole(r, 3, 6) : whole(r, 7, 30);
  const [shortest, longest] = thin ? [150, 700] : habit === 'school' ? [15, 90] : [20, 220];
  while (days.length < count) days.push(days[days.length - 1]! + Math.round(spread(r, shortest, longest)));
  return days;
}

function ownerChange(r: RandomSource, habit: Habit, days: readonly number[]): number {
  if (habit === 'changed owner later') return days[days.length - 1]! + Math.round(between(r, 0.1, 3) * YEAR);
  if (habit !== 'changed owner in the record') return Number.POSITIVE_INFINITY;
  // The new owner has flown at least one whole interval between two readings.
  return Math.round(between(r, days[0]! + 1, days[days.length - 2]!));
}

/** What one owner flies on one day, asked in the order of the calendar. */
function flying(r: RandomSource, owner: Owner): (day: number, factor: number) => { seconds: number; landings: number } {
  const flyingDays = owner.hoursPerYear / (owner.flightHours * owner.flightsPerDay);
  let year = -1;
  let week = -1;
  let yearFactor = 1;
  let weather = 1;
  let idleUntil = Number.NEGATIVE_INFINITY;
  return (day, factor) => {
    const thisYear = Math.floor(day / YEAR);
    const ofYear = day - thisYear * YEAR;
    if (thisYear !== year) {
      year = thisYear;
      yearFactor = Math.exp(owner.yearSpread * r.normal() - (owner.yearSpread * owner.yearSpread) / 2);
    }
    if (Math.floor(day / 7) !== week) {
      week = Math.floor(day / 7);
      weather = [0.2, 1, 1.8][whole(r, 0, 2)]!;
      if (day >= idleUntil && r.next() < (owner.idleSpellsPerYear * 7) / YEAR)
        idleUntil = day + between(r, 0.5, 1.6) * YEAR;
    }
    const season = 1 + owner.season * Math.cos((2 * Math.PI * (ofYear - owner.peak)) / YEAR);
    const closed = owner.closesAtYearEnd && ofYear > 352;
    const idle = day < idleUntil ? 0.03 : 1;
    const chance = closed ? 0 : (flyingDays / YEAR) * factor * yearFactor * weather * season * idle;
    let seconds = 0;
    let landings = 0;
    for (let days = chance; r.next() < days; days -= 1) {
      let flights = 1;
      while (flights < 8 && r.next() < 1 - 1 / owner.flightsPerDay) flights++;
      for (let f = 0; f < flights; f++) {
        seconds += Math.round(3600 * Math.max(0.1, owner.flightHours * Math.exp(0.45 * r.normal() - 0.1)));
        landings += 1;
        while (r.next() < 1 - 1 / owner.landingsPerFlight) landings++;
      }
    }
    return { seconds, landings };
  };
}

/** One aircraft with this habit, its readings, and what became of it. The same seed and item give the same life. */
export function flownCase(habit: Habit, seed: number, item: number): FlownCase {
  const r = randomSource(seed, HABITS.indexOf(habit) * 1_000_000 + item);
  const days = readingDays(r, habit);
  const change = ownerChange(r, habit, days);
  const school = habit === 'school';
  const draw = () =>
    school ? schoolOwner(r) : privateOwner(r, habit === 'seasonal' || (habit !== 'steady' && r.next() < 0.3));
  let flies = flying(r, draw());
  const wanders = habit === 'drifting' ? drift(r) : () => 0;
  const left_s = Math.round(3600 * (school ? spread(r, 100, 3000) : spread(r, 20, 600)));
  const left_landings = Math.round(school ? spread(r, 300, 12_000) : spread(r, 30, 1200));

  let total_s = Math.round(3600 * between(r, 500, 6000));
  let landings = Math.round((total_s / 3600) * between(r, 1, 3));
  const readings: MeterReading[] = [];
  let reached: number | null = null;
  let reachedByLandings: number | null = null;
  const [start, last] = [days[0]!, days[days.length - 1]!];
  for (let day = start; day <= last + YEARS_WALKED * YEAR; day++) {
    if (day === change) flies = flying(r, draw());
    const flown = flies(day, Math.exp(wanders(Math.floor((day - start) / (YEAR / 12)))));
    total_s += flown.seconds;
    landings += flown.landings;
    // The meter shows tenths of an hour.
    if (day === days[readings.length])
      readings.push({ day: dayFromNumber(day), total_s: Math.floor(total_s / 360) * 360, landings });
    const latest = readings[readings.length - 1]!;
    if (day < last) continue;
    if (reached === null && total_s >= latest.total_s + left_s) reached = day;
    if (reachedByLandings === null && landings >= latest.landings + left_landings) reachedByLandings = day;
    if (reached !== null && reachedByLandings !== null) break;
  }
  return {
    habit,
    readings,
    left_s,
    left_landings,
    reached: reached === null ? null : dayFromNumber(reached),
    reachedByLandings: reachedByLandings === null ? null : dayFromNumber(reachedByLandings),
    changed: Number.isFinite(change) ? dayFromNumber(change) : null,
  };
}
