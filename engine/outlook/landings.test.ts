import { describe, expect, it } from 'vitest';
import { negativeBinomialLogMass } from './distributions.ts';
import { atMost, countAt, updated } from './landings.ts';

describe('O4 Gamma-Poisson', () => {
  /** Compendium on Bayes, fliphtml5 phdiz/lzwp, p. 19 (read; shop-floor reference FQ-08): counts 20, 24, 23 from a flat start. Exact. */
  it('FQ-08 updates to Gamma(20, 1), (44, 2), (67, 3), with means 20, 22, 22.33', () => {
    const first = updated({ shape: 0, rate: 0 }, 20, 1);
    const second = updated(first, 24, 1);
    const third = updated(second, 23, 1);
    expect([first, second, third]).toEqual([
      { shape: 20, rate: 1 },
      { shape: 44, rate: 2 },
      { shape: 67, rate: 3 },
    ]);
    expect(Math.abs(third.shape / third.rate - 22.33)).toBeLessThanOrEqual(0.005);
  });
  /** Shop-floor reference FQ-09 (derived there, not published): predictive NB(67, 3/4). */
  it('FQ-09 predicts 12 to 34 with 95 %, and 20 with 0.07083', () => {
    const g = { shape: 67, rate: 3 };
    expect([countAt(g, 1, 0.025), countAt(g, 1, 0.975)]).toEqual([12, 34]);
    expect(Math.abs(Math.exp(negativeBinomialLogMass(67, 0.75, 20)) - 0.07083)).toBeLessThanOrEqual(5e-6);
    expect(Math.abs(atMost(g, 1, 20) - atMost(g, 1, 19) - 0.07083)).toBeLessThanOrEqual(5e-6);
  });
  /** Notes on Bayes Rules!, r4ds.github.io (read; shop-floor reference FQ-10). Exact. */
  it('FQ-10 Gamma(10, 2) and counts 6, 2, 2, 1 give Gamma(21, 6)', () => {
    expect([6, 2, 2, 1].reduce((g, y) => updated(g, y, 1), { shape: 10, rate: 2 })).toEqual({ shape: 21, rate: 6 });
  });
});
