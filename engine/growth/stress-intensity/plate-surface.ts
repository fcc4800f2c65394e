import type { Geometry } from '../document.ts';
import { centreThrough } from './centre-through.ts';
import { type Angle, aloneEllipse, angle, frontFactor, rootOverShape, surfaceSeries } from './ellipse.ts';
import type { AtPoint } from './hole-corner.ts';
import { fits, range } from './limit.ts';
import { polynomial, raised, secant } from './numbers.ts';
import { type Solution, scaled } from './solution.ts';
import { NEWMAN_RAJU, SHALLOW_RANGE, SURFACE_BENDING, THROUGH_BENDING } from './sources.ts';

/** Plates: c grows with K at 10°, a with K at 90°. */
export const PLATE_C_TIP = angle(10);
export const PLATE_A_TIP = angle(90);

/** K per stress of a semi-ellipse at the surface of a plate of half width b: 2c long, a deep. */
export function surfaceInPlate(t: number, b: number, at: Angle): AtPoint {
  const s = (1 - at.sin) * (1 - at.sin);
  return (c, a) => {
    const v = a / t;
    const front = (1 + (0.1 + 0.35 * v * v * (a <= c ? 1 : c / a)) * s) * frontFactor(c, a, at);
    const width = Math.sqrt(secant(((Math.PI * c) / (2 * b)) * Math.sqrt(v)));
    return rootOverShape(c, a) * surfaceSeries(c, a, v * v) * front * width;
  };
}

/** H: bending at the outer fibre against the same stress in tension. From memory; both sides of a = c agree. */
export function surfaceBending(t: number, at: Angle): AtPoint {
  return (c, a) => {
    const v = a / t;
    const x = Math.min(a / c, c / a);
    const [x34, x32] = [raised(x, 0.75), x * Math.sqrt(x)];
    const deep = a > c;
    const h1 = deep
      ? polynomial(v, 1, -0.04 - 0.41 * x, 0.55 - 1.93 * x34 + 1.38 * x32)
      : polynomial(v, 1, -0.34 - 0.11 * x);
    const h2 = deep
      ? polynomial(v, 1, -2.11 + 0.77 * x, 0.55 - 0.72 * x34 + 0.14 * x32)
      : polynomial(v, 1, -1.22 - 0.12 * x, 0.55 - 1.05 * x34 + 0.47 * x32);
    return h1 + (h2 - h1) * raised(at.sin, 0.2 + x + 0.6 * v);
  };
}

/**
 * Semi-ellipse at a plate's surface, tension with plate bending of a stated share. It goes on as a centre crack of half
 * length c, whose bending factor is half of its tension factor. Not valid beyond a/c = 2, 2c/W = 0.5, and for long
 * shallow cracks beyond a/t = 1.25 (a/c + 0.6) (from memory).
 */
export function plateSurface(g: Extract<Geometry, { shape: 'plate_surface' }>): Solution {
  const { width_mm, thickness_mm: t, bending_ratio } = g;
  const b = width_mm / 2;
  const at = (tip: Angle): AtPoint => {
    const [tension, bent] = [surfaceInPlate(t, b, tip), surfaceBending(t, tip)];
    return bending_ratio ? (c, a) => tension(c, a) * (1 + bending_ratio * bent(c, a)) : tension;
  };
  const [kc, ka] = [at(PLATE_C_TIP), at(PLATE_A_TIP)];
  const through = centreThrough({ shape: 'centre_through', width_mm, thickness_mm: t });
  return {
    shape: g.shape,
    thickness_mm: t,
    deepest_a_mm: t,
    longest_c_mm: 0.5 * b,
    limits: [
      fits('the depth a', (_, a) => a, t, 'the thickness'),
      fits('the half length c', (c) => c, b, 'half the width'),
      range('depth over length, a/c,', (c, a) => a / c, [0, 2], NEWMAN_RAJU),
      range('length over width, 2c/W,', (c) => c / b, [0, 0.5], NEWMAN_RAJU),
      range(
        'depth over thickness, held against 1.25 (a/c + 0.6),',
        (c, a) => a / t / (1.25 * (a / c + 0.6)),
        [0, 1],
        SHALLOW_RANGE,
      ),
    ],
    k: (c, a) => ({ c: kc(c, a), a: ka(c, a) }),
    alone: aloneEllipse(PLATE_C_TIP, PLATE_A_TIP),
    net: (c, a) => 1 - (Math.PI * a * c) / (2 * width_mm * t),
    through: bending_ratio ? { ...scaled(through, 1 + bending_ratio / 2), from: THROUGH_BENDING } : through,
    from: bending_ratio ? SURFACE_BENDING : NEWMAN_RAJU,
  };
}
