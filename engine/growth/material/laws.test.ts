import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MM_PER_INCH, MPA_SQRT_M_PER_KSI_SQRT_IN } from '../../foundation/convert.ts';
import { off } from '../testing/inch.ts';
import type { LawConstants } from './constants.ts';
import { lawOf, MATERIALS } from './index.ts';
import { openingFunction } from './opening.ts';

const from = { source: 'made for the test', known: 'invented' } as const;
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const power = (x: number, n: number) => Math.exp(n * Math.log(x));
const every = Object.entries(MATERIALS).flatMap(([name, m]) =>
  Object.values(m.laws).map((law) => ({ name: `${name}, ${law.law}`, law: lawOf(law) })),
);
const rate = (law: ReturnType<typeof lawOf>, range: number, ratio: number) => {
  const max = range / (1 - ratio);
  return law.rate(max, ratio * max);
};

describe.each(every)('$name', ({ law }) => {
  it('growth rises with the range and does not fall with the stress ratio', () => {
    fc.assert(
      fc.property(number(1, 15), number(1.001, 1.5), number(-1, 0.8), number(0.001, 0.15), (range, more, ratio, up) => {
        const here = rate(law, range, ratio);
        expect(rate(law, range * more, ratio)).toBeGreaterThanOrEqual(here);
        if (here > 0 && here < Number.POSITIVE_INFINITY) expect(rate(law, range * more, ratio)).toBeGreaterThan(here);
        expect(rate(law, range, ratio + up)).toBeGreaterThanOrEqual(here * (1 - 1e-12));
      }),
    );
  });
  it('a peak that opens nothing grows nothing; no growth is below zero or not a number', () => {
    fc.assert(
      fc.property(number(-50, 150), number(0.001, 200), (max, range) => {
        const grown = law.rate(max, max - range);
        if (max <= 0) expect(grown).toBe(0);
        expect(grown).toBeGreaterThanOrEqual(0);
      }),
    );
  });
  it('an equivalent cycle gives what the law gives, where the law is a pure power', () => {
    if (law.power === null) return expect(law.law).toMatch(/forman|closure/);
    const { c, n, weight } = law.power;
    fc.assert(
      fc.property(number(1, 60), number(-2, 0.95), (max, ratio) => {
        expect(off(law.rate(max, ratio * max), c * power(weight(ratio) * max, n))).toBeLessThan(1e-12);
      }),
    );
  });
  it('has a weight for every cycle, also one that hardly opens under deep compression', () => {
    for (const ratio of [-1e12, Number.NEGATIVE_INFINITY])
      expect(law.power === null || Number.isFinite(law.power.weight(ratio))).toBe(true);
  });
  it('refuses R of 1 and above, and what is not a number', () => {
    for (const [max, min] of [
      [10, 10],
      [10, 12],
      [10, Number.NaN],
    ] as const)
      expect(() => law.rate(max, min)).toThrow(expect.objectContaining({ code: 'growth.stress-ratio' }));
  });
});

/** Each law as printed, in the units of its constants. */
const printed: Readonly<Record<string, (l: LawConstants, max: number, ratio: number) => number>> = {
  paris: (l, max, r) => l.c * power((1 - r) * max, l.n),
  walker: (l, max, r) => (l.law === 'walker' ? l.c * power(power(1 - r, l.m) * max, l.n) : Number.NaN),
  forman: (l, max, r) =>
    l.law === 'forman' ? (l.c * power((1 - r) * max, l.n)) / ((1 - r) * l.kc - (1 - r) * max) : Number.NaN,
  closure: (l, max, r) => {
    if (l.law !== 'closure') return Number.NaN;
    const f = openingFunction(r, l.alpha, l.s);
    const threshold = (l.dk0 * (1 - openingFunction(0, l.alpha, l.s)) * (1 - r)) / (1 - f);
    const range = (1 - r) * max;
    return (
      (l.c * power(((1 - f) / (1 - r)) * range, l.n) * power(1 - threshold / range, l.p)) / power(1 - max / l.kc, l.q)
    );
  },
};
const constants = fc.record({
  law: fc.constantFrom('paris', 'walker', 'forman', 'closure'),
  c: number(1e-10, 1e-7),
  n: number(1.5, 5),
  m: number(0, 1),
  kc: number(40, 150),
  p: number(0, 1),
  q: number(0, 1),
  dk0: number(0, 2),
  alpha: number(1, 3),
  s: number(0, 0.5),
});

describe('units of the constants', () => {
  it.each([
    ['in, ksi√in', MM_PER_INCH, MPA_SQRT_M_PER_KSI_SQRT_IN],
    ['m, MPa√m', 1000, 1],
    ['mm, MPa√m', 1, 1],
  ] as const)('%s: growth in mm is what the printed law gives in its own units', (units, length, unit) => {
    fc.assert(
      fc.property(constants, number(5, 30), number(0, 0.5), (given, max, ratio) => {
        const law = { ...given, units, from } as unknown as LawConstants;
        const expected = length * printed[given.law]!(law, max, ratio);
        expect(off(lawOf(law).rate(max * unit, ratio * max * unit), expected)).toBeLessThan(1e-9);
      }),
    );
  });
  it('trap: C of 2024-T3 is 1.42e-8 in mm and MPa√m, 7.85e-10 in inch and ksi√in', () => {
    const c = lawOf({ law: 'walker', units: 'in, ksi√in', c: 7.85e-10, n: 3.59, m: 0.68, from }).power!.c;
    expect(Math.abs(c / 1e-8 - 1.42)).toBeLessThan(0.005);
  });
  it('trap: the constant of Forman goes with n − 1, its denominator being a K as well', () => {
    const inch = { law: 'forman', units: 'in, ksi√in', c: 1e-7, n: 3, kc: 100, from } as const;
    // 1e-7 · 20³ / (100 − 20) = 1e-5 in per cycle.
    expect(off(lawOf(inch).rate(20 * MPA_SQRT_M_PER_KSI_SQRT_IN, 0), 1e-5 * MM_PER_INCH)).toBeLessThan(1e-12);
  });
});

describe('the laws in their limits', () => {
  const base = { units: 'mm, MPa√m', c: 1e-8, n: 3.3, from } as const;
  const paris = lawOf({ law: 'paris', ...base });
  it('Walker with m of 1 is Paris; for R < 0 the peak alone counts', () => {
    const walker = lawOf({ law: 'walker', ...base, m: 1 });
    fc.assert(
      fc.property(number(1, 60), number(0, 0.95), (max, r) => {
        expect(off(walker.rate(max, r * max), paris.rate(max, r * max))).toBeLessThan(1e-12);
      }),
    );
    const other = lawOf({ law: 'walker', ...base, m: 0.6 });
    expect(other.rate(20, -15)).toBe(other.rate(20, 0));
  });
  it('Forman far below a great Kc is Paris with C over (1 − R) Kc', () => {
    const forman = lawOf({ law: 'forman', ...base, kc: 9999 });
    expect(off(forman.rate(10, 3) * 0.7 * 9999, paris.rate(10, 3))).toBeLessThan(2e-3);
  });
  it('Forman and closure have no end at Kc, and are Infinity there and beyond, never not a number', () => {
    const closure = { p: 0.5, q: 1, dk0: 2, alpha: 1.5, s: 0.3, kc: 80 };
    for (const law of [lawOf({ law: 'forman', ...base, kc: 80 }), lawOf({ law: 'closure', ...base, ...closure })]) {
      expect(law.rate(79.999999, 0)).toBeGreaterThan(law.rate(79, 0) * 100);
      for (const max of [80, 81, 1e6]) expect(law.rate(max, 0)).toBe(Number.POSITIVE_INFINITY);
    }
  });
  it('closure without threshold and toughness is Paris at each R, by the open part of the range', () => {
    const free = lawOf({ law: 'closure', ...base, p: 0, q: 0, dk0: 0, alpha: 1.9, s: 0.3, kc: 9000 });
    fc.assert(
      fc.property(number(1, 60), number(0, 0.9), (max, r) => {
        const open = (1 - openingFunction(r, 1.9, 0.3)) / (1 - r);
        expect(off(free.rate(max, r * max), power(open, 3.3) * paris.rate(max, r * max))).toBeLessThan(1e-9);
      }),
    );
  });
  it('the threshold is ΔK0 at R = 0, and lower the higher R', () => {
    const law = lawOf({ law: 'closure', ...base, p: 0.5, q: 1, dk0: 3, alpha: 1.5, s: 0.3, kc: 80 });
    expect(law.rate(2.9999, 0)).toBe(0);
    expect(law.rate(3.0001, 0)).toBeGreaterThan(0);
    expect(rate(law, 2.9, 0.3)).toBeGreaterThan(0);
    expect(rate(law, 2.9, -0.3)).toBe(0);
  });
  it('the opening function is continuous at R = 0 and −2 and never below R', () => {
    fc.assert(
      fc.property(number(-3, 0.999), number(1, 3), number(0, 0.9), (r, alpha, s) => {
        expect(openingFunction(r, alpha, s)).toBeGreaterThanOrEqual(r);
        for (const at of [0, -2])
          expect(openingFunction(at - 1e-9, alpha, s)).toBeCloseTo(openingFunction(at + 1e-9, alpha, s), 6);
      }),
    );
  });
});
