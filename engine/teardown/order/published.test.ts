import { describe, expect, it } from 'vitest';
import { sop } from '../testing/sop.ts';
import { costOfOrder, sequentialOrder } from './sequential.ts';
import { weightedCost, weightedOrder } from './weighted.ts';

/** TSPLIB, sequential ordering problems: listed optima. The first and last thing are given by the precedence itself. */
describe.each([
  ['ESC07', 9, 2125],
  ['ESC12', 14, 1675],
])('T8 %s', (name, things, optimum) => {
  const instance = sop(name);
  if (!instance) {
    it.skip('not run: the instance does not lie beside the repository', () => {});
    return;
  }
  it(`is ${optimum} at the least`, () => {
    const found = sequentialOrder(instance.matrix, instance.before);
    expect(instance.matrix).toHaveLength(things);
    expect(found).toMatchObject({ cost: optimum, bound: optimum, proven: true });
    expect(costOfOrder(instance.matrix, found.order)).toBe(optimum);
    const place = new Map(found.order.map((i, at) => [i, at]));
    for (const [a, b] of instance.before) expect(place.get(a)!).toBeLessThan(place.get(b)!);
  });
});

/** All orders that keep each chain in its order. */
function* merged(chains: readonly (readonly number[])[]): Generator<number[]> {
  if (chains.every((c) => c.length === 0)) yield [];
  for (const [k, chain] of chains.entries()) {
    if (chain.length === 0) continue;
    const rest = chains.map((c, i) => (i === k ? c.slice(1) : c));
    for (const tail of merged(rest)) yield [chain[0]!, ...tail];
  }
}

/**
 * Pinedo, Scheduling, chapter 3, example of total weighted completion with chains 1-2-3-4 and 5-6-7: sequence
 * 1, 2, 5, 6, 3, 7, 4 (from memory); held here against all 35 orders.
 */
it('T9 the chains of the textbook: 1, 2, 5, 6, 3, 7, 4 and no other order as good', () => {
  const w = [6, 18, 12, 8, 8, 17, 18];
  const p = [3, 6, 6, 5, 4, 8, 10];
  const things = w.map((weight, i) => ({ weight, time: p[i]! }));
  const chains = [
    [0, 1, 2, 3],
    [4, 5, 6],
  ];
  const all = [...merged(chains)].map((order) => ({ order, cost: weightedCost(things, order) }));
  expect(all).toHaveLength(35);
  const least = Math.min(...all.map((a) => a.cost));
  expect(least).toBe(1967);
  const best = all.filter((a) => a.cost === least).map((a) => a.order.map((i) => i + 1));
  expect(best).toEqual([[1, 2, 5, 6, 3, 7, 4]]);
  expect(weightedOrder(things, chains)).toEqual({ order: best[0]!.map((i) => i - 1), cost: 1967 });
});
