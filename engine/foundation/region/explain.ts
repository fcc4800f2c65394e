import type { Region } from './model.ts';

/**
 * Names of constraints that cannot all hold, each of them needed for the contradiction: constraints are
 * left out one at a time, and left out for good if the rest still contradict each other. What remains may
 * contradict the limits of the variables rather than one another. Empty if the region is possible.
 *
 * Irreducible, not smallest: another, shorter contradiction may exist beside it.
 */
export function whyImpossible(region: Region, isFeasible: (r: Region) => boolean): string[] {
  if (isFeasible(region)) return [];
  let kept = [...region.constraints];
  for (let size = Math.ceil(kept.length / 2); size >= 1; size = size > 1 ? Math.ceil(size / 2) : 0)
    for (let i = 0; i < kept.length; ) {
      const rest = [...kept.slice(0, i), ...kept.slice(i + size)];
      if (isFeasible({ ...region, constraints: rest })) i += size;
      else kept = rest;
    }
  return kept.map((c) => c.name);
}
