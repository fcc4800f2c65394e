import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber, parseDay } from '../foundation/day.ts';
import { NO_SEASON, operationalDays, seasonOf } from './season.ts';

const on = (d: string) => dayNumber(parseDay(d));
describe('O7 the clock of the flying', () => {
  const any = fc.record({
    depth: fc.double({ min: 0, max: 0.9, noNaN: true }),
    peak: fc.double({ min: 0, max: 365, noNaN: true }),
  });
  const day = fc.integer({ min: 0, max: 30_000 });
  it('runs forward, adds up, and over a whole cycle of four years is the calendar', () => {
    fc.assert(
      fc.property(any, day, day, day, (season, a, b, c) => {
        const [x, y, z] = [a, b, c].sort((p, q) => p - q) as [number, number, number];
        expect(operationalDays(season, x, z)).toBeCloseTo(
          operationalDays(season, x, y) + operationalDays(season, y, z),
          6,
        );
        expect(operationalDays(season, x, y)).toBeGreaterThanOrEqual(-1e-9);
        expect(operationalDays(season, x, x + 1461)).toBeCloseTo(1461, 6);
      }),
    );
  });
  it('runs faster around the peak by the depth', () => {
    const season = { depth: 0.6, peak: on('1970-07-15') };
    expect(operationalDays(season, on('2024-07-14'), on('2024-07-16')) / 2).toBeCloseTo(1.6, 2);
    expect(operationalDays(season, on('2024-01-13'), on('2024-01-15')) / 2).toBeCloseTo(0.4, 2);
  });
  it('is found from quarters that repeat, with its peak, and not from even ones', () => {
    const quarters = (flown: readonly number[]) =>
      Array.from({ length: 20 }, (_, i) => {
        const from = on('2015-01-01') + Math.round(i * 91.3125);
        return { from, to: on('2015-01-01') + Math.round((i + 1) * 91.3125), flown: flown[i % flown.length]! };
      });
    const found = seasonOf(quarters([6, 20, 22, 7]));
    expect(found.depth).toBeGreaterThanOrEqual(0.3);
    expect(Math.abs(found.peak - 182)).toBeLessThan(25);
    expect(seasonOf(quarters([14, 13, 15]))).toEqual(NO_SEASON);
  });
});
