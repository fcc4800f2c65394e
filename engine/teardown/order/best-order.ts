import { beamOrder } from './beam.ts';
import { improveOrder } from './improve.ts';
import type { BestOrder, OrderItem, OrderTerms } from './items.ts';
import { lowestOrder } from './lowest.ts';

/** Up to here every set of things that can be done first is followed. */
const EXACT_ITEMS = 14;
const WIDTH = 12;
const EVERY = 1e9;

/**
 * A valid order that shows early what decides the plan, with few flips and changes of tools.
 *
 * Least `flips + tool changes + Σ weight_i C_i / T`, C_i the minutes of work until thing i is done, T all minutes. Exact by
 * dynamic programming over the sets that can come first, for up to 14 things; above, the best of a beam of 12 sets,
 * improved by moving one thing or a run of things at a time, with a bound.
 *
 * Not valid for work of several hands side by side: that is the schedule's.
 *
 * @param items minutes zero or more, weights zero or more; a clause that no item of the list meets cannot be met
 * @returns the order as places in the list; empty `order` where there is none that meets all clauses
 * @see Held and Karp, J. SIAM 10 (1962) 196-210 (dynamic programming over sets): from memory
 */
export function bestOrder(items: readonly OrderItem[], terms: OrderTerms): BestOrder {
  const exact = items.length <= EXACT_ITEMS;
  const found = beamOrder(items, terms, exact ? EVERY : WIDTH);
  if (!found) return { order: [], cost: 0, bound: 0, proven: items.length === 0, flips: 0, toolChanges: 0 };
  if (exact) return { ...found, bound: found.cost, proven: true };
  const better = improveOrder(items, terms, found);
  const bound = Math.min(better.cost, lowestOrder(items, terms));
  return { ...better, bound, proven: better.cost - bound < 1e-9 };
}
