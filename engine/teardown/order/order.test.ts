import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestOrder } from './best-order.ts';
import type { OrderItem } from './items.ts';
import { lowestOrder } from './lowest.ts';
import { costOfOrder, sequentialOrder } from './sequential.ts';
import { toolWords, walk } from './walk.ts';
import { weightedCost, weightedOrder } from './weighted.ts';

const terms = { flip_min: 30, toolChange_min: 4 };
const item = (more: Partial<OrderItem> = {}): OrderItem => ({
  minutes: 10,
  face: 'either',
  tools: [],
  clauses: [],
  weight: 0,
  ...more,
});
function* permutations(n: number, chosen: number[] = []): Generator<number[]> {
  if (chosen.length === n) yield chosen;
  for (let i = 0; i < n; i++) if (!chosen.includes(i)) yield* permutations(n, [...chosen, i]);
}
const anyItem = (n: number) =>
  fc.record({
    minutes: fc.integer({ min: 1, max: 90 }),
    face: fc.constantFrom('upper' as const, 'lower' as const, 'either' as const),
    tools: fc.constantFrom<string[]>([], ['drill'], ['wrench']),
    clauses: fc.array(fc.array(fc.nat(n - 1), { minLength: 1, maxLength: 2 }), { maxLength: 2 }),
    weight: fc.integer({ min: 0, max: 300 }),
  });

describe('T10 best order', () => {
  it('faces: all of one side first', () => {
    const found = bestOrder(
      [item({ face: 'upper' }), item({ face: 'lower' }), item({ face: 'upper' }), item({ face: 'lower' })],
      terms,
    );
    expect(found).toMatchObject({ flips: 1, cost: 30, proven: true });
  });
  it('a look that decides much is worth two flips more, one that decides little is not', () => {
    const items = (weight: number) => [
      item({ face: 'upper', minutes: 100 }),
      item({ face: 'upper', minutes: 100 }),
      item({ face: 'lower', clauses: [[0]] }),
      item({ weight, clauses: [[2]], minutes: 0 }),
      item({ face: 'upper', minutes: 300, clauses: [[1]] }),
    ];
    expect(bestOrder(items(5), terms)).toMatchObject({ flips: 1 });
    const early = bestOrder(items(900), terms);
    expect(early.order.slice(0, 3)).toEqual([0, 2, 3]);
    expect(early.flips).toBe(2);
  });
  it('is the best of all orders, by enumeration, with and/or needs', () => {
    fc.assert(
      fc.property(fc.array(anyItem(5), { minLength: 5, maxLength: 5 }), (items) => {
        const tools = toolWords(items, terms);
        const costs = [...permutations(5)].flatMap((o) => walk(items, o, terms, tools)?.cost ?? []);
        const found = bestOrder(items, terms);
        if (costs.length === 0) expect(found.order).toEqual([]);
        else {
          expect(found.cost).toBeCloseTo(Math.min(...costs), 9);
          expect(lowestOrder(items, terms)).toBeLessThanOrEqual(found.cost + 1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });
  it('of many things: valid, no better than its bound, the same each time', () => {
    const back = (n: number) => fc.array(anyItem(n), { minLength: n, maxLength: n });
    fc.assert(
      fc.property(back(22), (made) => {
        const items = made.map((x, i) => ({
          ...x,
          clauses: x.clauses.map((c) => c.map((k) => k % Math.max(1, i))).filter(() => i > 0),
        }));
        const found = bestOrder(items, terms);
        expect([...found.order].sort((a, b) => a - b)).toEqual(items.map((_, i) => i));
        const walked = walk(items, found.order, terms, toolWords(items, terms))!;
        expect(walked.cost).toBeCloseTo(found.cost, 9);
        expect(walked.flips).toBe(found.flips);
        expect(found.bound).toBeLessThanOrEqual(found.cost + 1e-9);
        expect(bestOrder(items, terms)).toEqual(found);
      }),
      { numRuns: 15 },
    );
  });
  it('needs that go round in a circle have no order', () => {
    expect(bestOrder([item({ clauses: [[1]] }), item({ clauses: [[0]] })], terms).order).toEqual([]);
  });
});

describe('T8 sequential order', () => {
  const matrix = (n: number) =>
    fc.array(fc.array(fc.nat(50), { minLength: n, maxLength: n }), { minLength: n, maxLength: n });
  const pairs = (n: number) =>
    fc.array(
      fc.tuple(fc.nat(n - 1), fc.nat(n - 1)).filter(([a, b]) => a < b),
      { maxLength: 6 },
    );
  it('is the least of all orders that keep the pairs', () => {
    fc.assert(
      fc.property(matrix(6), pairs(6), (m, before) => {
        const keeps = (o: number[]) => before.every(([a, b]) => o.indexOf(a) < o.indexOf(b));
        const least = Math.min(...[...permutations(6)].filter(keeps).map((o) => costOfOrder(m, o)));
        expect(sequentialOrder(m, before)).toMatchObject({ cost: least, proven: true });
      }),
      { numRuns: 40 },
    );
  });
  it('of many: keeps the pairs and is never below its bound', () => {
    fc.assert(
      fc.property(matrix(21), pairs(21), (m, before) => {
        const { order, cost, bound } = sequentialOrder(m, before);
        expect(new Set(order).size).toBe(21);
        for (const [a, b] of before) expect(order.indexOf(a)).toBeLessThan(order.indexOf(b));
        expect(costOfOrder(m, order)).toBe(cost);
        expect(bound).toBeLessThanOrEqual(cost);
      }),
      { numRuns: 10 },
    );
  });
  it('pairs in a circle have no order', () => {
    expect(
      sequentialOrder(
        [
          [0, 1],
          [1, 0],
        ],
        [
          [0, 1],
          [1, 0],
        ],
      ).order,
    ).toEqual([]);
  });
});

it('T9 weighted order of random chains is the least of all', () => {
  const thing = fc.record({ weight: fc.integer({ min: 0, max: 20 }), time: fc.integer({ min: 1, max: 20 }) });
  fc.assert(
    fc.property(fc.array(thing, { minLength: 6, maxLength: 6 }), fc.integer({ min: 1, max: 5 }), (things, cut) => {
      const chains = [[0, 1, 2, 3, 4, 5].slice(0, cut), [0, 1, 2, 3, 4, 5].slice(cut)];
      const keeps = (o: number[]) =>
        chains.every((c) => c.every((x, i) => i === 0 || o.indexOf(c[i - 1]!) < o.indexOf(x)));
      const least = Math.min(...[...permutations(6)].filter(keeps).map((o) => weightedCost(things, o)));
      expect(weightedOrder(things, chains).cost).toBe(least);
    }),
    { numRuns: 40 },
  );
});
