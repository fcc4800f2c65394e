import { isRefusal } from '../../foundation/refusal.ts';
import type { CrackForm, CrackSize, KPerStress } from '../model.ts';
import type { HourlyGrowth } from './hourly.ts';
import type { Slope, State } from './step.ts';

/** Slower than this share of its size an hour is no growth: an e-fold would take longer than a hundred million years. */
export const NO_GROWTH_PER_H = 1e-12;

/** Depth at which a part-through crack has come through. */
export const deepestOf = (form: CrackForm): number => form.deepest_a_mm ?? form.thickness_mm;

/** K per stress; null where the solution does not reach. */
export function kAt(form: CrackForm, size: CrackSize): KPerStress | null {
  try {
    return form.k(size);
  } catch (e) {
    if (isRefusal(e)) return null;
    throw e;
  }
}

/** The size that a state stands for; a depth beyond the deepest is taken at the deepest. */
export const sizeOf = (form: CrackForm, [c, a]: State): CrackSize =>
  form.tips === 2 ? { c_mm: c, a_mm: Math.min(a, deepestOf(form)) } : { c_mm: c };

/**
 * Slope of length, depth and hours along the path, by the logarithm of length times depth: it runs on evenly however
 * fast the crack grows, so that hours become a plain integral for one tip and two tips keep their own rates.
 */
export function slopeAlong(
  form: CrackForm,
  growth: HourlyGrowth,
  count: { evaluations: number },
  slowest = NO_GROWTH_PER_H,
): (at: State) => Slope {
  return (at) => {
    const [c, a] = at;
    if (!(c > 0) || (form.tips === 2 && !(a > 0))) return 'outside';
    const size = sizeOf(form, at);
    count.evaluations += 1;
    const k = kAt(form, size);
    if (k === null) return 'outside';
    const perHour = rates(form, k, growth);
    const speed = perHour[0] / c + (form.tips === 2 ? perHour[1] / a : 0);
    if (!Number.isFinite(speed)) return 'broken';
    if (speed < slowest) return 'stuck';
    return [perHour[0] / speed, perHour[1] / speed, 1 / speed];
  };
}
const rates = (form: CrackForm, k: KPerStress, growth: HourlyGrowth): [number, number] => [
  growth(k.c),
  form.tips === 2 ? growth(k.a ?? 0) : 0,
];
