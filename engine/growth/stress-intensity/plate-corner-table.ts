import type { Geometry } from '../document.ts';
import type { KPerStress } from '../model.ts';
import { type TableLoad, tableFactor } from './corner-table.ts';
import { edgeThrough } from './edge-through.ts';
import { aloneEllipse, angle } from './ellipse.ts';
import { fits, range } from './limit.ts';
import { type Solution, scaled } from './solution.ts';
import { CORNER_TABLE, THROUGH_BENDING } from './sources.ts';
import { superposed } from './superposition.ts';

/** The table holds the tips themselves. */
const [TIP_C, TIP_A] = [angle(0), angle(90)];
const alone = aloneEllipse(TIP_C, TIP_A);

/** K per stress by the table: K = fₓ f_φ f_a f σ √(πa), of which all but f is the ellipse alone. */
export function cornerByTable(load: TableLoad, c: number, a: number, t: number, w: number): KPerStress {
  const f = tableFactor(load, { ac: a / c, at: Math.min(1, a / t), cw: Math.min(1, c / w) });
  const k = alone(c, a);
  return { c: k.c * f.c, a: (k.a ?? 0) * f.a };
}

/**
 * Quarter ellipse at a plate's edge by the handbook's table; tension with bending in and out of the plane superposed.
 * Goes on as an edge crack of length c, out-of-plane bending at half the tension factor.
 * Not valid outside a/c 0.2 to 5. Good to about 1 to 3 % by its own repeated columns.
 */
export function plateCornerTable(g: Extract<Geometry, { shape: 'plate_corner_table' }>): Solution {
  const { width_mm: w, thickness_mm: t, in_plane_bending_ratio: inPlane, out_of_plane_bending_ratio: out } = g;
  const part = (load: TableLoad) => (c: number, a: number) => cornerByTable(load, c, a, t, w);
  const share = 1 + out / 2;
  const through = edgeThrough({
    shape: 'edge_through',
    width_mm: w,
    thickness_mm: t,
    bending_ratio: inPlane / share,
  });
  return {
    shape: g.shape,
    thickness_mm: t,
    deepest_a_mm: t,
    longest_c_mm: w,
    limits: [
      fits('the depth a', (_, a) => a, t, 'the thickness'),
      fits('the length c', (c) => c, w, 'the width'),
      range('depth over length, a/c,', (c, a) => a / c, [0.2, 5], CORNER_TABLE),
    ],
    k: superposed([
      { share: 1, k: part('tension') },
      { share: inPlane, k: part('in_plane') },
      { share: out, k: part('out_of_plane') },
    ]),
    alone,
    net: (c, a) => 1 - (Math.PI * a * c) / (4 * w * t),
    through: out ? { ...scaled(through, share), from: THROUGH_BENDING } : through,
    from: CORNER_TABLE,
  };
}
