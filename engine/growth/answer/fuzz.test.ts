import fc from 'fast-check';
import { expect, it } from 'vitest';
import { isRefusal } from '../../foundation/refusal.ts';
import { answerGrowth } from './answer.ts';
import { constantDocument, FROM, mixedDocument, numbersOf } from './testing/documents.ts';

/** Spread over its powers of ten. */
const spread = (low: number, high: number) =>
  fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map(Math.exp);
const share = (max: number) => fc.double({ min: 0, max, noNaN: true });
const plate = { width_mm: spread(5, 500), thickness_mm: spread(0.5, 50) };
const hole = { ...plate, diameter_mm: spread(1, 60) };
const cracks = fc.constantFrom(1, 2);
const bearing_ratio = fc.constantFrom(0, 2);
const shape = <const S extends string>(name: S) => fc.constant(name);
const geometries = fc.oneof(
  fc.record({ shape: shape('hole_corner'), ...hole, cracks, bending_ratio: fc.constantFrom(0, 0.5) }),
  fc.record({ shape: shape('hole_corner_bearing'), ...hole, bearing_ratio }),
  fc.record({ shape: shape('hole_bore'), ...hole, cracks }),
  fc.record({ shape: shape('hole_through'), ...hole, cracks, bearing_ratio }),
  fc.record({ shape: shape('hole_near_edge'), ...hole, edge_distance_mm: spread(2, 100), bearing_ratio }),
  fc.record({ shape: shape('lug_through'), ...hole }),
  fc.record({ shape: shape('plate_surface'), ...plate, bending_ratio: fc.constantFrom(0, 1) }),
  fc.record({ shape: shape('plate_corner'), ...plate }),
  fc.record({ shape: shape('plate_corner_table'), ...plate, out_of_plane_bending_ratio: fc.constantFrom(0, 1) }),
  fc.record({ shape: shape('centre_through'), ...plate }),
  fc.record({ shape: shape('edge_through'), ...plate, bending_ratio: fc.constantFrom(0, 2) }),
);
const units = fc.constantFrom('mm, MPa√m', 'in, ksi√in', 'm, MPa√m');
const constants = { units, c: spread(1e-14, 1e-4), n: spread(1, 15), from: fc.constant(FROM) };
const kc = spread(1, 500);
const closure = { p: share(5), q: share(5), dk0: spread(0.1, 30), s: share(0.9), kc };
const laws = fc.oneof(
  fc.record({ law: fc.constant('paris'), ...constants }),
  fc.record({ law: fc.constant('walker'), ...constants, m: share(1) }),
  fc.record({ law: fc.constant('forman'), ...constants, kc }),
  fc.record({ law: fc.constant('closure'), ...constants, ...closure, alpha: fc.constantFrom(1, 1.5, 3) }),
);
const asked = fc.record({
  geometry: geometries,
  law: laws,
  c: spread(0.05, 30),
  a: fc.option(spread(0.05, 30), { nil: undefined }),
  max_MPa: spread(5, 400),
  ratio: fc.double({ min: -2, max: 0.95, noNaN: true }),
  limit: spread(1, 2000),
  toughness: spread(5, 300),
  mixed: fc.boolean(),
});

it('whatever is asked: refused with a code, or every figure finite and no look later than what is in force', () => {
  let answered = 0;
  fc.assert(
    fc.property(asked, ({ geometry, law, c, a, max_MPa, ratio, limit, toughness, mixed }) => {
      const flaw = (by: number) => ({ c_mm: c * by, ...(a ? { a_mm: a * by } : {}), from: FROM });
      const base = mixed
        ? mixedDocument
        : {
            ...constantDocument,
            loading: { as: 'constant', max_MPa, min_MPa: max_MPa * ratio, per_hour: 10, from: FROM },
          };
      const document = {
        ...base,
        geometry,
        material: {
          name: 'any',
          law,
          yield_MPa: { value: 300, from: FROM },
          toughness: [{ thickness_mm: 5, k_MPa_sqrt_m: toughness, from: FROM }],
        },
        limit_stress: { stress_MPa: limit, from: FROM },
        first_flaw: flaw(1),
        detectable: { ...flaw(1.3), method: 'any' },
        flown: [{ use: 'private', low_h: 3, high_h: 50 }],
        in_force: [{ name: 'A', first_at_h: 100, repeat_h: 50, reference: 'A' }],
      };
      try {
        const { value, working } = answerGrowth(document);
        answered += 1;
        expect([...numbersOf(value), ...numbersOf(working)].filter((x) => !Number.isFinite(x))).toEqual([]);
        const { first_h, repeat_h } = value.programme ?? { first_h: 0, repeat_h: 0 };
        expect(first_h >= 0 && first_h <= 100 && repeat_h >= 0 && repeat_h <= 50).toBe(true);
      } catch (e) {
        if (!isRefusal(e)) throw e;
        expect(e.code).toMatch(/^growth\./);
      }
    }),
    { numRuns: 60 },
  );
  expect(answered).toBeGreaterThan(10);
});
