import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CrackForm } from '../model.ts';
import { off } from '../testing/inch.ts';
import { centre, edge, wide } from '../testing/plain-forms.ts';
import {
  carried,
  correctedK,
  criticalAlong,
  fracture,
  longestAfterProof,
  netSectionYield,
  plasticZone,
  residualAt,
  residualOf,
} from './index.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const strengths = fc.record({ yield_MPa: number(200, 600), toughness_MPa_sqrt_m: number(15, 160) });
const forms = fc.oneof(
  fc.tuple(number(30, 300), number(1, 25)).map(([w, t]) => centre(w, t)),
  fc.tuple(number(30, 300), number(1, 25)).map(([w, t]) => edge(w, t)),
);
/** A corner crack that comes through at the thickness: K of a quarter circle, roughly. */
const corner = (width: number, thickness_mm: number): CrackForm => ({
  ...centre(width, thickness_mm),
  tips: 2,
  through: centre(width, thickness_mm),
  k: ({ c_mm, a_mm }) => ({
    c: 0.7 * Math.sqrt((Math.PI * c_mm) / 1000),
    a: 0.75 * Math.sqrt((Math.PI * a_mm!) / 1000),
  }),
  net: ({ c_mm, a_mm }) => 1 - (Math.PI * c_mm * a_mm!) / 4 / (width * thickness_mm),
});

describe('laws of residual strength', () => {
  it('falls as the crack gets longer, and is never above fracture, tangent or net section', () => {
    fc.assert(
      fc.property(forms, strengths, number(0.001, 0.99), number(0.001, 0.99), (form, strength, p, q) => {
        const residual = residualOf(form, strength);
        const [short, long] = [Math.min(p, q), Math.max(p, q)].map((s) => residual({ c_mm: s * form.longest_c_mm }));
        expect(carried(long!)).toBeLessThanOrEqual(carried(short!) * (1 + 1e-9));
        expect(carried(long!)).toBeLessThanOrEqual(
          netSectionYield(form, { c_mm: long!.c_mm }, strength.yield_MPa) * (1 + 1e-12),
        );
        expect(long!.fracture_MPa).toBeLessThanOrEqual(
          fracture(form, { c_mm: long!.c_mm }, { ...strength, elastic: true }),
        );
        expect(long!.governs).toBe(long!.fracture_MPa < long!.net_section_MPa ? 'fracture' : 'net section yield');
      }),
    );
  });
  it('a tougher or stronger material never carries less', () => {
    fc.assert(
      fc.property(forms, strengths, number(0.001, 0.99), number(1, 1.5), (form, strength, share, more) => {
        const size = { c_mm: share * form.longest_c_mm };
        const here = carried(residualAt(form, size, strength));
        const stronger = { ...strength, yield_MPa: strength.yield_MPa * more };
        const tougher = { ...strength, toughness_MPa_sqrt_m: strength.toughness_MPa_sqrt_m * more };
        expect(carried(residualAt(form, size, stronger))).toBeGreaterThanOrEqual(here * (1 - 1e-6));
        expect(netSectionYield(form, size, stronger.yield_MPa)).toBeGreaterThanOrEqual(
          netSectionYield(form, size, strength.yield_MPa),
        );
        expect(fracture(form, size, { ...tougher, elastic: true })).toBeGreaterThanOrEqual(
          fracture(form, size, { ...strength, elastic: true }),
        );
      }),
    );
  });
  it('the yielded zone raises K, grows with the square of K, and is three times larger in plane stress', () => {
    fc.assert(
      fc.property(number(1, 40), number(200, 600), (k, yield_MPa) => {
        const zone = (x: number, constraint: 'plane stress' | 'plane strain') =>
          plasticZone(x, yield_MPa, constraint).radius_mm;
        expect(off(zone(2 * k, 'plane stress'), 4 * zone(k, 'plane stress'))).toBeLessThan(1e-12);
        expect(off(zone(k, 'plane stress'), 3 * zone(k, 'plane strain'))).toBeLessThan(1e-12);
        const { k: corrected, elastic } = correctedK(wide(3), 20, yield_MPa / 3, yield_MPa, 'plane stress');
        expect(corrected).toBeGreaterThan(elastic);
      }),
    );
  });
  it('in a wide sheet the iteration ends at the closed form: 1/√(1 − σ²/2σys²) and 1/√(1 − σ²/6σys²)', () => {
    fc.assert(
      fc.property(number(0.05, 0.9), number(1, 100), (share, c) => {
        for (const [constraint, i] of [
          ['plane stress', 2],
          ['plane strain', 6],
        ] as const) {
          const { k, elastic } = correctedK(wide(3), c, share * 300, 300, constraint);
          expect(off(k / elastic, 1 / Math.sqrt(1 - (share * share) / i))).toBeLessThan(1e-9);
        }
      }),
    );
  });
});

describe('critical size', () => {
  it('is where the place carries the limit stress and no more', () => {
    fc.assert(
      fc.property(forms, strengths, number(0.2, 0.9), (form, strength, share) => {
        const path = Array.from({ length: 40 }, (_, i) => ({ c_mm: ((i + 1) / 41) * form.longest_c_mm }));
        const [strongest, weakest] = [path[0]!, path.at(-1)!].map((s) => carried(residualAt(form, s, strength)));
        const limit = weakest! + share * (strongest! - weakest!);
        const { size, by } = criticalAlong(form, path, limit, strength);
        expect(off(carried(residualAt(form, size, strength)), limit)).toBeLessThan(1e-6);
        expect(by).toBe(residualAt(form, size, strength).governs);
      }),
    );
  });
  const strength = { yield_MPa: 300, toughness_MPa_sqrt_m: 40 };
  it('ends with the path where that carries the limit stress, at its start where even that does not', () => {
    const form = centre(100, 3);
    const path = [{ c_mm: 1 }, { c_mm: 2 }];
    expect(criticalAlong(form, path, 50, strength)).toMatchObject({ size: { c_mm: 2 }, by: 'ligament' });
    expect(criticalAlong(form, path, 295, strength)).toMatchObject({ size: { c_mm: 1 } });
  });
  it('a corner crack goes on as a through crack: the first through size is looked at on its own', () => {
    const form = corner(80, 6);
    const path = [{ c_mm: 2, a_mm: 2 }, { c_mm: 7, a_mm: 5.9 }, { c_mm: 7.2 }, { c_mm: 20 }, { c_mm: 39 }];
    const at = (limit: number) => criticalAlong(form, path, limit, strength);
    const before = carried(residualAt(form, path[1]!, strength));
    const after = carried(residualAt(form, path[2]!, strength));
    expect(after).toBeLessThan(before);
    expect(at((before + after) / 2).size).toEqual({ c_mm: 7.2 });
    const { size } = at(before + 1);
    expect(size.c_mm).toBeLessThan(7);
    expect((size.a_mm! - 2) / 3.9).toBeCloseTo((size.c_mm - 2) / 5, 9);
    expect(off(carried(residualAt(form, at(after / 2).size, strength)), after / 2)).toBeLessThan(1e-6);
  });
  it('the worst tip breaks a part-through crack', () => {
    const size = { c_mm: 2, a_mm: 4 };
    expect(fracture(corner(80, 6), size, strength)).toBeCloseTo(40 / corner(80, 6).k(size).a!, 9);
  });
});

describe('proof', () => {
  it('a part that held a stress has no crack that would have broken it, and may have every shorter one', () => {
    fc.assert(
      fc.property(forms, strengths, number(0.1, 0.8), (form, strength, share) => {
        const held = share * strength.yield_MPa;
        const longest = longestAfterProof(form, held, strength);
        if (longest === null) return;
        const residual = residualOf(form, strength);
        expect(carried(residual({ c_mm: longest }))).toBeGreaterThanOrEqual(held * (1 - 1e-9));
        if (longest < form.longest_c_mm * 0.99)
          expect(carried(residual({ c_mm: longest * 1.001 }))).toBeLessThan(held * (1 + 1e-9));
      }),
    );
  });
  it('where K falls and rises again, as at a pin, the longest that held counts, and the zone never helps', () => {
    const at = centre(200, 3);
    const pin: CrackForm = { ...at, k: ({ c_mm }) => ({ c: at.k({ c_mm }).c + 0.5 / c_mm, a: null }) };
    const brittle = { yield_MPa: 450, toughness_MPa_sqrt_m: 25 };
    const longest = longestAfterProof(pin, 90, brittle)!;
    expect(longest).toBeGreaterThan(10);
    expect(off(carried(residualAt(pin, { c_mm: longest }, brittle)), 90)).toBeLessThan(1e-9);
    expect(carried(residualAt(pin, { c_mm: 1 }, brittle))).toBeLessThan(90);
    for (const c_mm of [1, 2, 5, 20])
      expect(fracture(pin, { c_mm }, brittle)).toBeLessThanOrEqual(
        fracture(pin, { c_mm }, { ...brittle, elastic: true }),
      );
  });
  it('a stress above net section yield leaves none', () =>
    expect(longestAfterProof(centre(100, 2), 301, { yield_MPa: 300, toughness_MPa_sqrt_m: 60 })).toBeNull());
});

describe('refusals', () => {
  const [form, size, fine] = [centre(100, 2), { c_mm: 5 }, { yield_MPa: 300, toughness_MPa_sqrt_m: 60 }];
  it.each([
    ['growth.not-positive', () => fracture(form, size, { ...fine, toughness_MPa_sqrt_m: -60 }), /toughness of -60/],
    ['growth.not-positive', () => residualAt(form, size, { ...fine, yield_MPa: 0 }), /yield stress of 0/],
    ['growth.not-positive', () => criticalAlong(form, [size], Number.NaN, fine), /limit stress of NaN/],
    ['growth.not-positive', () => criticalAlong(form, [], 100, fine), /number of sizes of 0/],
    ['growth.not-positive', () => plasticZone(10, 300, { thickness_mm: 0 }), /thickness of 0/],
    ['growth.not-positive', () => longestAfterProof(form, -1, fine), /held of -1/],
    ['growth.outside-solution', () => correctedK(wide(2), 10, 450, 300, 'plane stress'), /no end/],
  ])('%s', (code, doing, words) => {
    expect(doing).toThrow(expect.objectContaining({ code }));
    expect(doing).toThrow(words);
  });
});
