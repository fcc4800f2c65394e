import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluate, parseExpression } from './expression/index.ts';
import { hoursUntil } from './flown-out.ts';
import { flownOn } from './mix.ts';
import type { Mix } from './model.ts';

const mix: Mix = { hours: { private: 0.75, tow: 0.25 }, landingsPerHour: { private: 2, tow: 6 }, from: 'stated' };
const facts = { 'hours.total': 100, 'hours.tow': 10, 'landings.total': 50 };
const read = (text: string) => parseExpression(text, { names: Object.keys(facts) });
const until = (text: string, left: number) => hoursUntil(read(text), facts, mix, left);

/** The way it was worked out before: doubling and halving, right for a figure that only grows and grows far enough. */
function byHalving(text: string, left: number): number {
  const e = read(text);
  const used = (h: number) => evaluate(e, flownOn(facts, mix, h)) - evaluate(e, facts);
  let [low, high] = [0, 1];
  while (used(high) < left) high *= 2;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (used(middle) < left) low = middle;
    else high = middle;
  }
  return high;
}

const GROWING = [
  'hours.total',
  'hours.total + 2 * hours.tow',
  'hours.total + landings.total / 3',
  'hours.tow < 15 ? hours.total : hours.total + 4 * (hours.tow - 15)',
  'floor(landings.total / 10)',
  'hours.total * hours.tow / 100',
  'max(hours.total, 5 * hours.tow)',
];

describe('hours until a counted limit is used up', () => {
  it('of a figure that only grows: as by doubling and halving', () => {
    fc.assert(
      fc.property(fc.constantFrom(...GROWING), fc.integer({ min: 1, max: 30_000 }), (text, tenths) => {
        const left = text.startsWith('floor') ? Math.ceil(tenths / 10) : tenths / 10;
        const old = byHalving(text, left);
        // Never later; earlier by seconds at the most, where the place is only enclosed.
        expect(until(text, left)! - old).toBeLessThan(1e-7 * Math.max(1, old));
        expect(old - until(text, left)!).toBeLessThan(0.001);
      }),
      { numRuns: 200 },
    );
  });
  it('whole hours stay whole: no second is lost by rounding', () => {
    for (let left = 1; left < 400; left += 7) expect(until('hours.total', left)).toBe(left);
  });
  it('of a figure that rises and falls again: the first time, not a later one nor never', () => {
    const tent = '60 - max(hours.total - 150, 150 - hours.total)';
    expect(until(tent, 30)).toBeCloseTo(30, 6);
    expect(until(`max(${tent}, hours.total - 500)`, 30)).toBeCloseTo(30, 6);
    expect(until(tent, 50)).toBeCloseTo(50, 5);
    expect(until(tent, 51)).toBeNull();
  });
  it('a short peak between two doublings is met', () => {
    expect(until('hours.total > 340 && hours.total < 345 ? 900 : hours.total', 500)).toBeCloseTo(240, 4);
  });
  it('a limit beyond 200 000 h is not taken for one that is never reached', () => {
    expect(until('hours.total / 1000', 300)).toBeCloseTo(300_000, 3);
  });
  it('never, where flying does not use it up', () => {
    expect(until('min(hours.total, 120)', 30)).toBeNull();
    expect(until('7', 1)).toBeNull();
  });
  it('where the formula cannot be followed, no more than is sure', () => {
    // The divisor is zero 390 h ahead; the limit would be reached at 380 h.
    const sure = until('1000 / (122.5 - hours.tow - landings.total / 100 + 0.5)', 90)!;
    expect(sure).toBeGreaterThanOrEqual(10);
    expect(sure).toBeLessThanOrEqual(380);
  });
});
