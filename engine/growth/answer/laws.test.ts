import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { GrowthInput } from '../document.ts';
import { answerGrowth } from './answer.ts';
import { constantDocument, FROM, mixedDocument, numbersOf } from './testing/documents.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const hoursOf = (d: GrowthInput) => answerGrowth(d).value;
type Constant = Extract<GrowthInput['loading'], { as: 'constant' }>;
const loading = constantDocument.loading as Constant;
const material = constantDocument.material as Exclude<GrowthInput['material'], { library: string }>;

describe('laws', () => {
  it('nothing is longer than what is in force, whatever is given', () => {
    const limit = fc.record({
      first_at_h: fc.option(real(0, 20_000), { nil: undefined }),
      repeat_h: fc.option(real(0, 20_000), { nil: undefined }),
      left_h: fc.option(real(-500, 5000), { nil: undefined }),
      by_use: fc.option(
        fc.record({ first_at_h: real(0, 20_000), repeat_h: real(0, 20_000) }).map((l) => [{ use: 'patrol', ...l }]),
        { nil: undefined },
      ),
    });
    fc.assert(
      fc.property(fc.array(limit, { maxLength: 3 }), real(0.5, 1.3), (limits, stress) => {
        const in_force = limits.map((l, i) => ({ ...JSON.parse(JSON.stringify(l)), name: `D${i}`, reference: 'x' }));
        const usage = structuredClone(
          (mixedDocument.loading as { usage: { place: { stress: { at_1g_MPa: number } } } }).usage,
        );
        usage.place.stress.at_1g_MPa *= stress;
        const a = hoursOf({
          ...mixedDocument,
          loading: { ...mixedDocument.loading, usage } as GrowthInput['loading'],
          in_force,
          flown: [{ use: 'private', low_h: 10, high_h: 40 }],
        });
        const p = a.programme!;
        expect(p.first_h).toBeLessThanOrEqual(p.computed.first_h);
        expect(p.repeat_h).toBeLessThanOrEqual(p.computed.repeat_h);
        for (const l of limits) {
          expect(p.first_h).toBeLessThanOrEqual(l.first_at_h ?? Number.POSITIVE_INFINITY);
          expect(p.repeat_h).toBeLessThanOrEqual(l.repeat_h ?? Number.POSITIVE_INFINITY);
          expect(a.left_h!.high).toBeLessThanOrEqual(l.left_h ?? Number.POSITIVE_INFINITY);
          const patrol = a.byUse[1]!.programme!;
          expect(patrol.first_h).toBeLessThanOrEqual(
            l.by_use?.[0]?.first_at_h ?? l.first_at_h ?? Number.POSITIVE_INFINITY,
          );
          expect(patrol.repeat_h).toBeLessThanOrEqual(
            l.by_use?.[0]?.repeat_h ?? l.repeat_h ?? Number.POSITIVE_INFINITY,
          );
        }
        expect(a.left_h!.low).toBeLessThanOrEqual(a.left_h!.high);
        for (const n of numbersOf(a)) expect(Number.isFinite(n)).toBe(true);
      }),
      { numRuns: 25 },
    );
  });
  it('every harsher input brings the first look forward', () => {
    fc.assert(
      fc.property(real(1.02, 1.4), real(60, 110), real(-0.4, 0.6), (f, max_MPa, ratio) => {
        const base: GrowthInput = { ...constantDocument, loading: { ...loading, max_MPa, min_MPa: max_MPa * ratio } };
        const first = (d: GrowthInput) => hoursOf(d).programme!.first_h;
        const plain = first(base);
        const { law } = material;
        const harsher: [string, GrowthInput][] = [
          ['stress', { ...base, loading: { ...loading, max_MPa: max_MPa * f, min_MPa: max_MPa * ratio * f } }],
          ['peak', { ...base, loading: { ...loading, max_MPa: max_MPa * f, min_MPa: max_MPa * ratio } }],
          ['times', { ...base, loading: { ...loading, max_MPa, min_MPa: max_MPa * ratio, per_hour: 20 * f } }],
          ['rate', { ...base, material: { ...material, law: { ...law, c: law.c * f } } }],
          ['first flaw', { ...base, first_flaw: { c_mm: 1.27 * f, a_mm: 1.27 * f, from: FROM } }],
          ['limit stress', { ...base, limit_stress: { stress_MPa: 150 * f, from: FROM } }],
          [
            'toughness',
            { ...base, material: { ...material, toughness: [{ thickness_mm: 6, k_MPa_sqrt_m: 90 / f, from: FROM }] } },
          ],
          ['yield', { ...base, material: { ...material, yield_MPa: { value: 320 / f, from: FROM } } }],
          ['boundary', { ...base, factors: [{ name: 'stringer', value: f, from: FROM }] }],
          ['rule', { ...base, rule: { name: 'third', from: FROM } }],
        ];
        for (const [name, d] of harsher) {
          const same = ['limit stress', 'toughness', 'yield'].includes(name);
          expect([name, first(d) < plain * (same ? 1 + 1e-9 : 1)]).toEqual([name, true]);
        }
      }),
      { numRuns: 12 },
    );
  });
  it('a cycle that falls deeper never lengthens a life', () => {
    fc.assert(
      fc.property(real(60, 110), real(0, 0.7), real(0.01, 0.3), (max_MPa, ratio, deeper) => {
        const life = (r: number) =>
          hoursOf({ ...constantDocument, loading: { ...loading, max_MPa, min_MPa: max_MPa * r } }).firstToCritical_h!;
        expect(life(ratio - deeper)).toBeLessThanOrEqual(life(ratio) * (1 + 1e-6));
      }),
      { numRuns: 20 },
    );
  });
});
