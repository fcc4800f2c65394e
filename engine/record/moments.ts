import { addDays, compareMoments, type Day, type Moment } from '../foundation/day.ts';
import type { Entry } from './document.ts';

/** Last order of a day: after all that happened on it. */
export const END_OF_DAY = 10_000;
export const endOf = (day: Day): Moment => ({ day, order: END_OF_DAY });
/** The start of a day is the end of the day before. */
export const startOf = (day: Day): Moment => endOf(addDays(day, -1));
export const momentOf = (e: Entry): Moment => ({ day: e.day, order: e.order });
export const before = (a: Moment, b: Moment): boolean => compareMoments(a, b) < 0;
export const notAfter = (a: Moment, b: Moment): boolean => compareMoments(a, b) <= 0;
export const earliest = (a: Moment, b: Moment): Moment => (before(b, a) ? b : a);
export const latest = (a: Moment, b: Moment): Moment => (before(a, b) ? b : a);

/** Sorted, each once. */
export function inOrder(moments: readonly Moment[]): Moment[] {
  const sorted = [...moments].sort(compareMoments);
  return sorted.filter((m, i) => i === 0 || compareMoments(sorted[i - 1]!, m) !== 0);
}

/** Index of the first moment that is not before m, in a sorted list; its length if there is none. */
export function firstNotBefore(sorted: readonly Moment[], m: Moment): number {
  let a = 0;
  let b = sorted.length;
  while (a < b) {
    const mid = (a + b) >> 1;
    if (before(sorted[mid]!, m)) a = mid + 1;
    else b = mid;
  }
  return a;
}
export const compareEntries = (a: Entry, b: Entry): number => compareMoments(momentOf(a), momentOf(b));
