import type { CycleDamage } from './damage.ts';
import { equivalentStress } from './life-curve.ts';

/** Slopes of the S-N curve tried where the curve says nothing, or as a check of it; the middle one stands for them. */
export const SLOPES = [3, 4, 5, 6] as const;
export const MIDDLE_SLOPE = 4.5;

/**
 * Damage of a cycle up to a constant that falls out of every ratio: the equivalent stress to the power of the slope.
 * @param unit stress that it is measured by, so that the powers stay near 1
 */
export const byPowerLaw =
  (slope: number, a3: number, unit = 1): CycleDamage =>
  (max, min) => {
    const s = equivalentStress(max / unit, min / unit, a3);
    return s > 0 ? Math.exp(slope * Math.log(s)) : 0;
  };
