import { Refusal } from '../../foundation/refusal.ts';

/**
 * Lowest over highest stress (or stress intensity) of a cycle, R.
 *
 * Not valid for a cycle without a peak above zero: it opens no crack, and R says nothing of it.
 *
 * @param max highest, MPa or MPa√m, above zero
 * @param min lowest, in the same unit; below zero is compression
 * @returns R, below 1
 * @throws Refusal `growth.stress-ratio` where the lowest is not below the highest
 * @see ASTM E647 (from memory)
 */
export function stressRatio(max: number, min: number): number {
  if (min < max && Number.isFinite(max) && Number.isFinite(min)) return min / max;
  throw new Refusal('growth.stress-ratio', {
    given: `a cycle from ${short(min)} up to ${short(max)}`,
    allowed: 'a lowest stress below the highest: R = lowest / highest below 1',
    remedy: 'Correct the cycle, or leave it out: without a range it drives no crack',
  });
}
const short = (x: number): string => String(Number(x.toPrecision(6)));
