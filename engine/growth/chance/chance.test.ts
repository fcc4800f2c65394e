import normal from '@stdlib/stats-base-dists-normal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ChanceAnswer } from '../model.ts';
import { chanceFrom } from './chance.ts';
import { livesOf } from './lives.ts';
import type { Lives, PreparedChance } from './problem.ts';
import { bent, chanceOf, corner, FROM, finite, prepared, problem, walker, wide } from './testing/problems.ts';

const still = { sd_ln: 0, from: FROM };
const answered = (of: PreparedChance): ChanceAnswer => chanceFrom(of, [livesOf(of, { from: 0, to: of.chance.lives })]);
const onlyRate = (seed: number, lives: number) =>
  prepared(problem(wide, walker), {
    chance: chanceOf({ seed, lives, growth_rate: { sd_ln: 0.3, from: FROM }, stress: still, toughness: still }),
  });
const middle = livesOf(
  prepared(problem(wide, walker), { chance: chanceOf({ growth_rate: still, stress: still, toughness: still }) }),
  { from: 0, to: 1 },
).hours[0]!;

describe('percentiles', () => {
  it('where only the growth rate scatters lives are lognormal, and the sampling bounds hold the true percentiles', () => {
    const z = (share: number) => normal.quantile(share, 0, 1);
    let held = 0;
    let asked = 0;
    for (let seed = 0; seed < 60; seed++) {
      for (const { share, sampling } of answered(onlyRate(seed, 300)).percentiles) {
        const want = middle * Math.exp(0.3 * z(share));
        asked += 1;
        if (sampling.low <= want && want <= sampling.high) held += 1;
      }
    }
    expect(asked).toBeGreaterThan(300);
    expect(held / asked).toBeGreaterThan(0.93);
    expect(held / asked).toBeLessThan(1);
  });

  it('are order statistics of the lives, as a numeric library gives them', () => {
    // numpy 2.4: quantile([0..9] as hours 10, 20 ... 100, p, method="inverted_cdf") for p .1 .5 .9: 10, 50, 90.
    const of = prepared(problem(wide, walker), { chance: chanceOf({ lives: 10 }) });
    const hours = Float64Array.from([30, 10, 100, 20, 50, 40, 90, 60, 80, 70]);
    const lives: Lives = { from: 0, to: 10, hours, missed: new Float64Array(10).fill(1), fan: new Float32Array(0) };
    const { percentiles } = chanceFrom(of, [lives]);
    const at = (share: number) => percentiles.find((p) => p.share === share);
    expect(at(0.1)?.hours).toBe(10);
    expect(at(0.5)?.hours).toBe(50);
    // Ten lives bound the median between the second and the ninth (binomial 10, .5: 11/1024 on each side).
    expect(at(0.5)?.sampling).toEqual({ low: 20, high: 90 });
    // They do not bound the ninety-ninth from above: it is not given.
    expect(at(0.99)).toBeUndefined();
  });

  it('lives that do not end count as the longest, and no figure is made of them', () => {
    const of = prepared(problem(finite, bent(6.2, 75)));
    const answer = answered(of);
    expect(answer.unfinished).toBeGreaterThan(20);
    expect(answer.percentiles.map((p) => p.share)).toContain(0.1);
    expect(answer.percentiles.map((p) => p.share)).not.toContain(0.99);
    expect(JSON.stringify(answer)).not.toMatch(/null,"sampling"|Infinity|NaN/);
    const numbers: number[] = [];
    JSON.stringify(answer, (_, v) => {
      if (typeof v === 'number') numbers.push(v);
      return v;
    });
    expect(numbers.every(Number.isFinite)).toBe(true);
    // Dropped, they would move the median down.
    const finished = [...livesOf(of, { from: 0, to: 400 }).hours].filter(Number.isFinite).sort((a, b) => a - b);
    const half = answer.percentiles.find((p) => p.share === 0.5);
    if (half) expect(half.hours).toBeGreaterThan(finished[Math.ceil(finished.length / 2) - 1]!);
  });
});

describe('passed before a look', () => {
  it('before the first look it is the share of the lives that have ended', () => {
    const of = onlyRate(3, 2000);
    const first = middle * 0.8;
    const { passed } = answered({ ...of, programme: { first_h: first, repeat_h: middle } });
    const want = normal.cdf(Math.log(0.8) / 0.3, 0, 1);
    expect(passed[0]!.sampling.low).toBeLessThan(want);
    expect(passed[0]!.sampling.high).toBeGreaterThan(want);
    expect(passed[0]!.look).toBe(1);
    expect(passed[0]!.hours).toBe(first);
  });

  /** Three lives by hand: ends 100, 250, never; missed 1, .2, 1; looks 150, 300. */
  it('is the mean of the weights of the lives that have ended', () => {
    const of = prepared(problem(wide, walker), {
      chance: chanceOf({ lives: 3 }),
      programme: { first_h: 150, repeat_h: 150 },
    });
    const lives: Lives = {
      from: 0,
      to: 3,
      hours: Float64Array.from([100, 250, Number.POSITIVE_INFINITY]),
      missed: Float64Array.from([1, 0.2, 1]),
      fan: new Float32Array(0),
    };
    const { passed, unfinished } = chanceFrom(of, [lives]);
    expect(passed[0]!.chance).toBeCloseTo(1 / 3, 15);
    expect(passed[1]!.chance).toBeCloseTo(1.2 / 3, 15);
    expect(unfinished).toBe(1);
    for (const p of passed) {
      expect(p.sampling.low).toBeLessThan(p.chance);
      expect(p.sampling.high).toBeGreaterThan(p.chance);
    }
  });

  /** About a middle life of these problems. */
  const LIFE_H = 110_000;
  const chanceAt = (answer: ChanceAnswer, hours: number) =>
    answer.passed.find((p) => Math.abs(p.hours - hours) < 1e-6)?.chance;

  it('more looks never raise it, a larger detectable size never lowers it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1000 }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0.05, max: 0.5, noNaN: true }),
        fc.double({ min: 1, max: 4, noNaN: true }),
        fc.boolean(),
        (seed, first, repeat, times, throughCorner) => {
          const of = prepared(problem(throughCorner ? corner : finite, walker), {
            chance: chanceOf({ seed, lives: 60 }),
            programme: { first_h: first * LIFE_H, repeat_h: repeat * LIFE_H },
          });
          const plain = answered(of);
          const more = answered({ ...of, programme: { first_h: first * LIFE_H, repeat_h: (repeat * LIFE_H) / 2 } });
          const coarse = answered({
            ...of,
            chance: { ...of.chance, detection: { ...of.chance.detection!, a50_mm: 4 * times, a90_mm: 9 * times } },
          });
          let last = 0;
          for (const [i, p] of plain.passed.entries()) {
            const also = chanceAt(more, p.hours);
            if (also !== undefined) expect(also).toBeLessThanOrEqual(p.chance + 1e-9);
            expect(coarse.passed[i]!.chance).toBeGreaterThanOrEqual(p.chance - 1e-9);
            expect(p.chance).toBeGreaterThanOrEqual(last);
            last = p.chance;
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('without a detection curve nothing is said about looks', () => {
    const { detection: _, ...without } = chanceOf({ lives: 20 });
    const answer = answered(prepared(problem(wide, walker), { chance: without }));
    expect(answer.passed).toEqual([]);
    expect(answer.detection).toBeNull();
  });
});

describe('seed and parts', () => {
  it('the same seed gives the same answer, another seed another', () => {
    const of = prepared(problem(corner, walker), { chance: chanceOf({ lives: 100 }) });
    expect(answered(of)).toEqual(answered(of));
    expect(answered({ ...of, chance: { ...of.chance, seed: 8 } })).not.toEqual(answered(of));
  });

  it('one part or many, in any order, give the same answer to the last digit', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 1, max: 119 }), { maxLength: 10 }),
        fc.boolean(),
        (cuts, isPower) => {
          const of = prepared(problem(corner, isPower ? walker : bent(3, 70)), { chance: chanceOf({ lives: 120 }) });
          const ends = [0, ...cuts.sort((a, b) => a - b), 120];
          const parts = ends.slice(1).map((to, i) => livesOf(of, { from: ends[i]!, to }));
          expect(chanceFrom(of, parts.reverse())).toEqual(answered(of));
        },
      ),
      { numRuns: 8 },
    );
  });

  it('parts that leave a life out, or give one twice, are a fault', () => {
    const of = prepared(problem(wide, walker), { chance: chanceOf({ lives: 20 }) });
    const part = (from: number, to: number) => livesOf(of, { from, to });
    expect(() => chanceFrom(of, [part(0, 10)])).toThrow(/10 lives of 20/);
    expect(() => chanceFrom(of, [part(0, 10), part(11, 20)])).toThrow(/missing or given twice/);
    expect(() => chanceFrom(of, [part(0, 10), part(9, 20)])).toThrow(/missing or given twice/);
  });
});

describe('fan', () => {
  it('rises with length and with the share, and ends with the percentiles of the lives', () => {
    const of = prepared(problem(finite, walker), { chance: chanceOf({ lives: 300 }) });
    const { fan, percentiles } = answered(of);
    for (const [i, line] of fan.entries()) {
      for (let s = 1; s < line.points.length; s++)
        expect(line.points[s]!.hours).toBeGreaterThanOrEqual(line.points[s - 1]!.hours);
      if (i > 0)
        for (const [s, p] of line.points.entries())
          expect(p.hours).toBeGreaterThanOrEqual(fan[i - 1]!.points[s]!.hours);
      const same = percentiles.find((p) => p.share === line.share);
      if (same) expect(line.points.at(-1)!.hours).toBeLessThanOrEqual(same.hours * (1 + 1e-6));
    }
    expect(fan[0]!.points[0]!.hours).toBe(0);
  });
});
