import type { Geometry } from '../document.ts';
import { edgeThrough } from './edge-through.ts';
import { type Angle, aloneEllipse, frontFactor, rootOverShape } from './ellipse.ts';
import type { AtPoint } from './hole-corner.ts';
import { fits, range } from './limit.ts';
import { polynomial } from './numbers.ts';
import { PLATE_A_TIP, PLATE_C_TIP } from './plate-surface.ts';
import type { Solution } from './solution.ts';
import { NEWMAN_RAJU, PLATE_CORNER, WIDTH_RANGE } from './sources.ts';

function series(c: number, a: number, v2: number): number {
  if (a <= c) {
    const x = a / c;
    const left = 1 - x;
    const left5 = left * left * left * left * left;
    const m3 = -0.5 + 0.25 * x + 14.8 * left5 * left5 * left5;
    return 1.08 - 0.03 * x + (-0.44 + 1.06 / (0.3 + x)) * v2 + m3 * v2 * v2;
  }
  const y = c / a;
  return Math.sqrt(y) * (1.08 - 0.03 * y) + 0.375 * y * y * v2 - 0.25 * y * y * v2 * v2;
}

/**
 * K per stress of a quarter ellipse at the corner of a plate of whole width w: c along the face, a along the edge.
 * The width of this equation is the whole one: its polynomial is that of the edge crack divided by 1.122.
 */
export function cornerInPlate(t: number, w: number, at: Angle): AtPoint {
  const [s, s2] = [(1 - at.sin) ** 3, (1 - at.cos) ** 3];
  return (c, a) => {
    const v = a / t;
    const depth = a <= c ? v * v : (c / t) * (c / t);
    const front = (1 + (0.08 + 0.4 * depth) * s) * (1 + (0.08 + 0.15 * depth) * s2) * frontFactor(c, a, at);
    const width = polynomial((c / w) * Math.sqrt(v), 1, -0.2, 9.4, -19.4, 27.1);
    return rootOverShape(c, a) * series(c, a, v * v) * front * width;
  };
}

/**
 * Quarter ellipse at a plate's edge under tension, closed form; goes on as an edge crack of length c.
 * Two of its numbers are from memory, see the source. Not valid outside a/c 0.2 to 2 and beyond c/W = 0.5 (from memory).
 */
export function plateCorner(g: Extract<Geometry, { shape: 'plate_corner' }>): Solution {
  const { width_mm: w, thickness_mm: t } = g;
  const [kc, ka] = [cornerInPlate(t, w, PLATE_C_TIP), cornerInPlate(t, w, PLATE_A_TIP)];
  return {
    shape: g.shape,
    thickness_mm: t,
    deepest_a_mm: t,
    longest_c_mm: 0.5 * w,
    limits: [
      fits('the depth a', (_, a) => a, t, 'the thickness'),
      fits('the length c', (c) => c, w, 'the width'),
      range('depth over length, a/c,', (c, a) => a / c, [0.2, 2], NEWMAN_RAJU),
      range('length over width, c/W,', (c) => c / w, [0, 0.5], WIDTH_RANGE),
    ],
    k: (c, a) => ({ c: kc(c, a), a: ka(c, a) }),
    alone: aloneEllipse(PLATE_C_TIP, PLATE_A_TIP),
    net: (c, a) => 1 - (Math.PI * a * c) / (4 * w * t),
    through: edgeThrough({ shape: 'edge_through', width_mm: w, thickness_mm: t, bending_ratio: 0 }),
    from: PLATE_CORNER,
  };
}
