import { expect, it } from 'vitest';
import { improveOrder } from './improve.ts';
import type { OrderItem } from './items.ts';
import { toolWords, walk } from './walk.ts';

/** Upper and lower in turn, a look at the end that should be early: much to gain by moving. */
const items = (n: number): OrderItem[] =>
  Array.from({ length: n }, (_, i) => ({
    minutes: 10,
    face: i % 2 ? 'upper' : 'lower',
    tools: [i % 3 ? 'drill' : 'screwdriver'],
    clauses: i > 0 && i % 5 === 0 ? [[i - 1]] : [],
    weight: i === n - 1 ? 60 : 0,
  }));
const terms = { flip_min: 30, toolChange_min: 5 };

it.each([20, 400])('an order of %i things is improved, stays valid and holds each once; the same again', (n) => {
  const all = items(n);
  const start = walk(all, [...all.keys()], terms, toolWords(all, terms))!;
  const better = improveOrder(all, terms, start);
  expect(better.cost).toBeLessThan(start.cost);
  expect([...better.order].sort((a, b) => a - b)).toEqual([...all.keys()]);
  expect(walk(all, better.order, terms, toolWords(all, terms))!.cost).toBeCloseTo(better.cost, 6);
  expect(improveOrder(all, terms, start).order).toEqual(better.order);
});

it('what may be walked past is counted: four thousand things end', () => {
  const all = items(4000);
  const start = walk(all, [...all.keys()], terms, toolWords(all, terms))!;
  expect(improveOrder(all, terms, start).cost).toBeLessThan(start.cost);
});
