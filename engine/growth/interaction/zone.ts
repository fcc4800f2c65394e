import { plasticZone } from '../residual/plastic-zone.ts';
import type { Overload } from './model.ts';

export type Plane = 'stress' | 'strain';

/**
 * The yielded zone of a load, mm, for the models of interaction.
 *
 * Not valid where the zone is no longer small against crack and ligament.
 *
 * @see [DT737] lecture 20
 */
export function zoneOf(yield_MPa: number, plane: Plane): (k: number) => number {
  const per = plasticZone(1, yield_MPa, `plane ${plane}`).radius_mm;
  return (k) => per * k * k;
}

/** True while the zone of this cycle stays within the one that an earlier load left. */
export const isWithin = (overload: Overload | null, at_mm: number, zone_mm: number): overload is Overload =>
  overload !== null && at_mm + zone_mm < overload.at_mm + overload.zone_mm;
