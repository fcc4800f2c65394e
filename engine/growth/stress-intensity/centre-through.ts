import type { Geometry } from '../document.ts';
import { fits, range } from './limit.ts';
import { rootPi, secant } from './numbers.ts';
import { aloneThrough, type Solution } from './solution.ts';
import { PLANE } from './sources.ts';

/** β = √sec(π c / W), c the half length. Within 0.3 % to 2c/W = 0.7, 1 % at 0.8. */
export const centreFactor = (c: number, width: number): number => Math.sqrt(secant((Math.PI * c) / width));
/** The same after Tada, within 0.1 % at any length: the second form, which the tests hold against the first. */
export function centreFactorTada(c: number, width: number): number {
  const l = (2 * c) / width;
  return (1 - 0.025 * l * l + 0.06 * l * l * l * l) * Math.sqrt(secant((Math.PI * l) / 2));
}
const LONGEST = 0.8;

/** Through crack of length 2c in the middle of a plate under tension. Not valid beyond 2c/W = 0.8. */
export function centreThrough(g: Extract<Geometry, { shape: 'centre_through' }>): Solution {
  const { width_mm: width, thickness_mm } = g;
  return {
    shape: g.shape,
    thickness_mm,
    deepest_a_mm: null,
    longest_c_mm: (LONGEST * width) / 2,
    limits: [
      fits('the half length c', (c) => c, width / 2, 'half the width'),
      range('length over width, 2c/W,', (c) => (2 * c) / width, [0, LONGEST], PLANE),
    ],
    k: (c) => ({ c: rootPi(c) * centreFactor(c, width), a: null }),
    alone: aloneThrough,
    net: (c) => 1 - (2 * c) / width,
    through: null,
    from: PLANE,
  };
}
