import type { EffectiveCycle } from './model.ts';
import { isWithin, type Plane, zoneOf } from './zone.ts';

/**
 * Wheeler: inside the zone of an overload growth is slowed by [rp / (what is left of the zone)]^m.
 *
 * A load whose own zone reaches as far as the old one, or farther, takes its place and is not slowed.
 *
 * Not valid for growth after a compressive load that follows the overload: it wipes out part of the slowing, which is
 * not modelled, so the life is then too long. m is fitted to a spectrum and holds for that kind only.
 *
 * @param exponent m, 0 or more; 0 slows nothing
 * @param yield_MPa yield stress, MPa
 * @param plane `stress` makes the larger zone
 * @returns the step from cycle to cycle; K as it is, `slowed` the factor on growth
 * @throws Refusal `growth.not-positive`
 * @see [DT737] lecture 20
 */
export function wheeler({ exponent, plane }: { exponent: number; plane: Plane }, yield_MPa: number): EffectiveCycle {
  const zone = zoneOf(yield_MPa, plane);
  return (overload, kMax, kMin, at_mm) => {
    if (kMax <= 0) return { kMax, kMin, slowed: 1, overload };
    const own = zone(kMax);
    if (!isWithin(overload, at_mm, own)) return { kMax, kMin, slowed: 1, overload: { at_mm, zone_mm: own, k: kMax } };
    const left = overload.at_mm + overload.zone_mm - at_mm;
    return { kMax, kMin, slowed: Math.exp(exponent * Math.log(own / left)), overload };
  };
}
