import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Geometry } from '../document.ts';
import type { CrackSize } from '../model.ts';
import { angle } from './ellipse.ts';
import { surfaceInBore } from './hole-bore.ts';
import { cornerAtHole, cornerBending } from './hole-corner.ts';
import { cornerHandbook } from './hole-corner-bearing.ts';
import { oneAtHole } from './hole-through.ts';
import { crackForm } from './index.ts';
import { cornerInPlate } from './plate-corner.ts';
import { surfaceBending, surfaceInPlate } from './plate-surface.ts';
import { EVERY_GEOMETRY, evenly, someSize } from './testing/geometries.ts';

const inside = (g: Geometry, run: (size: CrackSize, form: ReturnType<typeof crackForm>) => void) => {
  const form = crackForm(g);
  let held = 0;
  fc.assert(
    fc.property(someSize, (size) => {
      if (form.outside(size) !== null) return;
      held++;
      run(size, form);
    }),
  );
  expect(held).toBeGreaterThan(20);
};
const near = (x: number, y: number, relative: number) => expect(Math.abs(x / y - 1)).toBeLessThanOrEqual(relative);

describe.each(EVERY_GEOMETRY)('$shape $cracks', (g) => {
  it('lengths scale: everything four times as long makes K twice', () => {
    const scaled = Object.fromEntries(
      Object.entries(g).map(([key, v]) => [key, key.endsWith('_mm') && typeof v === 'number' ? 4 * v : v]),
    ) as Geometry;
    const bigger =
      scaled.shape === 'own_table'
        ? { ...scaled, points: scaled.points.map((p) => ({ ...p, c_mm: 4 * p.c_mm })) }
        : scaled;
    const large = crackForm(bigger);
    inside(g, (size, form) => {
      const [k, k4] = [form.k(size), large.k({ c_mm: 4 * size.c_mm, a_mm: size.a_mm && 4 * size.a_mm })];
      near(k4.c, 2 * k.c, 1e-9);
      if (k.a !== null) near(k4.a!, 2 * k.a, 1e-9);
      expect(large.net({ c_mm: 4 * size.c_mm, a_mm: size.a_mm && 4 * size.a_mm })).toBeCloseTo(form.net(size), 12);
    });
  });
  it('K is a positive number at every tip, and only as many tips as it says', () =>
    inside(g, (size, form) => {
      const k = form.k(size);
      expect(k.c).toBeGreaterThan(0);
      expect(Number.isFinite(k.c)).toBe(true);
      expect(k.a === null).toBe(form.tips === 1);
      if (k.a !== null) expect(k.a > 0 && Number.isFinite(k.a)).toBe(true);
    }));
  it('what is outside is refused, what is inside is not', () => {
    const form = crackForm(g);
    const any = fc.record({
      c_mm: evenly(-1, 100),
      a_mm: evenly(-1, 10),
    });
    fc.assert(
      fc.property(any, (size) => {
        const why = form.outside(size);
        if (why === null) expect(form.k(size).c).toBeGreaterThan(0);
        else expect(() => form.k(size)).toThrow(why);
      }),
    );
    expect(form.outside({ c_mm: form.longest_c_mm * 1.01, a_mm: Math.min(3.9, form.longest_c_mm / 2) })).not.toBeNull();
  });
  it('a longer crack leaves less net section', () =>
    inside(g, (size, form) => {
      expect(form.net({ ...size, c_mm: 1.1 * size.c_mm })).toBeLessThan(form.net(size));
      expect(form.net(size)).toBeLessThan(1);
    }));
  it('each tip is fed by the remote stress and its other loads in proportion', () => {
    const shares = ['bearing_ratio', 'bending_ratio', 'in_plane_bending_ratio', 'out_of_plane_bending_ratio'];
    const share = shares.find((s) => s in g);
    if (!share) return;
    const of = (x: number) => crackForm({ ...g, [share]: x } as Geometry);
    const [none, one, two] = [of(0), of(0.05), of(0.1)];
    fc.assert(
      fc.property(someSize, (size) => {
        if ([none, one, two].some((f) => f.outside(size) !== null)) return;
        const [k0, k1, k2] = [none.k(size), one.k(size), two.k(size)];
        near(k2.c - k1.c, k1.c - k0.c, 1e-6);
        if (k0.a !== null) near(k2.a! - k1.a!, k1.a! - k0.a, 1e-6);
      }),
    );
  });
  it('goes on as a through crack of the same body', () => {
    const form = crackForm(g);
    expect(form.through === null).toBe(form.tips === 1);
    if (!form.through) return;
    expect(form.through.tips).toBe(1);
    expect(form.through.thickness_mm).toBe(form.thickness_mm);
    const c_mm = 0.5 * Math.min(form.longest_c_mm, 4);
    expect(form.through.outside({ c_mm })).toBeNull();
    expect(form.through.net({ c_mm })).toBeLessThan(form.net({ c_mm, a_mm: form.deepest_a_mm! / 2 }));
  });
  it('one boundary more multiplies K and the K of the crack that goes on', () => {
    const form = crackForm(g);
    const more = crackForm(g, [{ name: 'stiffener', value: 0.8, from: { source: 'made up', known: 'invented' } }]);
    inside(g, (size) => near(more.k(size).c, 0.8 * form.k(size).c, 1e-12));
    if (form.through) near(more.through!.k({ c_mm: 3 }).c, 0.8 * form.through.k({ c_mm: 3 }).c, 1e-12);
  });
});

/** USAF Damage Tolerant Design Handbook, section 11.3: plate bending of a centre or edge crack, F1 = F0/2. */
it('bending out of the plane after the break-through: half in a plate, in full at a hole', () => {
  const plate = { width_mm: 60, thickness_mm: 4 };
  const k = (g: Geometry) => crackForm(g).through!.k({ c_mm: 5 }).c;
  const surface = (bending_ratio: number) => k({ shape: 'plate_surface', ...plate, bending_ratio });
  near(surface(0.4), 1.2 * surface(0), 1e-12);
  const hole = (bending_ratio: number) =>
    k({ shape: 'hole_corner', ...plate, diameter_mm: 6, cracks: 1, bending_ratio });
  near(hole(0.4), 1.4 * hole(0), 1e-12);
  const corner = (out_of_plane_bending_ratio: number) =>
    k({ shape: 'plate_corner_table', ...plate, in_plane_bending_ratio: 0, out_of_plane_bending_ratio });
  near(corner(0.4), 1.2 * corner(0), 1e-12);
});

describe('one crack and two', () => {
  const plate = { width_mm: 60, diameter_mm: 6, thickness_mm: 4 };
  it('one through crack stays below two', () => {
    const of = (cracks: 1 | 2) => crackForm({ shape: 'hole_through', ...plate, cracks, bearing_ratio: 0 });
    const [one, two] = [of(1), of(2)];
    fc.assert(
      // From c/R 0.02 to 0.34 the two printed fits cross, by 2.7 % at most.
      fc.property(evenly(1.05, 20), (c_mm) => {
        expect(one.k({ c_mm }).c).toBeLessThan(two.k({ c_mm }).c);
      }),
    );
  });
  it('one corner crack and one crack in the bore stay below two', () => {
    for (const shape of ['hole_corner', 'hole_bore'] as const) {
      const of = (cracks: 1 | 2) => crackForm({ shape, ...plate, cracks, bending_ratio: 0 } as Geometry);
      const [one, two] = [of(1), of(2)];
      let held = 0;
      fc.assert(
        fc.property(someSize, (size) => {
          if (one.outside(size) !== null || two.outside(size) !== null) return;
          held++;
          expect(one.k(size).c).toBeLessThan(two.k(size).c);
          expect(one.k(size).a!).toBeLessThan(two.k(size).a!);
        }),
      );
      expect(held).toBeGreaterThan(20);
    }
  });
});

describe('nothing jumps where depth and length change places', () => {
  const [below, above] = [1 - 1e-9, 1 + 1e-9];
  const bore = { r: 3, b: 60, t: 4, n: 1 as const };
  const site = { d: 6, b: 30, w: 120, t: 4 };
  const all: Record<string, (c: number, a: number, phi: number) => number> = {
    'corner at a hole': (c, a, phi) => cornerAtHole(bore, angle(phi))(c, a),
    'in the bore': (c, a, phi) => surfaceInBore(bore, angle(phi))(c, a),
    'corner at a hole, handbook, bearing': (c, a, phi) => cornerHandbook(site, angle(phi), 2)(c, a),
    'surface of a plate': (c, a, phi) => surfaceInPlate(4, 60, angle(phi))(c, a),
    'corner of a plate': (c, a, phi) => cornerInPlate(4, 60, angle(phi))(c, a),
    'bending at a hole': (c, a, phi) => 1 + 0.3 * cornerBending(4, angle(phi))(c, a),
    'bending of a surface crack': (c, a, phi) => 1 + 0.3 * surfaceBending(4, angle(phi))(c, a),
  };
  it.each(Object.entries(all))('%s', (what, k) => {
    for (const a of [0.4, 1.6, 3.2, 3.9])
      for (const phi of [10, 45, 80]) {
        // The two sides differ in their last printed digits: 0.2017 against 0.2, −0.1061 against −0.11; in bending 4.45 against 4.51.
        near(k(a, a * above, phi), k(a, a * below, phi), what.startsWith('bending at a hole') ? 0.02 : 0.005);
      }
  });
});

describe('limits', () => {
  it('one crack at a hole tends to the crack of length D + c, alone', () => {
    expect(oneAtHole(0)).toBeCloseTo(Math.SQRT1_2, 3);
  });
  it('a small corner at a hole sees the stress of the hole’s edge, three times the remote one', () => {
    for (const a of [0.8, 1.2, 2]) {
      const hole = cornerAtHole({ r: 1e4, b: 1e7, t: 4, n: 1 }, angle(45))(a, a);
      near(hole / cornerInPlate(4, 1e7, angle(45))(a, a), 3, 0.03);
    }
  });
  it('plates so wide that the edges are far away: the width does not matter', () => {
    for (const g of EVERY_GEOMETRY) {
      if (g.shape === 'own_table' || g.shape === 'lug_through' || g.shape === 'hole_near_edge') continue;
      const wide = (width_mm: number) =>
        crackForm({ ...g, width_mm, ...('edge_distance_mm' in g ? { edge_distance_mm: width_mm / 2 } : {}) });
      const size = { c_mm: 2, a_mm: 1.5 };
      near(wide(9000).k(size).c, wide(9900).k(size).c, 1e-3);
    }
  });
  it('the handbook’s corner crack without bearing is Newman and Raju’s one crack, within 8 %', () => {
    for (const x of [0.6, 1, 1.4])
      for (const v of [0.2, 0.5, 0.8])
        for (const phi of [10, 80]) {
          const a = 4 * v;
          const one = cornerAtHole({ r: 3, b: 60, t: 4, n: 1 }, angle(phi))(a / x, a);
          near(cornerHandbook({ d: 6, b: 60, w: 120, t: 4 }, angle(phi), 0)(a / x, a), one, 0.08);
        }
  });
  it('near edge and lug agree with the through crack in the middle where they are the same', () => {
    const plate = { width_mm: 120, diameter_mm: 6, thickness_mm: 4 };
    const middle = crackForm({ shape: 'hole_through', ...plate, cracks: 1, bearing_ratio: 0 });
    const edge = crackForm({ shape: 'hole_near_edge', ...plate, edge_distance_mm: 60, bearing_ratio: 0 });
    const closer = crackForm({ shape: 'hole_near_edge', ...plate, edge_distance_mm: 9, bearing_ratio: 0 });
    for (const c_mm of [1, 5, 20]) near(edge.k({ c_mm }).c, middle.k({ c_mm }).c, 0.03);
    expect(closer.k({ c_mm: 4 }).c).toBeGreaterThan(middle.k({ c_mm: 4 }).c);
  });
  it('own table: its own points, straight between them', () => {
    const form = crackForm(EVERY_GEOMETRY.at(-1)!);
    const root = (c: number) => Math.sqrt((Math.PI * c) / 1000);
    expect(form.k({ c_mm: 3 }).c).toBeCloseTo(1.6 * root(3), 12);
    expect(form.k({ c_mm: 1.6 }).c).toBeCloseTo(2.2 * root(1.6), 12);
    expect(form.k({ c_mm: 25 }).c).toBeCloseTo(2.4 * root(25), 12);
  });
});
