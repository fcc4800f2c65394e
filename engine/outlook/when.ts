import { SECONDS_PER_HOUR } from '../foundation/convert.ts';
import { type Day, dayFromNumber } from '../foundation/day.ts';
import { Refusal } from '../foundation/refusal.ts';
import { daysUntil } from './arrival.ts';
import type { Flying } from './flying.ts';
import type { HabitKnown } from './habit.ts';
import type { Arrival, LeftAtEnd, Percentiles } from './model.ts';
import { DAYS_PER_YEAR, HORIZON_YEARS } from './prior.ts';

const LAST_YEAR = 2199;
const yearOf = (day: Day) => Number(day.slice(0, 4));

/** Days after the last reading as an arrival; beyond the horizon only the year is said. */
function arrival(from: number, days: number | null): Arrival {
  if (days !== null && days <= 0) return { is: 'reached', day: dayFromNumber(from) };
  const far = dayFromNumber(from + HORIZON_YEARS * DAYS_PER_YEAR);
  if (days === null || days > HORIZON_YEARS * DAYS_PER_YEAR)
    return { is: 'not before', year: Math.min(LAST_YEAR, yearOf(far)) };
  const day = dayFromNumber(from + days);
  return yearOf(day) > LAST_YEAR ? { is: 'not before', year: LAST_YEAR } : { is: 'day', day };
}

/** Sorts arrivals: reached, then days, then `not before`. */
const place = (a: Arrival): string => (a.is === 'reached' ? '0' : a.is === 'day' ? `1${a.day}` : `2${a.year}`);
export const earlierArrival = (a: Arrival, b: Arrival): Arrival => (place(a) <= place(b) ? a : b);
export const laterArrival = (a: Arrival, b: Arrival): Arrival => (place(a) <= place(b) ? b : a);

/** @throws Refusal `outlook.limit-missing` if nothing limits, `foundation.not-finite` */
export function checkEnd(end: LeftAtEnd): void {
  const figures = [end.left_s, end.left_landings, end.counted?.left, end.counted?.perHour, end.counted?.perLanding];
  if (figures.some((f) => f !== undefined && f !== null && !Number.isFinite(f)))
    throw new Refusal('foundation.not-finite', {
      given: `what is left: ${JSON.stringify(figures.map(String))}`,
      allowed: 'finite figures',
      remedy: 'Look at the limit that made this figure',
    });
  if ((end.left_s ?? end.left_landings ?? end.counted ?? end.onDay ?? null) === null)
    throw new Refusal('outlook.limit-missing', {
      given: 'a limit without hours, landings, counted figure or day',
      allowed: 'one of them or several',
      remedy: 'State what the limit is reached at',
    });
  const mix = end.counted;
  if (mix && !(mix.perHour >= 0 && mix.perLanding >= 0 && mix.perHour + mix.perLanding > 0))
    throw new Refusal('outlook.rate-invalid', {
      given: `${mix.perHour} for an hour and ${mix.perLanding} for a landing`,
      allowed: 'weights from zero up, not both zero',
      remedy: 'State what an hour and a landing will count',
    });
}

/** What must still be flown, with the habit it is held against. Landings that nobody counted go by hours at the mix. */
function needs(flying: Flying, end: LeftAtEnd): { habit: () => HabitKnown; left: number }[] {
  const hours = () => flying.hours;
  const out: { habit: () => HabitKnown; left: number }[] = [];
  if (typeof end.left_s === 'number') out.push({ habit: hours, left: end.left_s / SECONDS_PER_HOUR });
  if (typeof end.left_landings === 'number')
    out.push(
      flying.landingsKnown
        ? { habit: flying.landings, left: Math.ceil(end.left_landings) }
        : { habit: hours, left: end.left_landings / flying.landingsPerHour },
    );
  if (end.counted) {
    const { left, perHour, perLanding } = end.counted;
    out.push(
      perLanding > 0 && flying.landingsKnown
        ? { habit: () => flying.mixed(perHour, perLanding), left }
        : { habit: hours, left: left / (perHour + perLanding * flying.landingsPerHour) },
    );
  }
  return out;
}

/**
 * P10, P50 and P90 of the day on which the first limit of this end is reached.
 * Hours and landings come from the same flying, so the first of two is taken percentile by percentile.
 */
export function percentiles(flying: Flying, end: LeftAtEnd): Percentiles {
  checkEnd(end);
  const of = needs(flying, end).map((n) => ({ ...n, habit: n.left > 0 ? n.habit() : flying.hours }));
  const at = (p: number): Arrival => {
    const all = of.map((n) => arrival(flying.from, n.left <= 0 ? 0 : daysUntil(n.habit, flying.from, n.left, p)));
    if (end.onDay) all.push({ is: 'day', day: end.onDay });
    return all.reduce(earlierArrival);
  };
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}

/** The day at a rate that is simply assumed; 0 h a year is lawful and reaches only calendar limits. */
export function atRate(flying: Flying, end: LeftAtEnd, rate_h_per_year: number): Arrival {
  const hours = needs({ ...flying, landingsKnown: false }, end).map((n) => n.left);
  const all = hours.map((h) =>
    arrival(flying.from, h <= 0 ? 0 : rate_h_per_year === 0 ? null : (h / rate_h_per_year) * DAYS_PER_YEAR),
  );
  if (end.onDay) all.push({ is: 'day', day: end.onDay });
  return all.reduce(earlierArrival);
}
