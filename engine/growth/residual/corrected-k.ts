import { Refusal } from '../../foundation/refusal.ts';
import type { CrackForm } from '../model.ts';
import { type Constraint, type PlasticZone, plasticZone } from './plastic-zone.ts';

const TURNS = 200;
const CLOSE = 1e-12;

/**
 * Stress intensity of a through crack with its yielded zone taken for crack: K at c + rp, rp from that K, until both agree.
 *
 * Not valid for part-through cracks, nor where no such state exists within the solution: the ligament has yielded then.
 *
 * @param form a crack in its place
 * @param c_mm length as the form counts it, mm
 * @param stress_MPa remote stress, MPa
 * @param yield_MPa yield stress, MPa
 * @returns K with and without the zone, MPa√m, the zone, mm, and I
 * @throws Refusal `growth.outside-solution` where the zone leaves the solution, `growth.not-positive`
 * @see [DT737] lectures 5 and 6
 */
export function correctedK(
  form: CrackForm,
  c_mm: number,
  stress_MPa: number,
  yield_MPa: number,
  constraint: Constraint,
): PlasticZone & { readonly k: number; readonly elastic: number } {
  const elastic = stress_MPa * form.k({ c_mm }).c;
  let k = elastic;
  for (let turn = 0; turn < TURNS; turn++) {
    const zone = plasticZone(k, yield_MPa, constraint);
    const next = stress_MPa * form.k({ c_mm: c_mm + zone.radius_mm }).c;
    if (Math.abs(next - k) <= CLOSE * next) return { ...zone, k: next, elastic };
    k = next;
  }
  throw new Refusal('growth.outside-solution', {
    given: `a crack ${c_mm} mm long at ${stress_MPa} MPa, whose yielded zone has no end`,
    allowed: 'a yielded zone that stays small against crack and ligament',
    remedy: 'Take net section yield: the ligament has yielded',
  });
}
