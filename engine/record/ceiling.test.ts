import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mostFlown_s } from './ceiling.ts';
import { zPolicy } from './document.ts';

const policy = zPolicy.parse({});
describe('the most that a part can have lived before its record', () => {
  it.each([
    [0, 0],
    [10, 80],
    [30, 240],
    [366, 1200 * (366 / 365.25) + 248],
    [3652.5, 12_248],
  ])('%i days: %d h', (days, hours) => {
    expect(mostFlown_s(policy, days) / 3600).toBeCloseTo(hours, 3);
  });
  it('grows with the days and is never more than the daily ceiling', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 30_000 }), fc.integer({ min: 0, max: 400 }), (days, more) => {
        expect(mostFlown_s(policy, days + more)).toBeGreaterThanOrEqual(mostFlown_s(policy, days));
        expect(mostFlown_s(policy, days)).toBeLessThanOrEqual(policy.ceiling_hours_per_day * days * 3600);
      }),
    );
  });
});
