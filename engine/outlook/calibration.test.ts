import { describe, expect, it } from 'vitest';
import { type CalibrationRow, calibrate } from './testing/calibration.ts';

/**
 * A smaller run of the calibration (bench/outlook-calibration.ts runs 2,000 a habit). The gates are those of the
 * method, widened by two and a half standard errors of a share counted over so few cases. Seed neither tuned on
 * nor reported.
 */
const CASES = 300;
const slack = (share: number, n: number) => 2.5 * Math.sqrt((share * (1 - share)) / n);

describe('O10 calibration over simulated lives', () => {
  const rows = new Map(calibrate(909, CASES).map((r) => [r.habit, r]));
  const row = (habit: CalibrationRow['habit']) => rows.get(habit)!;

  it('pooled, the band holds the true day in 80 +/- 3 %', () => {
    const { held } = row('pooled over the first five');
    expect(held).toBeGreaterThan(0.77 - slack(0.8, 5 * CASES));
    expect(held).toBeLessThan(0.83 + slack(0.8, 5 * CASES));
  });
  it.each(['steady', 'seasonal', 'school'] as const)('%s: within 75 to 93 %', (habit) => {
    expect(row(habit).held).toBeGreaterThan(0.75 - slack(0.75, CASES));
    expect(row(habit).held).toBeLessThan(0.93 + slack(0.93, CASES));
  });
  it.each(['steady', 'seasonal', 'school', 'changed owner in the record', 'drifting'] as const)(
    '%s: the true day comes before P10 in at most 12 %',
    (habit) => {
      expect(row(habit).early).toBeLessThan(0.12 + slack(0.12, CASES));
    },
  );
  it('a later owner is outside all gates, and is seen to break the forecast', () => {
    expect(row('changed owner later').held).toBeLessThan(0.75);
  });
});
