import type { EffectiveCycle } from './model.ts';
import { isWithin, type Plane, zoneOf } from './zone.ts';

/**
 * Generalised Willenborg: inside the zone of an overload both K of a cycle are lowered, and with them R.
 *
 * Kred = φ [KOL √(1 − (a − aOL)/rOL) − Kmax], φ = (1 − Kth/Kmax) / (SOL − 1), never below 0. An overload of the shut-off
 * ratio SOL lowers the peak to the threshold and stops the crack.
 *
 * Not valid for growth after a compressive load that follows the overload, as for Wheeler. A Paris law feels it only
 * where R comes below zero.
 *
 * @param threshold_MPa_sqrt_m Kth, peak at threshold for R = 0
 * @param shut_off_ratio SOL, above 1
 * @param yield_MPa yield stress, MPa
 * @param plane `stress` makes the larger zone
 * @returns the step from cycle to cycle; `slowed` is 1, the slowing is in K
 * @throws Refusal `growth.not-positive`
 * @see [DT737] lecture 20; that Kmin is lowered alike from memory
 */
export function willenborg(
  { threshold_MPa_sqrt_m, shut_off_ratio, plane }: Willenborg,
  yield_MPa: number,
): EffectiveCycle {
  const zone = zoneOf(yield_MPa, plane);
  return (overload, kMax, kMin, at_mm) => {
    if (kMax <= 0) return { kMax, kMin, slowed: 1, overload };
    const own = zone(kMax);
    if (!isWithin(overload, at_mm, own)) return { kMax, kMin, slowed: 1, overload: { at_mm, zone_mm: own, k: kMax } };
    const phi = Math.max(0, (1 - threshold_MPa_sqrt_m / kMax) / (shut_off_ratio - 1));
    const left = 1 - (at_mm - overload.at_mm) / overload.zone_mm;
    const lowered = phi * (overload.k * Math.sqrt(left) - kMax);
    return { kMax: kMax - lowered, kMin: kMin - lowered, slowed: 1, overload };
  };
}
interface Willenborg {
  readonly threshold_MPa_sqrt_m: number;
  readonly shut_off_ratio: number;
  readonly plane: Plane;
}
