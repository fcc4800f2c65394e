import { Refusal } from '../../foundation/refusal.ts';

/**
 * Turning points of a history: its first and last point and every peak and valley between. Equal neighbours and points
 * on the way are dropped, so that what is left rises and falls by turns.
 * @throws Refusal `foundation.not-finite`
 */
export function peaksOnly(points: ArrayLike<number>): Float64Array {
  const kept = new Float64Array(points.length);
  let n = 0;
  for (let i = 0; i < points.length; i++) {
    const p = points[i]!;
    if (!Number.isFinite(p))
      throw new Refusal('foundation.not-finite', {
        given: `point ${i + 1} of a history is ${p}`,
        allowed: 'finite numbers',
        remedy: 'Correct this point',
      });
    if (n > 0 && kept[n - 1] === p) continue;
    if (n > 1 && kept[n - 1]! > kept[n - 2]! === p > kept[n - 1]!) n--;
    kept[n++] = p;
  }
  return kept.slice(0, n);
}
