import { describe, expect, it } from 'vitest';
import { randomSource } from '../foundation/random.ts';
import { grow } from './integrate/adaptive.ts';
import { fitParis, lawOf, materialOf } from './material/index.ts';
import { off } from './testing/inch.ts';
import {
  cycle,
  deviation,
  form,
  mean,
  meanCurve,
  rawTable,
  readingsOf,
  SPECIMENS,
  SUMMARY,
} from './testing/virkler.ts';

const from = { source: 'Virkler, Hillberry and Goel', edition: '1979', known: 'read' } as const;
/** Cycles from one half length to another by the integration that answers use. */
const life = (law: { c: number; n: number }, start: number, end: number) =>
  grow(form, lawOf({ law: 'paris', units: 'mm, MPa√m', ...law, from }), [cycle], { c_mm: start }, { c_mm: end }).cycles;
/** 95 % of a normal. */
const MOST = 1.96;

describe('68 specimens of 2024-T3, by the typed summary', () => {
  const law = { n: SUMMARY.law.n, c: 1000 * SUMMARY.law.c_m };
  const meanAt = new Map<number, number>(SUMMARY.means);
  it.each([20, 30, 49.8])('the law of the mean curve gives the mean at %d mm within its sampling error', (end) => {
    const sd = new Map<number, number>(SUMMARY.deviations).get(end)!;
    expect(Math.abs(life(law, 9, end) - meanAt.get(end)!)).toBeLessThan((MOST * sd) / Math.sqrt(SPECIMENS));
  });
  it('up to 15 mm the specimens grew slower than a power law: it errs to the fast, safe side, by 16 % at 10 mm', () => {
    const short = [10, 12, 15].map((end) => 1 - life(law, 9, end) / meanAt.get(end)!);
    expect(short[0]).toBeCloseTo(0.156, 2);
    expect(short[0]! > short[1]! && short[1]! > short[2]! && short[2]! > 0).toBe(true);
  });
  it('the library holds this law', () => {
    const held = materialOf({ library: '2024-t3', law: 'paris' }).law.power!;
    expect(held.c).toBeCloseTo(law.c, 20);
    expect(held.n).toBe(law.n);
  });
  it('lives at 49.8 mm are lognormal within the sampling error: mean, deviation, 5 and 95 %', () => {
    const s = SUMMARY.end.deviationLog10 * Math.LN10;
    const median = Math.exp(SUMMARY.end.meanLog10 * Math.LN10);
    expect(off(median * Math.exp((s * s) / 2), meanAt.get(49.8)!)).toBeLessThan((MOST * s) / Math.sqrt(SPECIMENS));
    const sd = meanAt.get(49.8)! * Math.sqrt(Math.expm1(s * s));
    expect(off(sd, 18_446.8)).toBeLessThan(MOST / Math.sqrt(2 * (SPECIMENS - 1)));
    // Standard error of a 5 % point: √(0.05 · 0.95 / 68) over the density there, 0.1031 / s.
    const error = (MOST * s * Math.sqrt((0.05 * 0.95) / SPECIMENS)) / 0.1031;
    expect(off(median * Math.exp(-1.645 * s), SUMMARY.end.percentile5)).toBeLessThan(error);
    expect(off(median * Math.exp(1.645 * s), SUMMARY.end.percentile95)).toBeLessThan(error);
  });
});

const table = rawTable();
if (!table) console.log('raw table of the 68 specimens: not run, ../shared/data/virkler_2024T3.csv is not there');
else {
  const { length_mm, cycles } = table;
  const last = length_mm.length - 1;
  const at = (length: number) => length_mm.findIndex((a) => Math.abs(a - length) < 1e-9);
  const ends = cycles.map((c) => c[last]!);

  describe('68 specimens of 2024-T3, by the raw table', () => {
    it('C10 the table is the one of the summary', () => {
      expect([length_mm.length, cycles.length, length_mm[0], length_mm[last]]).toEqual([164, 68, 9, 49.8]);
      for (const [length, expected] of SUMMARY.means)
        expect(off(mean(cycles.map((c) => c[at(length)]!)), expected)).toBeLessThan(2e-6);
      for (const [length, expected] of SUMMARY.deviations)
        expect(off(deviation(cycles.map((c) => c[at(length)]!)), expected)).toBeLessThan(2e-4);
      expect([Math.min(...ends), Math.max(...ends)]).toEqual([SUMMARY.end.least, SUMMARY.end.most]);
      expect(mean(ends.map(Math.log10))).toBeCloseTo(SUMMARY.end.meanLog10, 7);
      expect(deviation(ends.map(Math.log10))).toBeCloseTo(SUMMARY.end.deviationLog10, 7);
    });
    it('C11 fit of the mean curve: n 3.0649, C 5.4326e-11 m per cycle', () => {
      const { n, c, from_MPa_sqrt_m, to_MPa_sqrt_m } = fitParis(readingsOf(length_mm, meanCurve(cycles)));
      expect(Math.abs(n - SUMMARY.law.n)).toBeLessThan(5e-5);
      expect(off(c / 1000, SUMMARY.law.c_m)).toBeLessThan(2e-5);
      expect(Math.abs(from_MPa_sqrt_m - 8.19)).toBeLessThan(5e-3);
      expect(Math.abs(to_MPa_sqrt_m - 26.5)).toBeLessThan(0.05);
    });
    it('C11 fit of each specimen: n 3.0682 ± 0.2108, log10 C −10.2670 ± 0.2263, correlation −0.992', () => {
      const fits = cycles.map((c) => fitParis(readingsOf(length_mm, c)));
      const n = fits.map((f) => f.n);
      const log10c = fits.map((f) => Math.log10(f.c / 1000));
      expect(Math.abs(mean(n) - SUMMARY.specimens.n)).toBeLessThan(5e-5);
      expect(Math.abs(deviation(n) - SUMMARY.specimens.n_deviation)).toBeLessThan(5e-5);
      expect(Math.abs(mean(log10c) - SUMMARY.specimens.log10c_m)).toBeLessThan(5e-5);
      expect(Math.abs(deviation(log10c) - SUMMARY.specimens.log10c_deviation)).toBeLessThan(5e-5);
      const together =
        mean(n.map((v, i) => (v - mean(n)) * (log10c[i]! - mean(log10c)))) * (SPECIMENS / (SPECIMENS - 1));
      expect(together / (deviation(n) * deviation(log10c))).toBeCloseTo(-0.992, 3);
    });
  });

  /** The specimens in an order drawn with this seed; the first half, then the other. */
  const halves = (seed: number) => {
    const order = cycles.map((c, j) => [randomSource(seed, j).next(), c] as const).sort(([p], [q]) => p - q);
    const all = order.map(([, c]) => c);
    return [all.slice(0, SPECIMENS / 2), all.slice(SPECIMENS / 2)] as const;
  };
  const HALF = SPECIMENS / 2;
  /** Law and lognormal scatter of growth from one half; lives of the other half from a start to 49.8 mm. */
  function predict(fitted: typeof cycles, other: typeof cycles, start: number) {
    const first = at(start);
    const lengths = length_mm.slice(first);
    const law = fitParis(readingsOf(lengths, meanCurve(fitted).slice(first)));
    const lives = (half: typeof cycles) => half.map((c) => c[last]! - c[first]!);
    const scatter = deviation(lives(fitted).map(Math.log));
    const predicted = life(law, start, length_mm[last]!);
    const seen = lives(other);
    return {
      predicted,
      scatter,
      seen,
      /** Both halves are samples: in standard errors of their difference. */
      meanMiss: (mean(seen) / predicted - 1) / (scatter * Math.sqrt(2 / HALF)),
      spreadMiss: Math.log(deviation(seen.map(Math.log)) / scatter) / Math.sqrt(1 / (HALF - 1)),
    };
  }
  describe('fitted on half of the specimens, the other half is predicted', () => {
    const [one, other] = halves(1979);
    it.each([
      ['first half, 9 mm', one, other, 9],
      ['other half, 9 mm', other, one, 9],
      ['first half, 12 mm', one, other, 12],
      ['other half, 12 mm', other, one, 12],
    ])('law and scatter of the %s on: mean and spread of the rest within the sampling error', (_, a, b, start) => {
      const { predicted, scatter, seen, meanMiss, spreadMiss } = predict(a, b, start);
      expect(Math.abs(meanMiss)).toBeLessThan(MOST);
      expect(Math.abs(spreadMiss)).toBeLessThan(MOST);
      const median = predicted * Math.exp((-scatter * scatter) / 2);
      const inside = seen.filter((n) => Math.abs(Math.log(n / median)) < 1.645 * scatter).length;
      expect(Math.abs(inside - 0.9 * HALF)).toBeLessThanOrEqual(MOST * Math.sqrt(HALF * 0.9 * 0.1) + 1);
    });
    it('over 200 splits, both ways, from 12 mm: nine in ten lie within 95 % of the sampling', () => {
      // Lives have a longer tail than a lognormal: the sampling error of their deviation is √((κ − 1)/4n), κ of all 68.
      const logs = cycles.map((c) => Math.log(c[last]! - c[at(12)]!));
      const kurtosis = mean(logs.map((x) => (x - mean(logs)) ** 4)) / mean(logs.map((x) => (x - mean(logs)) ** 2)) ** 2;
      const tail = Math.sqrt((kurtosis - 1) / 2);
      let [means, spreads, lean, all] = [0, 0, 0, 0];
      for (let seed = 1; seed <= 200; seed++) {
        const [p, q] = halves(seed);
        for (const { meanMiss, spreadMiss } of [predict(p, q, 12), predict(q, p, 12)]) {
          means += Math.abs(meanMiss) < MOST ? 1 : 0;
          spreads += Math.abs(spreadMiss) < MOST * tail ? 1 : 0;
          lean += meanMiss;
          all += 1;
        }
      }
      expect(means / all).toBeGreaterThan(0.9);
      expect(spreads / all).toBeGreaterThan(0.9);
      expect(Math.abs(lean / all)).toBeLessThan(0.1);
    });
  });
}
