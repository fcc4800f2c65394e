import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../foundation/refusal.ts';
import { type PertJob, pertPath } from './index.ts';

const job = (low: number, likely: number, high: number, ...successors: number[]): PertJob => ({
  low,
  likely,
  high,
  successors,
});

describe('S8 PERT', () => {
  /**
   * RS-11: Taylor, Introduction to Management Science, example problem: mean 24, variance 5, chance by 28 printed 0.9633
   * (z rounded to 1.79; exactly 0.96318). Read in a second copy. The chain 1-3-5-7 is printed; how jobs 2, 4 and 6 hang
   * on it was not read: here 1-4-7 and 2-6-7, which are shorter either way.
   */
  const printed = pertPath([
    job(5, 8, 17, 2, 3),
    job(7, 10, 13, 5),
    job(3, 5, 7, 4),
    job(1, 3, 5, 6),
    job(4, 6, 8, 6),
    job(3, 3, 3, 6),
    job(3, 4, 5),
  ]);
  it('RS-11 mean 24, variance 5, chance 0.9633', () => {
    expect(printed.path).toEqual([0, 2, 4, 6]);
    expect(printed.mean).toBeCloseTo(24, 12);
    expect(printed.variance).toBeCloseTo(5, 12);
    expect(printed.chanceBy(28)).toBeCloseTo(0.96318, 5);
    expect(Math.abs(printed.chanceBy(28) - 0.9633)).toBeLessThan(0.00015);
    expect(printed.chanceBy(24)).toBeCloseTo(0.5, 12);
  });
  it('of chains as long the one of greater spread', () =>
    expect(pertPath([job(3, 3, 3), job(1, 3, 5), job(2, 3, 4)]).path).toEqual([1]));
  it('without spread it is before or after', () => {
    const sure = pertPath([job(2, 2, 2, 1), job(3, 3, 3)]);
    expect([sure.mean, sure.chanceBy(4.9), sure.chanceBy(5)]).toEqual([5, 0, 1]);
  });
  it('of nothing nothing', () => expect(pertPath([])).toMatchObject({ mean: 0, variance: 0, path: [] }));
  it.each([
    [[job(3, 2, 5)], 'times of job 1'],
    [[job(-1, 2, 5)], 'times of job 1'],
    [[job(1, 2, Number.NaN)], 'times of job 1'],
    [[job(1, 2, 3, 7)], 'job 8'],
    [[job(1, 2, 3, 1), job(1, 2, 3, 0)], 'ring'],
  ])('refused: %#', (jobs, words) => {
    try {
      pertPath(jobs);
    } catch (e) {
      expect(isRefusal(e) && e.code).toBe('teardown.project-unreadable');
      expect(isRefusal(e) && e.detail.given).toContain(words);
      return;
    }
    expect.unreachable();
  });
});
