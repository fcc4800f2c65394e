import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../foundation/refusal.ts';
import { detectedAt, missedByAll, missOf } from './detection.ts';

const INCH = 25.4;
const size = fc.double({ min: 0.01, max: 200, noNaN: true });
const curve = fc
  .tuple(fc.double({ min: 0.05, max: 20, noNaN: true }), fc.double({ min: 1.01, max: 8, noNaN: true }))
  .map(([a50_mm, times]) => ({ a50_mm, a90_mm: a50_mm * times }));

describe('chance of detection', () => {
  /** fatigue reference, section 5.3 (computed from the log-odds form): a50 .02 in, a90 .05 in; six figures. */
  it.each([
    [0.01, 0.159475],
    [0.02, 0.5],
    [0.03, 0.725575],
    [0.05, 0.9],
    [0.1, 0.979354],
    [0.2, 0.996016],
  ])('log-odds through two sizes: %f in is found with %f', (inches, printed) => {
    const found = detectedAt({ a50_mm: 0.02 * INCH, a90_mm: 0.05 * INCH }, inches * INCH);
    expect(Math.abs(found - printed)).toBeLessThanOrEqual(5e-7);
  });

  /** Same section: a crack from .05 to 1.0 in, exponential over 3000 h; a50 .05, a90 .15; looks each I h before 3000. */
  it.each([
    [1000, 0.997839, 5e-7],
    [1500, 0.952381, 5e-7],
    [500, 0.99999981, 5e-9],
  ])('looks each %d h find it with %f', (every, printed, half) => {
    const miss = missOf({ a50_mm: 0.05 * INCH, a90_mm: 0.15 * INCH });
    let missed = 1;
    for (let h = every; h < 3000; h += every) missed *= miss(0.05 * INCH * Math.exp((h / 3000) * Math.log(20)));
    expect(Math.abs(1 - missedByAll(1, missed) - printed)).toBeLessThanOrEqual(half);
  });

  it('a larger crack is found sooner, a harder method finds less, and nothing is found at no size', () => {
    fc.assert(
      fc.property(curve, size, fc.double({ min: 1, max: 5, noNaN: true }), (c, a, times) => {
        expect(missOf(c)(a * times)).toBeLessThanOrEqual(missOf(c)(a));
        const harder = { a50_mm: c.a50_mm * times, a90_mm: c.a90_mm * times };
        expect(missOf(harder)(a)).toBeGreaterThanOrEqual(missOf(c)(a) - 1e-12);
      }),
    );
    expect(missOf({ a50_mm: 1, a90_mm: 2 })(0)).toBe(1);
  });

  it('a hundred looks are never better than the most that they share', () => {
    expect(missedByAll(0.97, 0)).toBeCloseTo(0.03, 15);
    expect(missedByAll(0.97, 1)).toBe(1);
    expect(missedByAll(0.8, 0.25)).toBeCloseTo(1 - 0.8 * 0.75, 15);
  });

  it.each([
    [2, 2],
    [3, 1],
    [0, 1],
  ])('refuses a50 %f with a90 %f', (a50_mm, a90_mm) => {
    let met: unknown;
    try {
      missOf({ a50_mm, a90_mm });
    } catch (e) {
      met = e;
    }
    expect(isRefusal(met) && met.code).toBe('growth.detection-reversed');
  });
});
