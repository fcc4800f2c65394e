import { MM_PER_METRE } from '../../foundation/convert.ts';
import { KNOWN, type Provenance } from '../../foundation/provenance.ts';
import { Refusal } from '../../foundation/refusal.ts';
import { positive } from '../require.ts';

export interface ToughnessPoint {
  readonly thickness_mm: number;
  readonly k_MPa_sqrt_m: number;
  readonly from: Provenance;
}
export interface Toughness {
  readonly value: number;
  readonly from: Provenance;
}

/** Plane strain from a thickness of this times (K/σys)². */
const PLANE_STRAIN = 2.5;

/**
 * Fracture toughness at a thickness, from points of one source.
 *
 * Straight between the points; one point holds whatever the thickness, as declared. Stock thinner than the thinnest
 * point takes that point's value. Stock thicker than the thickest takes its value only where plane strain is reached
 * there, 2.5 (K/σys)²; otherwise the toughness still falls, and nothing is said.
 *
 * Not valid between sources or grain directions: a curve is never made of several.
 *
 * @param points thickness, mm, and toughness, MPa√m, in any order
 * @param yield_MPa yield stress, MPa
 * @param thickness_mm thickness asked for, mm
 * @returns toughness, MPa√m, and where it comes from: the less well known of the two points used
 * @throws Refusal `growth.thickness-outside`, `growth.not-positive`
 * @see plane strain thickness: ASTM E399 (from memory)
 */
export function toughnessAt(points: readonly ToughnessPoint[], yield_MPa: number, thickness_mm: number): Toughness {
  const t = positive(thickness_mm, 'thickness', 'mm');
  const sorted = [...points].sort((p, q) => p.thickness_mm - q.thickness_mm);
  for (const p of sorted) positive(p.k_MPa_sqrt_m, 'toughness', 'MPa√m');
  const first = sorted[0]!;
  const last = sorted.at(-1)!;
  const value = ({ k_MPa_sqrt_m, from }: ToughnessPoint): Toughness => ({ value: k_MPa_sqrt_m, from });
  if (sorted.length === 1 || t <= first.thickness_mm) return value(first);
  if (t >= last.thickness_mm) {
    if (t > last.thickness_mm) requirePlaneStrain(last, yield_MPa, t);
    return value(last);
  }
  const above = sorted.findIndex((p) => p.thickness_mm > t);
  const [lower, upper] = [sorted[above - 1]!, sorted[above]!];
  const share = (t - lower.thickness_mm) / (upper.thickness_mm - lower.thickness_mm);
  const weaker = weight(upper.from) > weight(lower.from) ? upper.from : lower.from;
  return { value: lower.k_MPa_sqrt_m + share * (upper.k_MPa_sqrt_m - lower.k_MPa_sqrt_m), from: weaker };
}

const weight = (from: Provenance) => KNOWN.indexOf(from.known);

function requirePlaneStrain(last: ToughnessPoint, yield_MPa: number, t: number): void {
  const ratio = last.k_MPa_sqrt_m / positive(yield_MPa, 'yield stress', 'MPa');
  if (last.thickness_mm / MM_PER_METRE >= PLANE_STRAIN * ratio * ratio) return;
  throw new Refusal('growth.thickness-outside', {
    given: `stock ${t} mm thick, toughness known up to ${last.thickness_mm} mm`,
    allowed: 'a thickness up to the thickest point, unless plane strain is reached there: toughness falls further',
    remedy: 'Give the material with a toughness at this thickness or thicker, and its source',
    source: 'ASTM E399, plane strain from 2.5 (K/σys)², from memory',
  });
}
