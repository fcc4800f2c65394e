import { secondsFromHours } from '../foundation/convert.ts';
import type { Policy } from './document.ts';

const DAYS_PER_YEAR = 365.25;
/** A busy month may run ahead of the yearly ceiling. */
const BUSY_DAYS = 31;

/**
 * The most that a part can have lived in some days before its record begins, in whole seconds.
 *
 * The lesser of the ceiling on hours a day, and the ceiling on hours a year with a busy month on top. Both are stated
 * policy of the shop, changeable, and no fact: a figure that rests on them is an assumption. Grows with the days.
 */
export const mostFlown_s = (policy: Policy, days: number): number =>
  secondsFromHours(
    Math.min(
      policy.ceiling_hours_per_day * days,
      (policy.ceiling_hours_per_year / DAYS_PER_YEAR) * days + policy.ceiling_hours_per_day * BUSY_DAYS,
    ),
  );
