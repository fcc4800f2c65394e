import { addMonths, type Day, endOfMonth } from '../foundation/day.ts';
import { Refusal } from '../foundation/refusal.ts';

/**
 * Time in service of one flight: from leaving the surface to touching it at the next landing.
 * Time on the blocks before and after does not count.
 * @param airborne_s, touch_s seconds of the day of the two moments; over midnight add a day
 * @throws Refusal `record.period-reversed`
 * @see 14 CFR 1.1, "time in service" (read)
 */
export function timeInService(airborne_s: number, touch_s: number): number {
  if (touch_s >= airborne_s) return touch_s - airborne_s;
  throw new Refusal('record.period-reversed', {
    given: `airborne at ${airborne_s} s, down at ${touch_s} s`,
    allowed: 'a landing after the take-off',
    remedy: 'Exchange the two times, or add a day to a flight over midnight',
    source: '14 CFR 1.1',
  });
}

const HUNDRED_H_S = 360_000;
const EN_ROUTE_S = 36_000;

/**
 * Total at which the next 100-hour inspection is due. An excess flown to reach the place of inspection, at most
 * 10 h, is counted in the next 100 h; an inspection done early counts from where it was done.
 * @see 14 CFR 91.409(b) (read; the arithmetic is derived from it)
 */
export function nextHundredHour(
  due_s: number,
  done_s: number,
): { readonly due_s: number; readonly excessAllowed: boolean } {
  const excess = Math.max(0, done_s - due_s);
  return { due_s: done_s + HUNDRED_H_S - excess, excessAllowed: excess <= EN_ROUTE_S };
}

/** Last day on which an annual entered on this day is good: the end of the twelfth calendar month after it. @see 14 CFR 91.409(a) (derived; the calendar-month reading from memory) */
export const annualGoodThrough = (entered: Day): Day => endOfMonth(addMonths(entered, 12));
