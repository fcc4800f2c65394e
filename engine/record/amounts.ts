import { type Bounds, bounds, exactly } from '../foundation/bounds.ts';
import { parseHours } from '../foundation/convert.ts';
import { Refusal } from '../foundation/refusal.ts';
import type { BodyOf } from './document.ts';

type Hours = BodyOf<'opening'>['hours_h'];
type Count = BodyOf<'opening'>['landings'];

/** Hours as the papers write them, as whole seconds. @throws Refusal `record.hours-negative`, `foundation.not-hours` */
export function seconds(written: string | number): number {
  const s = parseHours(written);
  if (s >= 0) return s;
  throw new Refusal('record.hours-negative', {
    given: `${written} h`,
    allowed: 'hours from 0 up',
    remedy: 'Correct the figure; a correction of the total is a new reading that replaces the old one',
  });
}
export const secondsBounds = (h: Hours): Bounds =>
  typeof h === 'object' ? bounds(seconds(h.low_h), seconds(h.high_h)) : exactly(seconds(h));
export const countBounds = (n: Count): Bounds => (typeof n === 'object' ? bounds(n.low, n.high) : exactly(n));

/** 0.05 h: half of the last figure that most books print. Sums that differ by less are no slip. */
export const SLIP_S = 180;
/** Hours for a sentence, to 0.01. */
export const hoursText = (s: number): string => `${Math.round(s / 36) / 100} h`;
