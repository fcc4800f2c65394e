import type { Bounds } from '../foundation/bounds.ts';
import type { Comparison, Trial } from './compare.ts';

/** How the ratio of a use was found. */
export type RatioBy = 'life curve' | 'middle slope' | 'hardest slope';
export interface Ratio {
  readonly use: string;
  readonly ratio: number;
  readonly by: RatioBy;
  /** Over every assumption tried that gives one. */
  readonly across: Bounds;
}

/** Ratio under one assumption; null where the reference does no damage under it. */
export function ratioUnder(t: Trial, use: string, reference: string): number | null {
  const [own, other] = [t.damage.get(use)!, t.damage.get(reference)!];
  return other > 0 ? own / other : null;
}

/**
 * Damage of an hour of each use, in hours of the reference use.
 *
 * By the life curve where both do damage by it, each by the harsher of its bands and its counted sequence. A use that
 * the curve's run-out leaves without damage is compared by the middle power law, in the same way, for 0 would let its
 * hours count nothing; where the reference is the one without, a use that damages
 * is compared by the slope that makes it hardest.
 *
 * @see reference, section 6.3: damage ratio with its sensitivity to the slope
 */
export function ratiosOf(c: Comparison, reference: string): Ratio[] {
  return [...c.spectra.keys()].map((use) => {
    const tried = c.trials.map((t) => ratioUnder(t, use, reference)).filter((r) => r !== null);
    const { ratio, by } = ratioOf(c, use, reference);
    return { use, ratio, by, across: { low: Math.min(ratio, ...tried), high: Math.max(ratio, ...tried) } };
  });
}

function ratioOf(c: Comparison, use: string, reference: string): { ratio: number; by: RatioBy } {
  const own = c.inForce?.get(use) ?? 0;
  const other = c.inForce?.get(reference) ?? 0;
  if (use === reference) return { ratio: 1, by: own > 0 ? 'life curve' : 'middle slope' };
  if (own > 0 && other > 0) return { ratio: own / other, by: 'life curve' };
  const middle = ratioUnder(c.middle, use, reference);
  if (own === 0 && middle !== null) return { ratio: middle, by: 'middle slope' };
  const slopes = c.trials.filter((t) => t.tried.startsWith('slope'));
  const hardest = Math.max(0, ...slopes.map((t) => ratioUnder(t, use, reference) ?? 0));
  return { ratio: hardest, by: 'hardest slope' };
}
