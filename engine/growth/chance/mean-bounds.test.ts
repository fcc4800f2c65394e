import beta from '@stdlib/stats-base-dists-beta';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomSource } from '../../foundation/random.ts';
import { boundsOfMean } from './mean-bounds.ts';

describe('bounds of a mean of weights', () => {
  it('nothing seen in n: the upper end solves (1 − p)^n = 0.025', () => {
    for (const n of [10, 1000, 100_000]) {
      const { low, high } = boundsOfMean(0, n);
      expect(low).toBe(0);
      expect(Math.abs(n * Math.log1p(-high) - Math.log(0.025))).toBeLessThan(1e-9 * n);
    }
  });

  it('hold the exact bounds of a count inside, by the beta quantiles of a statistics package, and are not far from them', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 5000 }), fc.double({ min: 0, max: 1, noNaN: true }), (n, share) => {
        const k = Math.round(share * n);
        const { low, high } = boundsOfMean(k / n, n);
        const exact = {
          low: k === 0 ? 0 : beta.quantile(0.025, k, n - k + 1),
          high: k === n ? 1 : beta.quantile(0.975, k + 1, n - k),
        };
        expect(low).toBeLessThanOrEqual(exact.low + 1e-12);
        expect(high).toBeGreaterThanOrEqual(exact.high - 1e-12);
        expect(high - low).toBeLessThan(1.7 * (exact.high - exact.low) + 1e-12);
      }),
      { numRuns: 300 },
    );
  });

  it('hold the true mean of uneven weights in far more than 95 of 100 samples', () => {
    // Weight 1 with chance .02, a weight even between 0 and .1 with chance .3, else 0: mean .02 + .3 · .05 = .035.
    let held = 0;
    for (let sample = 0; sample < 400; sample++) {
      const random = randomSource(11, sample);
      let sum = 0;
      for (let i = 0; i < 500; i++) {
        const u = random.next();
        const v = random.next();
        sum += u < 0.02 ? 1 : u < 0.32 ? v * 0.1 : 0;
      }
      const { low, high } = boundsOfMean(sum / 500, 500);
      if (low <= 0.035 && 0.035 <= high) held += 1;
    }
    expect(held).toBeGreaterThanOrEqual(380);
  });

  it('more lives narrow them', () => {
    const width = (n: number) => boundsOfMean(0.1, n).high - boundsOfMean(0.1, n).low;
    expect(width(4000)).toBeLessThan(width(1000) * 0.55);
    expect(boundsOfMean(1, 50).high).toBe(1);
  });
});
