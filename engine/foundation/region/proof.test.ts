import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomSource } from '../random.ts';
import { type Block, dot, isPossible } from './block.ts';
import { isRuledOut, safeBound } from './certify.ts';
import { evaluateForm, isFeasible, type Region, sampleRegion } from './index.ts';
import { bestBySolver } from './solver.ts';
import { bestByHalving } from './whole.ts';

/** Small blocks of whole numbers, so that a full count of their points is the truth. */
const block = fc
  .record({
    ends: fc.array(fc.tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: 1, max: 4 })), {
      minLength: 2,
      maxLength: 4,
    }),
    rows: fc.array(
      fc.record({
        c: fc.array(fc.integer({ min: -2, max: 2 }), { minLength: 4, maxLength: 4 }),
        at: fc.integer({ min: -6, max: 6 }),
        width: fc.constantFrom(0, 1, 3, Number.POSITIVE_INFINITY),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    objective: fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 4, maxLength: 4 }),
  })
  .map(({ ends, rows, objective }) => {
    const made: Block = {
      variables: ends.map((_, i) => i),
      low: ends.map(([low]) => low),
      high: ends.map(([low, width]) => low + width),
      integer: ends.map(() => true),
      rows: rows.map((r) => ({
        terms: ends.map((_, i) => [i, r.c[i]!] as const),
        low: r.at,
        high: r.at + r.width,
      })),
    };
    return { block: made, objective: objective.slice(0, ends.length) };
  });

function everyPoint({ low, high }: Block): number[][] {
  let all: number[][] = [[]];
  low.forEach((l, i) => {
    all = all.flatMap((x) => Array.from({ length: high[i]! - l + 1 }, (_, k) => [...x, l + k]));
  });
  return all;
}

describe('what is proven apart from the solver', () => {
  it('a block with a point is never ruled out, and no point passes the safe bound', () => {
    let ruledOut = 0;
    fc.assert(
      fc.property(block, ({ block: b, objective }) => {
        const points = everyPoint(b).filter((x) => isPossible(b, x));
        if (isRuledOut(b)) ruledOut++;
        if (points.length === 0) return;
        expect(isRuledOut(b)).toBe(false);
        const most = Math.max(...points.map((x) => dot(objective, x)));
        expect(safeBound(b, objective)).toBeGreaterThanOrEqual(most);
        const box = objective.reduce((t, c, i) => t + Math.max(c * b.low[i]!, c * b.high[i]!), 0);
        expect(safeBound(b, objective)).toBeLessThanOrEqual(box + 1e-9);
      }),
      { numRuns: 500 },
    );
    expect(ruledOut).toBeGreaterThan(20);
  });

  it('halving finds the greatest over whole numbers, or proves that there is none', () => {
    fc.assert(
      fc.property(block, ({ block: b, objective }) => {
        const continuous = (part: Block, gain: readonly number[]) =>
          bestBySolver({ ...part, integer: part.integer.map(() => false) }, gain);
        const values = everyPoint(b)
          .filter((x) => isPossible(b, x))
          .map((x) => dot(objective, x));
        const found = bestByHalving(b, objective, continuous);
        if (values.length === 0) expect(found).toBeNull();
        else expect(found).toMatchObject({ bound: Math.max(...values), exact: true });
      }),
      { numRuns: 400 },
    );
  });

  it('a part that cannot be decided keeps its bound', () => {
    const three: Block = { variables: [0], low: [0], high: [3], integer: [true], rows: [] };
    const undecided = (part: Block) => ({ bound: part.high[0]! + 0.5, point: null, exact: false });
    expect(bestByHalving(three, [1], undecided)).toEqual({ bound: 3.5, point: null, exact: false });
    const half = (part: Block) =>
      part.low[0]! > 1 ? undecided(part) : { bound: part.high[0]!, point: part.high, exact: true };
    const mixed = bestByHalving({ ...three, high: [3] }, [1], (p) => (p.high[0]! > 1 ? undecided(p) : half(p)));
    expect(mixed).toEqual({ bound: 3.5, point: [1], exact: false });
  });
});

describe('rows that only just touch', () => {
  /** x + y = a and x - y = b in hours of seconds, with a and b off by a hair: one point, or none by rounding alone. */
  const touching = (hair: number): Region => ({
    variables: [0, 1, 2].map((i) => ({ name: `stretch ${i}`, low: 0, high: 100 * 360, integer: false })),
    constraints: [
      { name: 'meter', terms: [0, 1, 2].map((i) => [i, 1 / 3600] as const), low: 0.7, high: 0.7 },
      { name: 'first two', terms: [0, 1].map((i) => [i, 1 / 3600] as const), low: 0.3, high: 0.3 },
      { name: 'last two', terms: [1, 2].map((i) => [i, 1 / 3600] as const), low: 0.6 + hair, high: 0.6 + hair },
      {
        name: 'first and last',
        terms: [
          [0, 1 / 3600],
          [2, 1 / 3600],
        ],
        low: 0.5,
        high: 0.5 + hair,
      },
    ],
  });
  it.each([0, 1e-16, 1e-14, -1e-14, 1e-12])('off by %d h: possible', (hair) => {
    expect(isFeasible(touching(Math.abs(hair)))).toBe(true);
  });
  it('off by a minute: contradictory', () => {
    expect(isFeasible(touching(1 / 60))).toBe(false);
  });
  it('a history is sampled from every one of them, and keeps it', () => {
    fc.assert(
      fc.property(fc.constantFrom(0, 1e-16, 1e-14, 1e-12), fc.integer(), (hair, seed) => {
        const region = touching(hair);
        const x = sampleRegion(region, randomSource(seed));
        for (const c of region.constraints) {
          const sum = evaluateForm({ constant: 0, terms: c.terms }, x);
          expect(sum).toBeGreaterThanOrEqual(c.low - 1e-5);
          expect(sum).toBeLessThanOrEqual(c.high + 1e-5);
        }
      }),
      { numRuns: 60 },
    );
  });
  it('sampling never refuses sums of thirds that hang together', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 4, maxLength: 4 }), {
          minLength: 2,
          maxLength: 4,
        }),
        fc.array(fc.double({ min: 0, max: 1e5, noNaN: true }), { minLength: 4, maxLength: 4 }),
        fc.integer(),
        (rows, at, seed) => {
          const constraints = rows.map((r, k) => {
            const terms = r.map((c, i) => [i, c / 3] as const);
            const sum = evaluateForm({ constant: 0, terms }, at);
            return { name: `paper ${k}`, terms, low: sum, high: sum };
          });
          const variables = at.map((_, i) => ({ name: `v${i}`, low: 0, high: 1e5, integer: false }));
          const x = sampleRegion({ variables, constraints }, randomSource(seed));
          for (const c of constraints)
            expect(Math.abs(evaluateForm({ constant: 0, terms: c.terms }, x) - c.low)).toBeLessThan(1e-2);
        },
      ),
      { numRuns: 300 },
    );
  });
});
