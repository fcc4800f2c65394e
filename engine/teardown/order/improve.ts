import type { OrderItem, OrderTerms } from './items.ts';
import { toolWords, totalMinutes, type Walked, walk } from './walk.ts';

const ROUNDS = 6;
const RUNS = [1, 2, 4];
/** Things that may be walked past altogether, and what of it one try may take: long orders are improved near by only. */
const EFFORT = 12e6;
const NEAR = 8;

/**
 * Moves a run of one, two or four things to another place as long as that lowers the cost, in counted rounds. Of a long
 * order a run moves no further than the effort allows for all of them.
 */
export function improveOrder(items: readonly OrderItem[], terms: OrderTerms, start: Walked): Walked {
  const tools = toolWords(items, terms);
  const all = totalMinutes(items);
  const n = items.length;
  const far = Math.max(NEAR, Math.floor(EFFORT / (ROUNDS * RUNS.length * 2 * Math.max(1, n * n))));
  let left = EFFORT;
  let best = start;
  for (let round = 0; round < ROUNDS; round++) {
    const before = best.cost;
    for (const run of RUNS)
      for (let from = 0; from + run <= n; from++)
        for (let to = Math.max(0, from - far); to + run <= n && to <= from + far; to++) {
          if (to === from) continue;
          left -= n;
          if (left < 0) return best;
          const order = [...best.order];
          order.splice(to, 0, ...order.splice(from, run));
          const made = walk(items, order, terms, tools, all, best.cost - 1e-9);
          if (made) best = made;
        }
    if (best.cost >= before - 1e-9) return best;
  }
  return best;
}
