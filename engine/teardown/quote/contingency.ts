import { randomSource } from '../../foundation/random.ts';
import type { FindingCost } from './model.ts';

/** A number for a name, the same everywhere, so that a draw belongs to its finding whatever else stands on the list. */
export function itemOf(name: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) h = Math.imul(h ^ name.charCodeAt(i), 0x01000193);
  return h >>> 0;
}

/**
 * What findings add in each run, cents.
 *
 * What: each finding comes with its chance; if it comes, its goods, a sum between the ends of its new parts, and hands
 * drawn from the beta-PERT curve of its three points. Findings are independent of each other.
 * How: draws are keyed (seed, finding), in the order of the runs; the draw of the sum is made whether it comes or not, so
 * that another finding, or a greater chance, never lowers a run.
 * @param runs 1 and more
 */
export function findingRuns(findings: readonly FindingCost[], seed: number, runs: number): Float64Array {
  const sums = new Float64Array(runs);
  for (const f of findings) {
    const random = randomSource(seed, itemOf(f.id));
    const { low, likely, high } = f.hands_cents;
    const spread = high - low;
    const alpha = spread > 0 ? 1 + (4 * (likely - low)) / spread : 1;
    const beta = 6 - alpha;
    for (let run = 0; run < runs; run++) {
      const comes = random.next() < f.chance;
      const between = random.next();
      let share = 0;
      if (spread > 0) {
        const [x, y] = [random.gamma(alpha), random.gamma(beta)];
        share = x + y > 0 ? x / (x + y) : 0.5;
      }
      if (comes)
        sums[run]! +=
          f.goods_cents + low + spread * share + f.parts_cents.low + (f.parts_cents.high - f.parts_cents.low) * between;
    }
  }
  return sums;
}

/** The least of the runs that so great a share of them does not pass. */
export function shareOf(runs: Float64Array, share: number): number {
  const rising = runs.slice().sort();
  return rising[Math.min(rising.length, Math.max(1, Math.ceil(rising.length * share - 1e-9))) - 1]!;
}
