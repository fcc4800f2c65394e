import type { CrackForm } from '../model.ts';
import { fracture, type Strength } from './fracture.ts';
import { netSectionYield } from './net-section.ts';

/** Lengths tried, as shares of the longest, packed toward short cracks. */
export const LENGTHS_TRIED = Array.from({ length: 281 }, (_, i) => Math.exp(Math.log(1e-6) * (1 - i / 280)) * 0.999);

/**
 * Feddersen's tangent: from net section yield without a crack, straight down to where it touches the fracture curve.
 *
 * Short cracks in tough sheet fail below both curves; the line bridges the corner between them.
 *
 * Not valid for part-through cracks. Read for a crack in the middle of a wide sheet, taken here for every through crack.
 *
 * @param form a through crack
 * @param strength yield stress, MPa, and toughness, MPa√m; the fracture curve is the elastic one
 * @returns the line: remote stress, MPa, against length, mm; and where it touches. Null where the curve lies above the line to the end
 * @throws Refusal `growth.not-positive`
 * @see [DT737] lecture 9
 */
export function feddersen(form: CrackForm, strength: Strength): Tangent | null {
  const start = netSectionYield(form, { c_mm: form.longest_c_mm * LENGTHS_TRIED[0]! }, strength.yield_MPa);
  const lengths = LENGTHS_TRIED.map((share) => share * form.longest_c_mm).filter(
    (c) => form.outside({ c_mm: c }) === null,
  );
  const slopeTo = (c: number) => (fracture(form, { c_mm: c }, { ...strength, elastic: true }) - start) / c;
  const slopes = lengths.map(slopeTo);
  const least = slopes.reduce((b, s, i) => (s < slopes[b]! ? i : b), 0);
  // At the longest crack the line would only run to the edge: net section says that already.
  if (least >= lengths.length - 1 || least === 0) return null;
  let [low, high] = [lengths[least - 1]!, lengths[least + 1]!];
  for (let i = 0; i < 60; i++) {
    const [p, q] = [low + (high - low) / 3, high - (high - low) / 3];
    if (slopeTo(p) < slopeTo(q)) high = q;
    else low = p;
  }
  const touches_mm = (low + high) / 2;
  const slope = slopeTo(touches_mm);
  return { touches_mm, at: (c_mm) => (c_mm < touches_mm ? start + slope * c_mm : Number.POSITIVE_INFINITY) };
}
export interface Tangent {
  readonly touches_mm: number;
  /** Infinity beyond the touch: the fracture curve governs there. */
  at(c_mm: number): number;
}
