import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type TableLoad, tableFactor } from './corner-table.ts';
import { A_OVER_C, A_OVER_T, C_OVER_W, IN_PLANE, TENSION } from './corner-table-data.ts';
import { aloneEllipse, angle } from './ellipse.ts';
import { hermite } from './hermite.ts';
import { crackForm } from './index.ts';
import { cornerInPlate } from './plate-corner.ts';
import { cornerByTable } from './plate-corner-table.ts';
import { evenly } from './testing/geometries.ts';

/** USAF Damage Tolerant Design Handbook, section 11.3, table 11.3.9, as printed: a tip, c tip. */
describe('corner crack at a plate edge, by the table', () => {
  it.each<[TableLoad, number, number, number, number, number]>([
    ['tension', 1, 0.5, 0.2, 1.267, 1.309],
    ['tension', 0.2, 0.8, 0.5, 2.749, 3.528],
    ['tension', 0.5, 0.1, 1, 1.35, 1.424],
    ['out_of_plane', 0.4, 1, 0, -0.026, 1.49],
    ['out_of_plane', 1, 0.2, 0.8, 1.18, 1.368],
    ['in_plane', 0.2, 0, 1, 0.74, -1.033],
    ['in_plane', 0.5, 0.8, 0.2, 1.56, 1.502],
  ])('%s, a/c %s, a/t %s, c/W %s', (load, ac, at, cw, a, c) => {
    const f = tableFactor(load, { ac, at, cw });
    expect(f.a).toBeCloseTo(a, 10);
    expect(f.c).toBeCloseTo(c, 10);
  });
  it('K is that of the ellipse alone times f', () => {
    const k = cornerByTable('tension', 2, 2, 4, 10);
    const alone = aloneEllipse(angle(0), angle(90))(2, 2);
    expect(k.a! / alone.a!).toBeCloseTo(1.267, 10);
    expect(k.c / alone.c).toBeCloseTo(1.309, 10);
    expect(k.a).toBeCloseTo(1.267 * Math.sqrt((Math.PI * 0.002) / 2.464), 12);
  });
  it('the columns that should be equal are, within what the handbook itself says of its table', () => {
    for (const [i] of A_OVER_C.entries())
      for (const [j, v] of A_OVER_T.entries())
        for (const tip of [0, 1] as const) {
          const [one, other] = [TENSION[i]![j]![0]![tip], IN_PLANE[i]![j]![0]![tip]];
          expect(Math.abs(one / other - 1), `a/t ${v}`).toBeLessThan(0.03);
        }
  });
  it('changed axes give the changed tips: nothing jumps at a = c', () => {
    fc.assert(
      fc.property(evenly(0, 1), evenly(0, 1), (at, cw) => {
        for (const load of ['tension', 'in_plane', 'out_of_plane'] as const) {
          const shallow = tableFactor(load, { ac: 1, at, cw });
          const deep = tableFactor(load, { ac: 1 + 1e-9, at, cw });
          expect(Math.abs(deep.a - shallow.a)).toBeLessThan(0.12 * Math.max(1, Math.abs(shallow.a)));
          expect(Math.abs(deep.c - shallow.c)).toBeLessThan(0.12 * Math.max(1, Math.abs(shallow.c)));
        }
      }),
    );
  });
  it('the closed form of the same corner lies within 8 % of the table while small, never 3 % below it, 20 % above at most', () => {
    for (const x of [0.4, 0.5, 1])
      for (const v of [0.1, 0.2, 0.5])
        for (const cw of [0.05, 0.1, 0.2]) {
          const [t, w] = [5, (5 * v) / x / cw];
          const [a, c] = [t * v, cw * w];
          const table = cornerByTable('tension', c, a, t, w);
          const ratios = [
            cornerInPlate(t, w, angle(90))(c, a) / table.a!,
            cornerInPlate(t, w, angle(0))(c, a) / table.c,
          ];
          expect(Math.min(...ratios)).toBeGreaterThan(0.97);
          expect(Math.max(...ratios)).toBeLessThan(v <= 0.2 && cw <= 0.1 ? 1.08 : 1.2);
        }
  });
  it('loads superpose: tension, bending in and out of the plane, each by its share', () => {
    const plate = { width_mm: 40, thickness_mm: 5 };
    const size = { c_mm: 3, a_mm: 1.5 };
    const form = crackForm({
      shape: 'plate_corner_table',
      ...plate,
      in_plane_bending_ratio: 0.3,
      out_of_plane_bending_ratio: 0.2,
    });
    const part = (load: TableLoad) => cornerByTable(load, 3, 1.5, 5, 40);
    expect(form.k(size).c).toBeCloseTo(part('tension').c + 0.3 * part('in_plane').c + 0.2 * part('out_of_plane').c, 12);
    expect(form.k(size).a).toBeCloseTo(
      part('tension').a! + 0.3 * part('in_plane').a! + 0.2 * part('out_of_plane').a!,
      12,
    );
    expect(form.through!.k({ c_mm: 3 }).c).toBeCloseTo(
      1.1 * crackForm({ shape: 'edge_through', ...plate, bending_ratio: 0 }).k({ c_mm: 3 }).c +
        crackForm({ shape: 'edge_through', ...plate, bending_ratio: 0.3 }).k({ c_mm: 3 }).c -
        crackForm({ shape: 'edge_through', ...plate, bending_ratio: 0 }).k({ c_mm: 3 }).c,
      12,
    );
  });
});

it('the curve through points meets them, never leaves its neighbours, and is exact for a straight line', () => {
  const points = fc.array(fc.tuple(evenly(0.01, 2), evenly(-5, 5)), {
    minLength: 2,
    maxLength: 9,
  });
  fc.assert(
    fc.property(points, evenly(0, 1), (steps, share) => {
      let at = 0;
      const xs = steps.map(([h]) => (at += h));
      const ys = steps.map(([, y]) => y);
      for (let i = 0; i + 1 < xs.length; i++) {
        const x = xs[i]! + share * (xs[i + 1]! - xs[i]!);
        const [low, high] = [Math.min(ys[i]!, ys[i + 1]!), Math.max(ys[i]!, ys[i + 1]!)];
        const y = hermite(xs, ys)(x);
        expect(y).toBeGreaterThanOrEqual(low - 1e-9);
        expect(y).toBeLessThanOrEqual(high + 1e-9);
        expect(hermite(xs, ys)(xs[i]!)).toBeCloseTo(ys[i]!, 9);
        expect(
          hermite(
            xs,
            xs.map((v) => 3 - 2 * v),
          )(x),
        ).toBeCloseTo(3 - 2 * x, 9);
      }
    }),
  );
  expect(C_OVER_W).toHaveLength(6);
});
