import type { OrderItem, OrderTerms } from './items.ts';
import { toolWords, totalMinutes, type Walked, walk } from './walk.ts';

const ROUNDS = 6;
const RUNS = [1, 2, 4];

/** Moves a run of one, two or four things to another place as long as that lowers the cost, in counted rounds. */
export function improveOrder(items: readonly OrderItem[], terms: OrderTerms, start: Walked): Walked {
  const tools = toolWords(items, terms);
  const all = totalMinutes(items);
  let best = start;
  for (let round = 0; round < ROUNDS; round++) {
    const before = best.cost;
    for (const run of RUNS)
      for (let from = 0; from + run <= items.length; from++)
        for (let to = 0; to + run <= items.length; to++) {
          if (to === from) continue;
          const order = [...best.order];
          order.splice(to, 0, ...order.splice(from, run));
          const made = walk(items, order, terms, tools, all, best.cost - 1e-9);
          if (made) best = made;
        }
    if (best.cost >= before - 1e-9) return best;
  }
  return best;
}
