import beta from '@stdlib/stats-base-dists-beta';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rankOf, ranksAround } from './order-statistics.ts';

/** Chance that at least k of n draws lie at or below the percentile: the beta integral, from a statistics package. */
const atLeast = (k: number, n: number, p: number) => (k <= 0 ? 1 : k > n ? 0 : beta.cdf(p, k, n - k + 1));

describe('order statistics', () => {
  it('are the closest ranks that are far enough out, by the beta integral of a statistics package', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20_000 }), fc.double({ min: 0.001, max: 0.999, noNaN: true }), (n, p) => {
        const { low, high } = ranksAround(n, p);
        // The low one lies above the percentile where fewer than `low` draws are at or below it.
        const above = (rank: number) => 1 - atLeast(rank, n, p);
        const below = (rank: number) => atLeast(rank, n, p);
        if (low !== null) expect(above(low)).toBeLessThanOrEqual(0.025 + 1e-9);
        expect(above((low ?? 0) + 1)).toBeGreaterThan(0.025 - 1e-9);
        if (high !== null) expect(below(high)).toBeLessThanOrEqual(0.025 + 1e-9);
        expect(below((high ?? n + 1) - 1)).toBeGreaterThan(0.025 - 1e-9);
      }),
      { numRuns: 300 },
    );
  });

  /** Smallest sample whose extremes bound the median with 95 %: 6, since 2 · 0.5^6 = 0.03125 and 2 · 0.5^5 = 0.0625. */
  it('the median of six lies between the extremes, that of five is not bounded', () => {
    expect(ranksAround(6, 0.5)).toEqual({ low: 1, high: 6 });
    expect(ranksAround(5, 0.5)).toEqual({ low: null, high: null });
  });

  it('a rank is the smallest that has the share at or below it', () => {
    expect([rankOf(10, 0.05), rankOf(10, 0.1), rankOf(10, 0.11), rankOf(10, 0.5), rankOf(10, 0.99)]).toEqual([
      1, 1, 2, 5, 10,
    ]);
  });
});
