import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Interaction } from '../document.ts';
import { lawOf } from '../material/index.ts';
import { walkerOfMt } from '../material/walker-of-mt.ts';
import type { GrowthLaw } from '../model.ts';
import { asInch, inch, ksi, ksiRootInch, off } from '../testing/inch.ts';
import { centre, wide } from '../testing/plain-forms.ts';
import { effectiveCycle, type Overload, openingLevel } from './index.ts';

const from = { source: 'AE 737 homework 8', known: 'read' } as const;
const law = lawOf(walkerOfMt({ mT: 24, p: 3.5, q: 0.6, from }));
const wheeler = (exponent: number, plane: 'stress' | 'strain' = 'stress') =>
  ({ as: 'wheeler', exponent, plane, from }) as const;
const willenborg = (threshold: number, shut: number) =>
  ({ as: 'willenborg', threshold_MPa_sqrt_m: threshold, shut_off_ratio: shut, plane: 'stress', from }) as const;
const kOf = (stress_MPa: number, c_mm: number) => stress_MPa * wide(1).k({ c_mm }).c;

/**
 * AE 737 homework 8, 4: centre crack, a 0.25 in, 20/5 ksi, mT 24, p 3.5, q 0.6, yield 68; 5,000 cycles, one of 40/5, then
 * on. The key prints a plot ("closure moderate, Wheeler strong, Willenborg arrests"); figures recomputed with the key's
 * algorithm, which places the overload after its own growth and keeps R.
 */
describe('C4 overload, recomputed with the algorithm of the key', () => {
  const cycle = (a: number, max: number, min: number) => [kOf(ksi(max), a), kOf(ksi(min), a)] as const;
  let before = inch(0.25);
  for (let i = 0; i < 5000; i++) before += law.rate(...cycle(before, 20, 5));
  const kOverload = kOf(ksi(40), before);
  const after = before + law.rate(...cycle(before, 40, 5));
  const left: Overload = {
    ...effectiveCycle(wheeler(1.5), ksi(68))(null, kOverload, 0, before).overload!,
    at_mm: after,
  };
  /** Length at 1,000, 2,000 and 5,000 cycles after, in. */
  const onward = (growth: (kMax: number, a: number, overload: Overload | null) => [number, Overload | null]) => {
    let [a, overload]: [number, Overload | null] = [after, left];
    const seen: number[] = [];
    for (let i = 1; i <= 5000; i++) {
      const [grown, kept] = growth(kOf(ksi(20), a), a, overload);
      a += grown;
      overload = kept;
      if ([1000, 2000, 5000].includes(i)) seen.push(asInch(a));
    }
    return seen;
  };
  const near = (seen: readonly number[], expected: readonly number[]) =>
    expect(Math.max(...seen.map((a, i) => Math.abs(a - expected[i]!)))).toBeLessThan(1e-6);

  it('before and at the overload: 0.390121, 0.3907657; KOL 44.2828, rOL 0.0674950', () => {
    expect(Math.abs(asInch(before) - 0.390121)).toBeLessThan(5e-7);
    expect(Math.abs(asInch(after) - 0.3907657)).toBeLessThan(5e-8);
    expect(Math.abs(kOverload / ksiRootInch(1) - 44.2828)).toBeLessThan(5e-5);
    expect(Math.abs(asInch(left.zone_mm) - 0.067495)).toBeLessThan(5e-8);
  });
  it('no retardation: 0.436295, 0.491995, 0.766488', () =>
    near(
      onward((k) => [law.rate(k, k / 4), null]),
      [0.436295, 0.491995, 0.766488],
    ));
  it('Wheeler, m 1.5: 0.396414, 0.403344, 0.474539', () => {
    const step = effectiveCycle(wheeler(1.5), ksi(68));
    const grow = (k: number, a: number, o: Overload | null): [number, Overload | null] => {
      const felt = step(o, k, k / 4, a);
      return [felt.slowed * law.rate(felt.kMax, felt.kMin), felt.overload];
    };
    near(onward(grow), [0.396414, 0.403344, 0.474539]);
  });
  it('Willenborg, threshold 3, shut-off 2: 0.390805, 0.390845, 0.390969, with R kept as the key does', () => {
    const step = effectiveCycle(willenborg(ksiRootInch(3), 2), ksi(68));
    const grow = (k: number, a: number, o: Overload | null): [number, Overload | null] => {
      const felt = step(o, k, k / 4, a);
      return [law.rate(felt.kMax, felt.kMax / 4), felt.overload];
    };
    near(onward(grow), [0.390805, 0.390845, 0.390969]);
  });
  it('closure, Cf0 0.3, in the place of R inside the zone: 0.418607, 0.456588, 0.691449', () => {
    const level = openingLevel(0.3, 20, 5);
    const step = effectiveCycle(wheeler(0), ksi(68));
    const grow = (k: number, a: number, o: Overload | null): [number, Overload | null] => {
      const felt = step(o, k, k / 4, a);
      return [law.rate(k, felt.overload === o ? level * k : k / 4), felt.overload];
    };
    near(onward(grow), [0.418607, 0.456588, 0.691449]);
  });
  it('lecture 20 opening level, Cf0 0.3, R 0.2: 0.3728 as printed', () => {
    expect(openingLevel(0.3, 10, 2)).toBeCloseTo(0.3728, 12);
    expect(openingLevel(0.3, 10, 0)).toBeCloseTo(0.3, 12);
    expect(openingLevel(0.3, 10, 9)).toBeCloseTo(0.9, 12);
  });
  it('lecture 20 case 2: β 1.22, a 0.3, 6,000 at 18/3.6, one 27/5.4, 6,000 more, Wheeler m 1.43: 0.422572, 0.617694', () => {
    const other = lawOf(walkerOfMt({ mT: 32, p: 3.5, q: 0.6, from }));
    const step = effectiveCycle(wheeler(1.43), ksi(68));
    let [a, overload]: [number, Overload | null] = [inch(0.3), null];
    const run = (cycles: number, max: number) => {
      for (let i = 0; i < cycles; i++) {
        const k = 1.22 * kOf(ksi(max), a);
        const felt = step(overload, k, 0.2 * k, a);
        a += felt.slowed * other.rate(felt.kMax, felt.kMin);
        overload = felt.overload;
      }
      return asInch(a);
    };
    expect(Math.abs(run(6000, 18) - 0.422572)).toBeLessThan(5e-5);
    run(1, 27);
    expect(off(run(6000, 18), 0.617694)).toBeLessThan(1e-3);
  });
});

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const interactions: fc.Arbitrary<Interaction> = fc.oneof(
  fc.tuple(number(0, 4), fc.constantFrom('stress' as const, 'strain' as const)).map(([m, p]) => wheeler(m, p)),
  fc.tuple(number(0, 5), number(1.01, 4)).map(([k, s]) => willenborg(k, s)),
);
const laws: readonly GrowthLaw[] = [
  lawOf({ law: 'walker', units: 'mm, MPa√m', c: 1e-6, n: 3, m: 0.6, from }),
  lawOf({ law: 'paris', units: 'mm, MPa√m', c: 1e-6, n: 3, from }),
  lawOf({ law: 'forman', units: 'mm, MPa√m', c: 1e-4, n: 3, kc: 110, from }),
  lawOf({
    law: 'closure',
    units: 'mm, MPa√m',
    c: 1e-6,
    n: 3,
    p: 0.5,
    q: 1,
    dk0: 2,
    alpha: 1.5,
    s: 0.3,
    kc: 120,
    from,
  }),
];
const cycles = fc.array(
  fc.tuple(number(20, 160), number(-0.5, 0.8)).map(([max, r]) => [max, r * max] as const),
  { minLength: 5, maxLength: 120 },
);
function grown(interaction: Interaction, l: GrowthLaw, all: readonly (readonly [number, number])[]): number {
  const step = effectiveCycle(interaction, 300);
  const form = centre(400, 3);
  let [c, overload]: [number, Overload | null] = [5, null];
  for (const [max, min] of all) {
    const k = form.k({ c_mm: Math.min(c, 150) }).c;
    const felt = step(overload, max * k, min * k, c);
    c += Math.min(5, felt.slowed * l.rate(felt.kMax, felt.kMin));
    overload = felt.overload;
  }
  return c;
}

describe('laws of retardation', () => {
  it('never makes a crack longer than without it', () => {
    fc.assert(
      fc.property(interactions, fc.constantFrom(...laws), cycles, (interaction, l, all) => {
        expect(grown(interaction, l, all)).toBeLessThanOrEqual(grown({ as: 'none' }, l, all) * (1 + 1e-12));
      }),
      { numRuns: 300 },
    );
  });
  it('slows nothing under constant amplitude', () => {
    fc.assert(
      fc.property(interactions, fc.constantFrom(...laws), number(20, 160), number(-0.5, 0.8), (i, l, max, r) => {
        const all = Array.from({ length: 60 }, () => [max, r * max] as const);
        expect(grown(i, l, all)).toBe(grown({ as: 'none' }, l, all));
      }),
    );
  });
  it('a higher overload slows more while the crack is within its zone', () => {
    fc.assert(
      fc.property(interactions, number(1.3, 1.9), number(1.01, 1.2), (interaction, over, more) => {
        const step = effectiveCycle(interaction, 300);
        const felt = (times: number) => {
          const { overload } = step(null, 10 * times, 0, 5);
          return step(overload, 10, 1, 5.0001);
        };
        const rate = ({ slowed, kMax, kMin }: ReturnType<typeof felt>) => slowed * laws[0]!.rate(kMax, kMin);
        expect(rate(felt(over * more))).toBeLessThanOrEqual(rate(felt(over)) * (1 + 1e-12));
      }),
    );
  });
  it('a shut-off overload lowers the peak to the threshold: SOL 2, Kth 3, Kmax 10, KOL 20', () => {
    const step = effectiveCycle(willenborg(3, 2), 300);
    const { overload } = step(null, 20, 0, 5);
    const felt = step(overload, 10, 1, 5);
    expect(felt.kMax).toBeCloseTo(3, 12);
    expect(felt.kMin).toBeCloseTo(-6, 12);
  });
  it('cycles that open nothing leave the zone as it is; a step changes nothing that it was given', () => {
    fc.assert(
      fc.property(interactions, number(-20, 0), (interaction, max) => {
        const step = effectiveCycle(interaction, 300);
        const overload = Object.freeze({ at_mm: 5, zone_mm: 1, k: 30 });
        expect(step(overload, max, max - 5, 5.1)).toEqual({ kMax: max, kMin: max - 5, slowed: 1, overload });
        expect(step(overload, 10, 1, 5.1).overload).toBe(overload);
      }),
    );
  });
  it('once through the zone, growth is as before', () => {
    const step = effectiveCycle(wheeler(2), 300);
    const { overload } = step(null, 30, 0, 5);
    expect(step(overload, 10, 1, 5 + overload!.zone_mm)).toMatchObject({ slowed: 1, kMax: 10, kMin: 1 });
    expect(step(overload, 10, 1, 5.01).slowed).toBeLessThan(0.05);
  });
  it('plane strain makes a third of the zone', () => {
    const zone = (plane: 'stress' | 'strain') =>
      effectiveCycle(wheeler(1, plane), 300)(null, 30, 0, 5).overload!.zone_mm;
    expect(off(zone('stress'), 3 * zone('strain'))).toBeLessThan(1e-12);
    expect(off(zone('stress'), (1000 / (2 * Math.PI)) * 0.01)).toBeLessThan(1e-12);
  });
});

describe('refusals', () => {
  it.each([
    ['growth.not-positive', () => effectiveCycle(wheeler(1), 0), /yield stress of 0/],
    ['growth.not-positive', () => effectiveCycle(willenborg(3, 2), -300), /yield stress of -300/],
    ['growth.stress-ratio', () => openingLevel(0.3, 10, 10), /below 1/],
  ])('%s', (code, doing, words) => {
    expect(doing).toThrow(expect.objectContaining({ code }));
    expect(doing).toThrow(words);
  });
});
