import { MM_PER_METRE } from '../../foundation/convert.ts';
import { positive } from '../require.ts';

/** Plane stress, plane strain, or what the thickness makes of it. */
export type Constraint = 'plane stress' | 'plane strain' | { readonly thickness_mm: number };
const [PLANE_STRESS, PLANE_STRAIN] = [2, 6];

/**
 * Radius of the yielded zone ahead of a crack: rp = (1 / (I π)) (K/σys)².
 *
 * I is 2 in plane stress, 6 in plane strain, and 6.7 − (1.5/t)(K/σys)² between the two, held to 2 and 6.
 *
 * Not valid where the zone is no longer small against crack and ligament: net section yield governs there.
 *
 * @param k stress intensity, MPa√m, 0 or above
 * @param yield_MPa yield stress, MPa
 * @returns radius, mm, and I
 * @throws Refusal `growth.not-positive`
 * @see [DT737] lecture 6
 */
export function plasticZone(k: number, yield_MPa: number, constraint: Constraint): PlasticZone {
  const ratio = k / positive(yield_MPa, 'yield stress', 'MPa');
  const square_mm = ratio * ratio * MM_PER_METRE;
  const i =
    constraint === 'plane stress'
      ? PLANE_STRESS
      : constraint === 'plane strain'
        ? PLANE_STRAIN
        : between(6.7 - (1.5 * square_mm) / positive(constraint.thickness_mm, 'thickness', 'mm'));
  return { radius_mm: square_mm / (i * Math.PI), constraint: i };
}
const between = (i: number) => Math.min(PLANE_STRAIN, Math.max(PLANE_STRESS, i));
export interface PlasticZone {
  readonly radius_mm: number;
  /** I: 2 plane stress to 6 plane strain. */
  readonly constraint: number;
}
