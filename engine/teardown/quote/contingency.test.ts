import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findingRuns, shareOf } from './contingency.ts';
import type { FindingCost } from './model.ts';

const fixed = (id: string, chance: number, cents: number): FindingCost => ({
  id,
  name: id,
  chance,
  goods_cents: cents,
  parts_cents: { low: 0, high: 0 },
  hands_cents: { low: 0, likely: 0, high: 0 },
});

describe('what findings add', () => {
  /** All eight ways that three findings come or not, with their chances: 40, 1000 and 7000 with 0.5, 0.3, 0.2. */
  it('three findings of fixed sums: the share of each sum as enumerated', () => {
    const findings = [fixed('a', 0.5, 40), fixed('b', 0.3, 1000), fixed('c', 0.2, 7000)];
    const exact = new Map<number, number>();
    for (let ways = 0; ways < 8; ways++) {
      let [sum, chance] = [0, 1];
      findings.forEach((f, i) => {
        const comes = (ways >> i) & 1;
        sum += comes * f.goods_cents;
        chance *= comes ? f.chance : 1 - f.chance;
      });
      exact.set(sum, (exact.get(sum) ?? 0) + chance);
    }
    const n = 40_000;
    const runs = findingRuns(findings, 11, n);
    for (const [sum, chance] of exact) {
      const seen = runs.filter((x) => x === sum).length / n;
      expect(Math.abs(seen - chance)).toBeLessThan(5 * Math.sqrt((chance * (1 - chance)) / n));
    }
    // cumulated: 0 0.28, 40 0.56, 1000 0.68, 1040 0.80, then 7000 ...
    expect(shareOf(runs, 0.5)).toBe(40);
    expect(shareOf(runs, 0.62)).toBe(1000);
    expect(shareOf(runs, 0.95)).toBe(8000);
  });
  it('a finding that is sure, of one sum by three points, has the mean of its curve', () => {
    const f = {
      ...fixed('x', 1, 500),
      hands_cents: { low: 0, likely: 300, high: 2400 },
      parts_cents: { low: 100, high: 300 },
    };
    const runs = findingRuns([f], 3, 40_000);
    const mean = runs.reduce((s, x) => s + x, 0) / runs.length;
    expect(Math.abs(mean - (500 + (0 + 4 * 300 + 2400) / 6 + 200))).toBeLessThan(10);
    expect(Math.min(...runs)).toBeGreaterThanOrEqual(600);
    expect(Math.max(...runs)).toBeLessThanOrEqual(3200);
  });

  const finding = fc.record({
    id: fc.uuid(),
    name: fc.constant('f'),
    chance: fc.double({ min: 0, max: 1, noNaN: true }),
    goods_cents: fc.nat(100_000),
    parts_cents: fc.tuple(fc.nat(50_000), fc.nat(50_000)).map(([low, more]) => ({ low, high: low + more })),
    hands_cents: fc
      .tuple(fc.nat(9000), fc.nat(9000), fc.nat(9000))
      .map(([low, a, b]) => ({ low, likely: low + a, high: low + a + b })),
  });
  it('one more finding, wherever it stands on the list, or a greater chance never lowers any run', () =>
    fc.assert(
      fc.property(
        fc.array(finding, { maxLength: 6 }),
        finding,
        fc.nat(6),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (all, one, at, up) => {
          const before = findingRuns(all, 5, 200);
          const with_ = findingRuns([...all.slice(0, at), one, ...all.slice(at)], 5, 200);
          const surer = findingRuns([...all, { ...one, chance: one.chance + (1 - one.chance) * up }], 5, 200);
          before.forEach((sum, run) => {
            expect(with_[run]!).toBeGreaterThanOrEqual(sum - 1e-6);
            expect(surer[run]!).toBeGreaterThanOrEqual(with_[run]! - 1e-6);
          });
          for (const share of [0.5, 0.8])
            expect(shareOf(with_, share)).toBeGreaterThanOrEqual(shareOf(before, share) - 1e-6);
        },
      ),
      { numRuns: 100 },
    ));
});

it('the share of a sample is the least of it that so many do not pass', () => {
  const sample = Float64Array.of(5, 1, 4, 2, 3);
  expect([0, 0.2, 0.21, 0.8, 1].map((s) => shareOf(sample, s))).toEqual([1, 1, 2, 4, 5]);
});
