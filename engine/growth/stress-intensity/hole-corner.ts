import type { Geometry } from '../document.ts';
import { type Angle, aloneEllipse, angle, frontFactor, rootOverShape, surfaceSeries } from './ellipse.ts';
import { demandHole, holeThrough } from './hole-through.ts';
import { fits, type Limit, range } from './limit.ts';
import { polynomial, secant } from './numbers.ts';
import { type Solution, scaled } from './solution.ts';
import { NEWMAN_RAJU, NEWMAN_RAJU_RANGE, WIDTH_RANGE } from './sources.ts';

/** Holes: c grows with K at 10°, a with K at 80°; at the free surfaces themselves the singularity is another. */
export const C_TIP = angle(10);
export const A_TIP = angle(80);

/** A hole of radius r in the middle of a plate of half width b; t the thickness that a is measured against; n cracks. */
export interface Bore {
  readonly r: number;
  readonly b: number;
  readonly t: number;
  readonly n: 1 | 2;
}

/** K per stress of a crack of length c and depth a, √m, at one point of its front. */
export type AtPoint = (c: number, a: number) => number;

/** g₂: the stress that falls off from the hole, λ = 1/(1 + (c/r) cos μφ). */
export function fallOff(r: number, mu: number, denominator: number, at: Angle): (c: number) => number {
  const slant = Math.cos(mu * at.radians) / r;
  return (c) => {
    const l = 1 / (1 + c * slant);
    return polynomial(l, 1, 0.358, 1.425, -1.578, 2.156) / (1 + denominator * l * l);
  };
}
/** Finite width, n cracks. */
export function boreWidth({ r, b, n }: Bore): (c: number, v: number) => number {
  const hole = secant((Math.PI * r) / (2 * b));
  return (c, v) => Math.sqrt(hole * secant(((Math.PI * (2 * r + n * c)) / (4 * (b - c) + 2 * n * c)) * Math.sqrt(v)));
}
/** From two cracks, for which the solutions are made, to one. */
export const fewer = (c: number, a: number, { r, t, n }: Bore): number => {
  if (n === 2) return 1;
  const share = (a * c) / (t * r);
  return Math.sqrt((4 / Math.PI + share / 2) / (4 / Math.PI + share));
};

/** g₁, g₃, g₄ of a corner crack at a hole: front surface, bore, depth. */
export function cornerFactors(t: number, at: Angle): AtPoint {
  const s = (1 - at.sin) * (1 - at.sin);
  const bent = 1 + 0.1 * (1 - at.cos) * (1 - at.cos);
  return (c, a) => {
    const v = a / t;
    const bore = bent * (0.85 + 0.15 * Math.sqrt(Math.sqrt(v)));
    if (a <= c) {
      const x = a / c;
      return (1 + (0.1 + 0.35 * v * v) * s) * (1 + 0.04 * x) * bore * (1 - 0.7 * (1 - v) * (x - 0.2) * (1 - x));
    }
    const y = c / a;
    return (1 + (0.1 + 0.35 * y * v * v) * s) * (1.13 - 0.09 * y) * bore;
  };
}

/**
 * K per stress of quarter-ellipse corner cracks at a hole, at one point of the front: c along the surface, a along the bore.
 * @see Newman and Raju by AE 737 lecture 2
 */
export function cornerAtHole(bore: Bore, at: Angle): AtPoint {
  const [falls, width, factors] = [fallOff(bore.r, 0.85, 0.13, at), boreWidth(bore), cornerFactors(bore.t, at)];
  return (c, a) => {
    const v = a / bore.t;
    const series = surfaceSeries(c, a, v * v);
    const front = factors(c, a) * frontFactor(c, a, at);
    return rootOverShape(c, a) * series * front * falls(c) * width(c, v) * fewer(c, a, bore);
  };
}

/** H: what bending at the outer fibre makes of K, as a share of the same stress in tension. */
export function cornerBending(t: number, at: Angle): AtPoint {
  const logSin = Math.log(at.sin);
  const between = (p: number, h1: number, h2: number) => h1 + (h2 - h1) * Math.exp(p * logSin);
  return (c, a) => {
    const v = a / t;
    if (a <= c) {
      const x = a / c;
      const h1 = polynomial(
        v,
        1,
        polynomial(x, -0.43, -0.74, -0.84),
        polynomial(x, 1.25, -1.19, 4.39),
        polynomial(x, -1.94, 4.22, -5.51),
      );
      const h2 = polynomial(
        v,
        1,
        polynomial(x, -1.5, -0.04, -1.73),
        polynomial(x, 1.71, -3.17, 6.84),
        polynomial(x, -1.28, 2.71, -5.22),
      );
      return between(0.1 + 1.3 * v + 1.1 * x - 0.7 * x * v, h1, h2);
    }
    const y = c / a;
    const h1 = polynomial(v, 1, -2.07 + 0.06 * y, 4.35 + 0.16 * y, -2.93 - 0.3 * y);
    const h2 = polynomial(v, 1, -3.64 + 0.37 * y, 5.87 - 0.49 * y, -4.32 + 0.53 * y);
    return between(0.2 + y + 0.6 * v, h1, h2);
  };
}

/** What Newman and Raju's solutions at a hole ask of a crack; `thickness` in words, where it is a part of it. */
export function boreLimits(bore: Bore, thickness = 'the thickness'): Limit[] {
  const { r, b, t, n } = bore;
  return [
    fits('the depth a', (_, a) => a, t, thickness),
    fits('the length c', (c) => c, b - r, 'the ligament between hole and edge'),
    range('depth over length, a/c,', (c, a) => a / c, [0.2, 2], NEWMAN_RAJU_RANGE),
    range(`radius of the hole over ${thickness}, r/t,`, () => r / t, [0.5, 2], NEWMAN_RAJU_RANGE),
    range('hole and cracks over half the width, (r + n c)/b,', (c) => (r + n * c) / b, [0, 0.5], WIDTH_RANGE),
  ];
}
/** Longest c that those limits leave. */
export const boreLongest = ({ r, b, n }: Bore): number => Math.max(0, (0.5 * b - r) / n);

/**
 * One or two corner cracks at a hole in the middle of a plate, tension with plate bending of a stated share.
 *
 * Through the thickness it goes on as a through crack of length c. Bending then counts in full as tension: no factor is
 * published for the through crack at a hole, and this lies above it.
 *
 * Not valid outside a/c 0.2 to 2, r/t 0.5 to 2, (r + n c)/b up to 0.5 (from memory).
 * @throws Refusal `growth.geometry-impossible` for a hole larger than the plate
 */
export function holeCorner(g: Extract<Geometry, { shape: 'hole_corner' }>): Solution {
  const { width_mm, diameter_mm, thickness_mm, cracks, bending_ratio } = g;
  demandHole(width_mm, diameter_mm);
  const bore: Bore = { r: diameter_mm / 2, b: width_mm / 2, t: thickness_mm, n: cracks };
  const at = (tip: Angle): AtPoint => {
    const [tension, bent] = [cornerAtHole(bore, tip), cornerBending(thickness_mm, tip)];
    return bending_ratio ? (c, a) => tension(c, a) * (1 + bending_ratio * bent(c, a)) : tension;
  };
  const [kc, ka] = [at(C_TIP), at(A_TIP)];
  const through = holeThrough({ shape: 'hole_through', width_mm, diameter_mm, thickness_mm, cracks, bearing_ratio: 0 });
  return {
    shape: g.shape,
    thickness_mm,
    deepest_a_mm: thickness_mm,
    longest_c_mm: boreLongest(bore),
    limits: boreLimits(bore),
    k: (c, a) => ({ c: kc(c, a), a: ka(c, a) }),
    alone: aloneEllipse(C_TIP, A_TIP),
    net: (c, a) => 1 - diameter_mm / width_mm - (cracks * Math.PI * a * c) / (4 * width_mm * thickness_mm),
    through: scaled(through, 1 + bending_ratio),
    from: NEWMAN_RAJU,
  };
}
