import { Refusal } from '../foundation/refusal.ts';
import type { UsageDocument } from './document.ts';
import type { ExceedanceCurve } from './model.ts';

/**
 * Limit increment of load factor that shares are of, g. Gusts have their own; where none is stated, that of the upward
 * limit stands for both ways.
 * @throws Refusal `usage.limit-missing` for taxi and landing
 */
export function limitIncrement(
  a: UsageDocument['aeroplane'],
  load: ExceedanceCurve['load'],
  direction: 'up' | 'down',
  place: string,
): number {
  if (load === 'gust') return a.gust_limit_increment ?? a.limit_up - 1;
  if (load === 'manoeuvre') return direction === 'up' ? a.limit_up - 1 : 1 - a.limit_down;
  throw new Refusal('usage.limit-missing', {
    given: `${place} counts ${load} in shares of a limit`,
    allowed: 'shares of the limit for gust and manoeuvre; taxi and landing as the increment itself',
    remedy: 'Give the levels as increments of the ground load factor',
  });
}
