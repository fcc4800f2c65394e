import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluateAlong, firstReach, parseExpression } from './index.ts';

const vocabulary = { names: ['hours.total', 'hours.tow', 'landings.total'] };
const facts = { 'hours.total': 100, 'hours.tow': 10, 'landings.total': 50 };
const rates = { 'hours.total': 1, 'hours.tow': 0.25, 'landings.total': 3 };
const read = (text: string) => parseExpression(text, vocabulary);

const FORMULAS = [
  'hours.total + 2 * hours.tow',
  'floor(hours.total / 7) * 7',
  'min(hours.total, 3 * hours.tow + 80)',
  'hours.tow < 15 ? 3 * hours.tow + 90 : hours.total',
  '130 - max(hours.total - 120, 120 - hours.total)',
  'hours.total + (floor(hours.tow) == 12 ? 40 : 0)',
  'hours.total * hours.tow / 10',
  'landings.total / hours.total * 60 + hours.tow',
  'hours.total > 110 && hours.total < 115 ? 140 : 90 + hours.tow',
];

describe('E16, E17: first reach of a limit in further use', () => {
  it('agrees with a walk in small steps: not before, and reached there', () => {
    fc.assert(
      fc.property(fc.constantFrom(...FORMULAS), fc.integer({ min: 95, max: 200 }), fc.boolean(), (t, limit, at) => {
        const e = read(t);
        const value = (use: number) => evaluateAlong(e, facts, rates, use);
        const found = firstReach(e, facts, rates, limit, at ? 'at' : 'more than', 60);
        const over = (use: number) => (at ? value(use) >= limit - 4e-7 : value(use) > limit + 4e-7);
        let walked: number | null = null;
        for (let k = 0; k <= 6000 && walked === null; k++) if (over(k / 100)) walked = k / 100;
        if (found === null) {
          expect(walked).toBeNull();
          return;
        }
        expect(found.proven).toBe('exact');
        if (walked !== null) expect(found.at).toBeLessThanOrEqual(walked + 1e-5);
        if (walked !== null) expect(found.at).toBeGreaterThanOrEqual(walked - 0.0101);
        expect(over(found.at) || over(found.at + 1e-4)).toBe(true);
      }),
      { numRuns: 250 },
    );
  });
  it.each([
    ['hours.total', 100, 'at', 0],
    ['hours.total', 100, 'more than', 0.000001],
    ['hours.total + 2 * hours.tow', 150, 'at', 20],
    ['floor(hours.total / 7) * 7', 105, 'at', 5],
    ['130 - max(hours.total - 120, 120 - hours.total)', 130, 'at', 20],
    ['hours.total > 110 && hours.total < 115 ? 140 : 90', 130, 'at', 10],
  ] as const)('%s is %d (%s) after %d', (t, limit, is, use) =>
    expect(firstReach(read(t), facts, rates, limit, is, 1000)!.at).toBeCloseTo(use, 5),
  );
  it('null where the limit is never reached', () => {
    expect(firstReach(read('min(hours.total, 120)'), facts, rates, 121, 'at', 1e5)).toBeNull();
    expect(firstReach(read('hours.total'), facts, rates, 500, 'at', 399)).toBeNull();
  });
  it('refuses', () => {
    const ask = (limit: number, horizon: number) => () =>
      firstReach(read('hours.total'), facts, rates, limit, 'at', horizon);
    for (const bad of [ask(Number.NaN, 10), ask(1, 0), ask(1, Infinity)])
      expect(bad).toThrow(expect.objectContaining({ code: 'expression.forecast-invalid' }));
    expect(() => firstReach(read('hours.tow'), { 'hours.total': 1 }, {}, 5, 'at', 9)).toThrow(
      expect.objectContaining({ code: 'expression.fact-missing' }),
    );
  });
});
