import fc from 'fast-check';
import { expect, it } from 'vitest';
import { off } from '../testing/inch.ts';
import { fitParis } from './fit.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Cycles of a crack in a wide sheet, in closed form: K = σ √(πa), so N = (1/C (σ√π)^n) ∫ a^(−n/2) da. */
function grown(n: number, c: number, stress: number, lengths: readonly number[]) {
  const e = 1 - n / 2;
  const power = (x: number) => Math.exp(e * Math.log(x));
  const scale = 1 / (c * Math.exp(n * Math.log(stress * Math.sqrt(Math.PI / 1000))) * e);
  return lengths.map((length_mm) => ({
    length_mm,
    cycles: 500 + scale * (power(length_mm) - power(lengths[0]!)),
    range_MPa_sqrt_m: stress * Math.sqrt((Math.PI * length_mm) / 1000),
  }));
}
const dense = Array.from({ length: 160 }, (_, i) => 5 + i / 4);

it('gives back the law that a crack was grown by, to the error of the trapezium rule', () => {
  fc.assert(
    fc.property(number(2.2, 6), number(1e-10, 1e-6), number(20, 120), (n, c, stress) => {
      const fitted = fitParis(grown(n, c, stress, dense));
      expect(off(fitted.n, n)).toBeLessThan(5e-3);
      const at = fitted.to_MPa_sqrt_m;
      const rate = (law: { n: number; c: number }) => law.c * Math.exp(law.n * Math.log(at));
      expect(off(rate(fitted), rate({ n, c }))).toBeLessThan(0.02);
    }),
  );
});
it('twice the cycles is half of C at the same n; a count that starts elsewhere changes nothing', () => {
  const readings = grown(3.2, 1e-8, 60, dense).map((r, i) => ({
    ...r,
    cycles: r.cycles * (1 + 0.01 * Math.sin(i / 9)),
  }));
  const once = fitParis(readings);
  const twice = fitParis(readings.map((r) => ({ ...r, cycles: 2 * r.cycles + 12_345 })));
  expect(twice.n).toBeCloseTo(once.n, 6);
  expect(off(twice.c, once.c / 2)).toBeLessThan(1e-5);
  expect(off(twice.left_cycles, 2 * once.left_cycles)).toBeLessThan(1e-6);
  expect(once.left_cycles).toBeGreaterThan(0);
});
