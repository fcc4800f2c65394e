import { type Day, dayNumber } from '../../foundation/day.ts';
import type { Policy } from '../../record/index.ts';

/** The day of the question, and the policy of the shop. */
export interface AskedDay {
  readonly day: Day;
  readonly number: number;
  readonly policy: Policy;
}
export const askedOn = (day: Day, policy: Policy): AskedDay => ({ day, number: dayNumber(day), policy });
