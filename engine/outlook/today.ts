import { type Day, dayNumber } from '../foundation/day.ts';
import { Refusal } from '../foundation/refusal.ts';
import { chanceReached } from './arrival.ts';
import type { Flying } from './flying.ts';
import type { ReadingAge, TodayEstimate } from './model.ts';

/** A reading older than this is stale unless the shop says otherwise. Made up: about a season. */
export const STALE_AFTER_DAYS = 90;

/** @throws Refusal `outlook.rate-invalid` for a limit below zero or not finite */
export function readingAge(asOf: Day, day: Day, staleAfter_days = STALE_AFTER_DAYS): ReadingAge {
  if (!(staleAfter_days >= 0 && Number.isFinite(staleAfter_days)))
    throw new Refusal('outlook.rate-invalid', {
      given: `stale after ${staleAfter_days} days`,
      allowed: 'days from zero up',
      remedy: 'Correct the number of days, or leave it out',
    });
  const age_days = dayNumber(day) - dayNumber(asOf);
  return { asOf, age_days, stale: age_days > staleAfter_days };
}

/**
 * The total today, beyond the last reading: what has been flown since, as P10, P50 and P90.
 * An estimate to call the owner with. It never stands in the place of a reading.
 */
export function estimateToday(flying: Flying, day: Day, staleAfter_days?: number): TodayEstimate {
  const age = readingAge(flying.last.day, day, staleAfter_days);
  const read_s = flying.last.total_s;
  const at = (p: number): number => {
    if (age.age_days === 0) return read_s;
    let [low, high] = [0, age.age_days * 24];
    for (let i = 0; i < 30; i++) {
      const mid = (low + high) / 2;
      if (chanceReached(flying.hours, flying.from, mid, age.age_days) > 1 - p) low = mid;
      else high = mid;
    }
    return read_s + Math.round(low * 10) * 360;
  };
  return { ...age, read_s, total_s: { p10: at(0.1), p50: at(0.5), p90: at(0.9) } };
}
