import { describe, expect, it } from 'vitest';
import { usage } from '../../engine/index.ts';
import { usageExample } from './usage.ts';

/**
 * The invented example, computed apart from this program from the equations of the method page alone, each curve summed
 * in 400 000 steps: damage an hour by the bands, what it is met by once per flight. No published figures.
 */
const APART = {
  private: { damage: 6.400892e-6, highest: 73.258705, gust: 0.497826, gag: 0.459531, cycles: 214.681976 },
  instruction: { damage: 6.580736e-6, highest: 69.00696, gust: 0.158195, gag: 0.738111, cycles: 320.217039 },
  tow: { damage: 1.244589e-5, highest: 68.148833, gust: 0.107379, gag: 0.730926, cycles: 2934.96 },
} as const;
const [LOWEST, FINE] = [-13.453329, 0.002];

describe('the invented example', () => {
  const { value, working, warnings } = usage.answerUsage(usageExample);
  it.each(Object.entries(APART))('%s as computed apart', (use, apart) => {
    const u = value.uses.find((x) => x.use === use)!;
    const share = (load: usage.LoadSource) => u.shares.find((s) => s.load === load)!.share;
    expect(Math.abs(u.perHour! / apart.damage - 1)).toBeLessThan(FINE);
    expect(share('gust')).toBeCloseTo(apart.gust, 3);
    expect(share('ground_air_ground')).toBeCloseTo(apart.gag, 3);
    expect(u.cyclesPerHour).toBeCloseTo(apart.cycles, 5);
    const { bands } = usage.spectrumOf(usage.readUsage(usageExample), use);
    expect(bands.at(-1)!.max_MPa).toBeCloseTo(apart.highest, 5);
    expect(bands.at(-1)!.min_MPa).toBeCloseTo(LOWEST, 5);
  });
  it('gusts of private flying and its miles an hour as computed apart', () => {
    const first = (symbol: string) => working.find((s) => s.symbol === symbol)!.value;
    expect(first('μ')).toBeCloseTo(20.600328, 6);
    expect(first('Kg')).toBeCloseTo(0.699925057, 9);
    expect(first('Δn')).toBeCloseTo(1.44199755, 8);
    expect(first('nm/h')).toBeCloseTo(114.873869, 6);
  });
  it('no sentence of it says that a sign, a factor or a sequence is doubtful', () => {
    expect(warnings.join(' ')).not.toMatch(/sign|softer|short/);
  });
});
