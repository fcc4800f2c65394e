import type { Geometry } from '../document.ts';
import { demandHole, oneAtHole } from './hole-through.ts';
import { demand, fits, range } from './limit.ts';
import { polynomial, rootPi, secant } from './numbers.ts';
import { aloneThrough, type Solution } from './solution.ts';
import { NEAR_EDGE } from './sources.ts';
import { superposed } from './superposition.ts';

/** Bearing part of one crack in an infinite plate, z = 1/(1 + 2c/D). */
export const bearingHandbook = (z: number): number => z * polynomial(z, 0.078, 0.7588, -0.4293, 0.0644, 0.651);
/** Nearer to the edge than this share of the ligament the factor runs away. */
const LIGAMENT = 0.98;

/** Gw: near edge and hole off the middle. `b` is the distance of the hole's centre from the near edge. */
function edgeAndWidth(c: number, diameter: number, b: number, width: number): number {
  const off = diameter / b - (2 * diameter) / width;
  const shift = off > 0 ? Math.sin(off) / off : 1;
  return Math.sqrt(secant(((Math.PI / 2) * (diameter + c)) / (2 * b - c)) * shift);
}

/** @throws Refusal `growth.geometry-impossible` */
export function demandEdge(width: number, diameter: number, b: number): void {
  demandHole(width, diameter);
  const given = `a hole of ${diameter} mm with its centre ${b} mm from the edge of a plate ${width} mm wide`;
  demand(b > diameter / 2, given, 'the hole lies inside the edge');
  demand(b <= width / 2, given, 'the near edge is at most half the width away');
}

/**
 * One through crack of length c at a hole off the middle, growing to the near edge; remote and bearing stress.
 * K₀ = f₀ Gw σ √(πc) and K₃ = (f₀ D/2W + f₁) Gw σ_bearing √(πc).
 * Not valid within 2 % of the ligament from the edge.
 */
export function holeNearEdge(g: Extract<Geometry, { shape: 'hole_near_edge' }>): Solution {
  const { width_mm: width, diameter_mm: diameter, edge_distance_mm: b, thickness_mm } = g;
  demandEdge(width, diameter, b);
  const ligament = b - diameter / 2;
  const z = (c: number) => 1 / (1 + (2 * c) / diameter);
  const gw = (c: number) => rootPi(c) * edgeAndWidth(c, diameter, b, width);
  const pin = (c: number) => (oneAtHole(z(c)) * diameter) / (2 * width) + bearingHandbook(z(c));
  return {
    shape: g.shape,
    thickness_mm,
    deepest_a_mm: null,
    longest_c_mm: LIGAMENT * ligament,
    limits: [
      fits('the length c', (c) => c, ligament, 'the ligament between hole and near edge'),
      range('length over the ligament', (c) => c / ligament, [0, LIGAMENT], NEAR_EDGE),
    ],
    k: superposed([
      { share: 1, k: (c) => ({ c: gw(c) * oneAtHole(z(c)), a: null }) },
      { share: g.bearing_ratio, k: (c) => ({ c: gw(c) * pin(c), a: null }) },
    ]),
    alone: aloneThrough,
    net: (c) => 1 - (diameter + c) / width,
    through: null,
    from: NEAR_EDGE,
  };
}
