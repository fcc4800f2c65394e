import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomSource } from '../random.ts';
import {
  addForms,
  evaluateForm,
  isFeasible,
  type LinearForm,
  linearExtremes,
  type Region,
  type RegionConstraint,
  SETTLED,
  sampleRegion,
  scaleForm,
  subtractForms,
  variableForm,
  whyImpossible,
} from './index.ts';

/** A region of a few variables on a grid of whole numbers, so that a full count of its points is the truth. */
const small = fc
  .record({
    variables: fc.array(
      fc.record({ low: fc.integer({ min: -3, max: 3 }), width: fc.integer({ min: 0, max: 4 }), integer: fc.boolean() }),
      { minLength: 1, maxLength: 4 },
    ),
    rows: fc.array(
      fc.record({
        c: fc.array(fc.integer({ min: -2, max: 2 }), { minLength: 4, maxLength: 4 }),
        at: fc.integer({ min: -6, max: 6 }),
        width: fc.constantFrom(0, 1, 3, Number.POSITIVE_INFINITY),
      }),
      { maxLength: 3 },
    ),
    gain: fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 4, maxLength: 4 }),
  })
  .map(({ variables, rows, gain }) => {
    const n = variables.length;
    const region: Region = {
      variables: variables.map((v, i) => ({ name: `v${i}`, low: v.low, high: v.low + v.width, integer: v.integer })),
      constraints: rows.map((r, k) => ({
        name: `paper ${k}`,
        terms: r.c.slice(0, n).map((c, i) => [i, c] as const),
        low: r.at,
        high: r.at + r.width,
      })),
    };
    const form: LinearForm = { constant: 0.5, terms: gain.slice(0, n).map((c, i) => [i, c] as const) };
    return { region, form };
  });

const keeps = (region: Region, x: readonly number[], slack = 1e-6) =>
  region.variables.every(
    (v, i) => x[i]! >= v.low - slack && x[i]! <= v.high + slack && (!v.integer || Number.isInteger(x[i])),
  ) &&
  region.constraints.every((c) => {
    const s = evaluateForm({ constant: 0, terms: c.terms }, x);
    return s >= c.low - slack && s <= c.high + slack;
  });

function* everyPoint(region: Region, step: number, at = 0, x: number[] = []): Generator<number[]> {
  const v = region.variables[at];
  if (!v) {
    if (keeps(region, x)) yield [...x];
    return;
  }
  for (let k = v.low; k <= v.high; k += v.integer ? 1 : step) yield* everyPoint(region, step, at + 1, [...x, k]);
}

describe('linear extremes against a full count of all points', () => {
  it('whole-number regions: the same ends, or both impossible', () => {
    fc.assert(
      fc.property(small, ({ region, form }) => {
        const whole = { ...region, variables: region.variables.map((v) => ({ ...v, integer: true })) };
        const values = [...everyPoint(whole, 1)].map((x) => evaluateForm(form, x));
        expect(isFeasible(whole)).toBe(values.length > 0);
        if (values.length === 0) return;
        const { low, high } = linearExtremes(form, whole);
        expect([low.value, high.value]).toEqual([Math.min(...values), Math.max(...values)]);
        expect([low.proven, high.proven]).toEqual(['exact', 'exact']);
      }),
      { numRuns: 600 },
    );
  });

  it('mixed regions: no grid point outside, the witness inside and worth the end', () => {
    fc.assert(
      fc.property(small, ({ region, form }) => {
        const values = [...everyPoint(region, 0.5)].map((x) => evaluateForm(form, x));
        if (values.length === 0) return;
        const { low, high } = linearExtremes(form, region);
        expect(Math.min(...values)).toBeGreaterThanOrEqual(low.value - 1e-6);
        expect(Math.max(...values)).toBeLessThanOrEqual(high.value + 1e-6);
        for (const end of [low, high]) {
          expect(keeps(region, end.witness)).toBe(true);
          expect(evaluateForm(form, end.witness)).toBeCloseTo(end.value, 5);
        }
      }),
      { numRuns: 600 },
    );
  });
});

describe('laws of regions', () => {
  it('sampled histories are possible and never outside the extremes', () => {
    fc.assert(
      fc.property(small, fc.integer(), ({ region, form }, seed) => {
        if (!isFeasible(region)) return;
        const x = sampleRegion(region, randomSource(seed));
        expect(keeps(region, x, 1e-5)).toBe(true);
        const { low, high } = linearExtremes(form, region);
        expect(evaluateForm(form, x)).toBeGreaterThanOrEqual(low.value - 1e-4);
        expect(evaluateForm(form, x)).toBeLessThanOrEqual(high.value + 1e-4);
      }),
      { numRuns: 150 },
    );
  });

  it('losing a paper never narrows the extremes', () => {
    fc.assert(
      fc.property(small, ({ region, form }) => {
        if (!isFeasible(region) || region.constraints.length === 0) return;
        const wide = { ...region, constraints: region.constraints.slice(1) };
        const [a, b] = [linearExtremes(form, region), linearExtremes(form, wide)];
        expect(b.low.value).toBeLessThanOrEqual(a.low.value + 1e-6);
        expect(b.high.value).toBeGreaterThanOrEqual(a.high.value - 1e-6);
      }),
      { numRuns: 200 },
    );
  });

  it('papers that contradict each other are named, and each of them is needed', () => {
    fc.assert(
      fc.property(small, ({ region }) => {
        const names = whyImpossible(region, isFeasible);
        const only = (keep: (c: RegionConstraint) => boolean) =>
          isFeasible({ ...region, constraints: region.constraints.filter(keep) });
        if (isFeasible(region)) {
          expect(names).toEqual([]);
          return;
        }
        expect(only((c) => names.includes(c.name))).toBe(false);
        for (const name of names) expect(only((c) => names.includes(c.name) && c.name !== name)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
});

describe('time flown in seconds', () => {
  const h = 3600;
  /** 41.5 h by the meter between two readings, of which at most 30 h towing; 12 landings an hour at most in towing. */
  const stretch: Region = {
    variables: [
      { name: 'private', low: 0, high: 60 * h, integer: false },
      { name: 'tow', low: 0, high: 30 * h, integer: false },
      { name: 'landings', low: 10, high: 500, integer: true },
    ],
    constraints: [
      {
        name: 'meter',
        terms: [
          [0, 1],
          [1, 1],
        ],
        low: 41.5 * h,
        high: 41.5 * h,
      },
      {
        name: 'twelve landings an hour',
        terms: [
          [2, 1],
          [1, -12 / h],
          [0, -2 / h],
        ],
        low: -Infinity,
        high: 0,
      },
    ],
  };
  it('a stretch by the meter gives its ends to the second', () => {
    const { low, high } = linearExtremes(variableForm(1), stretch);
    expect([low.value, high.value]).toEqual([0, 30 * h]);
    expect(linearExtremes(variableForm(2), stretch).high).toEqual({
      value: 383,
      proven: 'exact',
      witness: expect.anything(),
    });
    expect(high.witness[0]! + high.witness[1]!).toBe(41.5 * h);
  });
  it('large figures keep their seconds beside small ones', () => {
    const wide: Region = {
      variables: [...stretch.variables, { name: 'earlier', low: 12_345 * h + 1, high: 98_765 * h + 7, integer: false }],
      constraints: [
        ...stretch.constraints,
        {
          name: 'sum',
          terms: [
            [0, 1],
            [3, 1],
          ],
          low: 12_350 * h,
          high: 98_000 * h + 11,
        },
      ],
    };
    const form = addForms(scaleForm(variableForm(3), 1 / h), scaleForm(variableForm(0), 1 / h));
    expect(linearExtremes(form, wide).high.value).toBeCloseTo(98_000 + 11 / h, 6);
  });
  it('forms add, scale and subtract; a settled region is a point', () => {
    const f = subtractForms(addForms(variableForm(0, 2), variableForm(1)), variableForm(0, 2));
    expect(f.terms).toEqual([[1, 1]]);
    expect(linearExtremes({ constant: 7, terms: [] }, SETTLED).high.value).toBe(7);
  });
});

describe('regions refuse', () => {
  const one = (low: number, high: number, integer = false): Region => ({
    variables: [{ name: 'hours without papers', low, high, integer }],
    constraints: [],
  });
  it.each([
    ['region.variable-unbounded', one(0, Infinity), /State a ceiling/],
    ['region.variable-unbounded', one(Number.NaN, 1), /two finite ends/],
    ['region.variable-empty', one(2, 1), /hours without papers: 2 to 1/],
    ['region.variable-empty', one(0.2, 0.8, true), /whole numbers/],
    [
      'region.term-invalid',
      { ...one(0, 1), constraints: [{ name: 'x', terms: [[4, 1]], low: 0, high: 1 }] },
      /variable 4 of 1/,
    ],
    [
      'region.term-invalid',
      { ...one(0, 1), constraints: [{ name: 'x', terms: [[0, Number.NaN]], low: 0, high: 1 }] },
      /NaN times/,
    ],
    [
      'region.term-invalid',
      { ...one(0, 1), constraints: [{ name: 'x', terms: [[0, 1]], low: Number.NaN, high: 1 }] },
      /NaN to 1/,
    ],
    [
      'region.impossible',
      {
        ...one(0, 100),
        constraints: [
          { name: 'journey log p. 4', terms: [[0, 1]], low: 10, high: 20 },
          { name: 'invoice of May', terms: [[0, 1]], low: 5, high: 90 },
          { name: 'meter on 3 June', terms: [[0, 1]], low: 25, high: 30 },
        ],
      },
      /journey log p\. 4; meter on 3 June\b/,
    ],
  ] as [string, Region, RegExp][])('%s', (code, region, message) => {
    const ask = () => linearExtremes(variableForm(0), region);
    expect(ask).toThrow(expect.objectContaining({ code }));
    expect(ask).toThrow(message);
  });
  it('region.term-invalid for a form', () => {
    expect(() => linearExtremes({ constant: Infinity, terms: [] }, one(0, 1))).toThrow(
      expect.objectContaining({ code: 'region.term-invalid' }),
    );
    expect(() => linearExtremes(variableForm(3), one(0, 1))).toThrow(
      expect.objectContaining({ code: 'region.term-invalid' }),
    );
  });
});
