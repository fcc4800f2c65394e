import type { Geometry } from '../document.ts';
import { demand, fits, range } from './limit.ts';
import { polynomial, raised, rootPi, secant } from './numbers.ts';
import { aloneThrough, type Solution } from './solution.ts';
import { HOLE_THROUGH } from './sources.ts';
import { superposed } from './superposition.ts';

/** Two cracks in an infinite plate, x = c/R. Has a pole far out: not beyond x = 30. */
export const twoAtHole = (x: number): number => (3.404 + 3.8172 * x) / (1 + 3.9273 * x - 0.00695 * x * x);
/** One crack in an infinite plate, z = 1/(1 + c/R). */
// biome-ignore lint/suspicious/noApproximativeNumericConstant: as printed
export const oneAtHole = (z: number): number => polynomial(z, 0.7071, 0.7548, 0.3415, 0.642, 0.9196);
/** Bearing stress, two cracks. */
const bearingTwo = (x: number): number => 0.098 + 0.3592 * Math.exp(-3.5089 * x) + 0.3817 * Math.exp(-0.5515 * x);
/** Bearing stress, one crack; falls below zero at x = 2.964, where it has stopped meaning anything. */
const bearingOne = (x: number): number => 0.958 + 0.2561 * x - 0.00193 * x * x * Math.sqrt(x) - 0.9804 * Math.sqrt(x);
const BEARING_ONE_LONGEST = 2.96;
const LONGEST = 30;
/** Nearer to the edge than this share of the ligament the factors run away. */
const LIGAMENT = 0.98;

/** Finite width, two cracks. */
function widthTwo(c: number, r: number, width: number): number {
  const q = width / (2 * r);
  const power = q < 2 ? q + 2.5 : 4.5;
  const share = raised(1.32 * q - 0.14, -(0.98 + raised(0.1 * q, 0.1))) - 0.02;
  const near = 1 - share * raised((2 * c) / (width - 2 * r), power);
  return Math.sqrt(secant((Math.PI * r) / width) * secant((Math.PI * (r + c)) / width)) * near;
}
/** Finite width, one crack. */
function widthOne(c: number, r: number, width: number): number {
  const q = width / (2 * r);
  const n = Math.max(2.275, 2.65 - 0.24 * (2.75 - q) ** 2);
  const near = 1 - raised(n, -q) * raised((2 * c) / (width - 2 * r), q + 0.5);
  return Math.sqrt(secant((Math.PI * r) / width) * secant((Math.PI * (r + c / 2)) / (width - c))) * near;
}

/**
 * One or two through cracks of length c at a hole in the middle of a plate, remote and bearing stress superposed.
 *
 * Not valid within 2 % of the ligament from the edge, beyond c/R = 30 (two cracks), and with bearing on one crack
 * beyond c/R = 2.96, where its bearing factor changes sign.
 *
 * @see AE 737 lecture 2
 */
export function holeThrough(g: Extract<Geometry, { shape: 'hole_through' }>): Solution {
  const { width_mm: width, diameter_mm: diameter, thickness_mm, cracks } = g;
  demandHole(width, diameter);
  const r = diameter / 2;
  const two = cracks === 2;
  const edge = two ? widthTwo : widthOne;
  const remote = two ? twoAtHole : (x: number) => oneAtHole(1 / (1 + x));
  const bearing = two ? bearingTwo : bearingOne;
  const ligament = (width - diameter) / 2;
  const radii = two ? LONGEST : g.bearing_ratio > 0 ? BEARING_ONE_LONGEST : Infinity;
  return {
    shape: g.shape,
    thickness_mm,
    deepest_a_mm: null,
    longest_c_mm: Math.min(LIGAMENT * ligament, radii * r),
    limits: [
      fits('the length c', (c) => c, ligament, 'the ligament between hole and edge'),
      range('length over the ligament', (c) => c / ligament, [0, LIGAMENT], HOLE_THROUGH),
      ...(radii < Infinity
        ? [range('length over the radius of the hole, c/R,', (c) => c / r, [0, radii], HOLE_THROUGH)]
        : []),
    ],
    k: superposed([
      { share: 1, k: (c) => ({ c: rootPi(c) * remote(c / r) * edge(c, r, width), a: null }) },
      { share: g.bearing_ratio, k: (c) => ({ c: rootPi(c) * bearing(c / r) * edge(c, r, width), a: null }) },
    ]),
    alone: aloneThrough,
    net: (c) => 1 - (diameter + cracks * c) / width,
    through: null,
    from: HOLE_THROUGH,
  };
}

/** @throws Refusal `growth.geometry-impossible` for a hole that the plate does not hold */
export function demandHole(width: number, diameter: number): void {
  demand(
    diameter < width,
    `a hole of ${diameter} mm in a plate ${width} mm wide`,
    'the hole is smaller than the whole width',
  );
}
