import beta from '@stdlib/stats-base-dists-beta';
import { describe, expect, it } from 'vitest';
import { pertMoments, pertQuantile } from './three-point.ts';

const t = (low_min: number, likely_min: number, high_min: number) => ({ low_min, likely_min, high_min });

/** Taylor, Introduction to Management Science, project example: critical activities 1-3-5-7, t_p = 24. Read. */
it('PERT means of a textbook project: the critical path takes 24', () => {
  const critical = [t(5, 8, 17), t(3, 5, 7), t(4, 6, 8), t(3, 4, 5)];
  expect(critical.reduce((s, x) => s + pertMoments(x).mean, 0)).toBeCloseTo(24, 12);
});

describe('quantiles of the beta-PERT curve', () => {
  const points = [t(0, 2, 10), t(5, 5, 9), t(1, 4, 4), t(10, 20, 30), t(0.6, 0.9, 1.8)];
  it.each(points)('against the beta quantile of a statistics package: %o', (p) => {
    const spread = p.high_min - p.low_min;
    const alpha = 1 + (4 * (p.likely_min - p.low_min)) / spread;
    for (const share of [0.01, 0.1, 0.5, 0.8, 0.9, 0.99])
      expect(
        Math.abs(pertQuantile(p, share) - (p.low_min + spread * beta.quantile(share, alpha, 6 - alpha))),
      ).toBeLessThan(2e-5 * spread);
  });
  it('ends, a fixed time, and the middle of an even curve', () => {
    expect(pertQuantile(t(3, 4, 9), 0)).toBe(3);
    expect(pertQuantile(t(3, 4, 9), 1)).toBeCloseTo(9, 9);
    expect(pertQuantile(t(7, 7, 7), 0.9)).toBe(7);
    expect(pertQuantile(t(10, 20, 30), 0.5)).toBeCloseTo(20, 4);
  });
  it('mean and variance are those of the curve: sums over its quantiles', () => {
    const p = t(1, 3, 9);
    const n = 4000;
    const all = Array.from({ length: n }, (_, i) => pertQuantile(p, (i + 0.5) / n));
    const mean = all.reduce((s, x) => s + x, 0) / n;
    const variance = all.reduce((s, x) => s + (x - mean) * (x - mean), 0) / n;
    expect(mean).toBeCloseTo(pertMoments(p).mean, 3);
    expect(variance).toBeCloseTo(pertMoments(p).variance, 2);
  });
});
