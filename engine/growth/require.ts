import { Refusal } from '../foundation/refusal.ts';

/**
 * A figure that must be above zero to mean anything: a toughness, a yield stress, a thickness, a length.
 * @throws Refusal `growth.not-positive`
 */
export function positive(value: number, what: string, unit: string): number {
  if (value > 0 && Number.isFinite(value)) return value;
  throw new Refusal('growth.not-positive', {
    given: `${what} of ${value} ${unit}`,
    allowed: `a ${what} above zero`,
    remedy: 'Correct the figure, or give the one of its source',
  });
}
