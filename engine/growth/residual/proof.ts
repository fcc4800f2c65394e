import type { CrackForm } from '../model.ts';
import { positive } from '../require.ts';
import type { Strength } from './fracture.ts';
import { carried, residualOf } from './residual-at.ts';
import { LENGTHS_TRIED } from './tangent.ts';

/**
 * Proof test: the longest through crack that may still be there when the place has held a stress.
 *
 * A part that held can have no crack that would have broken it; others may be there, the longest of them counts.
 *
 * Not valid for cracks that the test itself made grow, nor for another temperature than that of the toughness.
 *
 * @param form a through crack
 * @param held_MPa remote stress that was held, MPa
 * @param strength yield stress, MPa, and toughness, MPa√m, at this thickness
 * @returns length, mm; null where even the shortest crack of the form would not have held
 * @throws Refusal `growth.not-positive`
 * @see [DT737] lecture 9
 */
export function longestAfterProof(form: CrackForm, held_MPa: number, strength: Strength): number | null {
  positive(held_MPa, 'stress that was held', 'MPa');
  const residual = residualOf(form, strength);
  const holds = (c_mm: number) => form.outside({ c_mm }) === null && carried(residual({ c_mm })) >= held_MPa;
  const lengths = LENGTHS_TRIED.map((share) => share * form.longest_c_mm);
  const last = lengths.findLastIndex(holds);
  if (last < 0) return null;
  let [low, high] = [lengths[last]!, lengths[last + 1] ?? form.longest_c_mm];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}
