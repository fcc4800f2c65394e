import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { growth } from '../engine/index.ts';
import { built, KERNELS } from '../scripts/build-kernels.mjs';
import { cycleKernel } from './growth-cycles.ts';

/** The readable form, `growCycleByCycle`, is the yardstick here; what that rests on stands in engine/growth. */
const from = { source: 'made up for a test', known: 'invented' as const };
/** Evenly spread, unlike doubles. */
const number = (min: number, max: number) =>
  fc.integer({ min: 0, max: 10_000 }).map((i) => min + ((max - min) * i) / 10_000);
const interactions: fc.Arbitrary<growth.GrowthDocument['interaction']> = fc.oneof(
  fc.constant({ as: 'none' as const }),
  number(0, 3).map((exponent) => ({ as: 'wheeler' as const, exponent, plane: 'strain' as const, from })),
  fc.tuple(number(0, 4), number(1.1, 3.5)).map(([threshold_MPa_sqrt_m, shut_off_ratio]) => ({
    as: 'willenborg' as const,
    threshold_MPa_sqrt_m,
    shut_off_ratio,
    plane: 'stress' as const,
    from,
  })),
);
const geometries = fc
  .tuple(number(0.55, 1.95), number(2, 8), fc.constantFrom(1 as const, 2 as const), number(14, 40))
  .map(([ratio, thickness_mm, cracks, wide]) => ({
    shape: 'hole_corner' as const,
    thickness_mm,
    diameter_mm: 2 * ratio * thickness_mm,
    width_mm: wide * ratio * thickness_mm,
    cracks,
  }));
/** Peaks with overloads and compression among them. */
const sequences = fc
  .array(fc.tuple(number(-20, 180), number(-1.2, 0.9)), { minLength: 1, maxLength: 300 })
  .map((cycles) => ({
    max_MPa: Float64Array.from(cycles, ([max]) => max),
    min_MPa: Float64Array.from(cycles, ([max, r]) => max - Math.abs(max) * (1 - r) - 0.01),
    hours: 1,
  }));
const kernel = cycleKernel();
const near = (x: number, y: number) => expect(Math.abs(x / y - 1)).toBeLessThan(1e-9);

describe('corner crack at a hole, cycle by cycle', () => {
  it('gives what the readable form gives, to 1e-9, on random bodies, laws and sequences', () => {
    let [grown, through, ran] = [0, 0, 0];
    fc.assert(
      fc.property(
        fc.record({ geometry: geometries, interaction: interactions, sequence: sequences }),
        fc.record({ n: number(2, 4.5), m: number(0, 1), ratio: number(0.3, 1.8), share: number(0.05, 0.7) }),
        ({ geometry, interaction, sequence }, { n, m, ratio, share }) => {
          const c = 1e-6 * Math.exp(-(n - 3) * Math.log(12));
          const law = growth.lawOf({ law: 'walker', units: 'mm, MPa√m', c, n, m, from });
          const form = growth.crackForm({ ...geometry, bending_ratio: 0 });
          const a_mm = share * geometry.thickness_mm;
          const start = { a_mm, c_mm: a_mm / ratio };
          if (form.outside(start) !== null) return;
          const until = { cycles: 3000, c_mm: form.longest_c_mm };
          const options = { interaction, yield_MPa: 345 };
          const counted: growth.CycleKernel = (input) => {
            const made = kernel(input);
            ran += made.cycles - input.from.cycles;
            return made;
          };
          const plain = growth.growCycleByCycle(form, law, sequence, start, until, options);
          const fast = growth.growCycleByCycle(form, law, sequence, start, until, {
            ...options,
            kernel: { run: counted, geometry, law: { c, n, m } },
          });
          expect([fast.ended, fast.cycles, fast.points.length]).toEqual([
            plain.ended,
            plain.cycles,
            plain.points.length,
          ]);
          for (const [i, p] of plain.points.entries()) {
            near(fast.points[i]!.c_mm, p.c_mm);
            if (p.a_mm !== null) near(fast.points[i]!.a_mm!, p.a_mm);
          }
          if (plain.points.at(-1)!.c_mm > start.c_mm * 1.001) grown++;
          if (plain.through) through++;
        },
      ),
      { numRuns: 150 },
    );
    expect(grown).toBeGreaterThan(30);
    expect(through).toBeGreaterThan(3);
    expect(ran).toBeGreaterThan(20_000);
  });

  const geometry = { shape: 'hole_corner', width_mm: 60, thickness_mm: 4, diameter_mm: 6, cracks: 1 } as const;
  const start = { cycles: 0, c_mm: 1, a_mm: 1.2, c_overload: null, a_overload: null };
  const law = { c: 1e-7, n: 3.5, m: 0.68 };
  const cycles = (...peaks: number[]) => ({
    max_MPa: Float64Array.from(peaks),
    min_MPa: Float64Array.from(peaks, (p) => 0.1 * p),
  });
  const far = { c_mm: 1e9, a_mm: 1e9, cycles: 1000 };
  const input = (more: Partial<growth.KernelInput>): growth.KernelInput => ({
    geometry,
    law,
    interaction: { as: 'none' },
    ...cycles(100),
    from: start,
    until: far,
    ...more,
  });
  it('stops after the cycle that reaches what it is asked for, and goes on from there as if it had not stopped', () => {
    const interaction = { as: 'willenborg', threshold_MPa_sqrt_m: 3, shut_off_ratio: 2.2, zone: 2e-4 } as const;
    const sequence = cycles(90, 150, 60, 80, 85, 140, 70);
    const whole = kernel(input({ ...sequence, interaction }));
    const half = kernel(input({ ...sequence, interaction, until: { ...far, cycles: 501 } }));
    expect(half.cycles).toBe(501);
    expect(half.c_overload).not.toBeNull();
    expect(kernel(input({ ...sequence, interaction, from: half }))).toEqual(whole);
    const to = kernel(input({ until: { ...far, cycles: 1e6, a_mm: 1.5 } }));
    expect(to.a_mm).toBeGreaterThanOrEqual(1.5);
    expect(kernel(input({ until: { ...far, cycles: to.cycles - 1 } })).a_mm).toBeLessThan(1.5);
    expect(kernel(input({ until: { ...far, c_mm: 0.5 } }))).toEqual(start);
  });
  it('stops where the solution ends: too deep, too shallow, too long', () => {
    for (const from of [
      { ...start, c_mm: 1, a_mm: 2.01 },
      { ...start, c_mm: 10.1, a_mm: 2 },
      { ...start, c_mm: 12.1, a_mm: 3.9 },
    ])
      expect(kernel(input({ from }))).toEqual(from);
    expect(kernel(input({ from: { ...start, c_mm: 11.9, a_mm: 3.9 } })).cycles).toBeGreaterThan(0);
  });
  it('grows nothing under compression, and nothing below the threshold of a shut-off', () => {
    expect(kernel(input(cycles(-5)))).toEqual({ ...start, cycles: 1000 });
    const interaction = { as: 'willenborg', threshold_MPa_sqrt_m: 3, shut_off_ratio: 2, zone: 2e-4 } as const;
    const over = kernel(input({ ...cycles(200), interaction, until: { ...far, cycles: 1 } }));
    const after = kernel(input({ ...cycles(60), interaction, from: over }));
    expect(after.c_mm / over.c_mm - 1).toBeLessThan(1e-6);
    expect(after.cycles).toBe(1000);
  });
  it('a longer sequence after a shorter one, and a shorter one again: nothing of the other is left', () => {
    const long = { max_MPa: new Float64Array(40_000).fill(80), min_MPa: new Float64Array(40_000).fill(8) };
    const one = kernel(input({}));
    kernel(input({ ...long, until: { ...far, cycles: 50_000 } }));
    expect(kernel(input({}))).toEqual(one);
  });
});

it.each(KERNELS)('%s: the .wasm that is kept is what its source builds', async (name) => {
  const kept = readFileSync(new URL(`./${name}.wasm`, import.meta.url));
  expect(Buffer.from(await built(name)).equals(kept), 'run node scripts/build-kernels.mjs and commit').toBe(true);
});
