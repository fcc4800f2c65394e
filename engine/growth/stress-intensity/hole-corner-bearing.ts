import type { Geometry } from '../document.ts';
import { type Angle, aloneEllipse, frontFactor, rootOverShape, surfaceSeries } from './ellipse.ts';
import { A_TIP, boreLimits, C_TIP, cornerFactors } from './hole-corner.ts';
import { bearingHandbook, demandEdge, holeNearEdge } from './hole-near-edge.ts';
import { demandHole, oneAtHole } from './hole-through.ts';
import { fits } from './limit.ts';
import { secant } from './numbers.ts';
import type { Solution } from './solution.ts';
import { CORNER_HANDBOOK } from './sources.ts';
import { superposed } from './superposition.ts';

/** Plate, hole and near edge: hole D, its centre B from the near edge, width W, thickness t. */
export interface Site {
  readonly d: number;
  readonly b: number;
  readonly w: number;
  readonly t: number;
}

/** Remote and bearing part of K per stress of one corner crack at a hole, handbook form. */
export function cornerHandbook(c: number, a: number, s: Site, at: Angle): { tension: number; bearing: number } {
  const v = a / s.t;
  const z = (mu: number) => 1 / (1 + ((2 * c) / s.d) * Math.cos((mu * at.degrees * Math.PI) / 180));
  const z0 = z(0.85);
  const falls = 1 + 0.13 * z0 * z0;
  const g0 = oneAtHole(z0) / falls;
  const pin = Math.sqrt((s.w + s.d) / (s.w - s.d));
  const g1 = (bearingHandbook(z(0.85 - 0.25 * Math.sqrt(Math.sqrt(v)))) * pin) / falls;
  const reach = ((Math.PI / 2) * Math.sqrt(v) * (s.d + c)) / (2 * s.b - c);
  const width = Math.sqrt(secant(reach) * secant((Math.PI * s.d) / (2 * s.w)));
  const gw =
    rootOverShape(c, a) * surfaceSeries(c, a, v * v) * cornerFactors(c, a, s.t, at) * frontFactor(c, a, at) * width;
  return { tension: g0 * gw, bearing: ((g0 * s.d) / (2 * s.w) + g1) * gw };
}

/**
 * One corner crack at a hole by the handbook: remote and bearing stress, the hole off the middle. Its factor of a long
 * crack tends to that of one crack, so nothing more is taken off for one. It goes on as the through crack near an edge.
 * Not valid outside the range of Newman and Raju's corner crack, whose series it takes.
 */
export function holeCornerBearing(g: Extract<Geometry, { shape: 'hole_corner_bearing' }>): Solution {
  const { width_mm, diameter_mm, thickness_mm, bearing_ratio } = g;
  const edge_distance_mm = g.edge_distance_mm ?? width_mm / 2;
  demandHole(width_mm, diameter_mm);
  demandEdge(width_mm, diameter_mm, edge_distance_mm);
  const site: Site = { d: diameter_mm, b: edge_distance_mm, w: width_mm, t: thickness_mm };
  const ligament = edge_distance_mm - diameter_mm / 2;
  const bore = { r: diameter_mm / 2, b: edge_distance_mm, t: thickness_mm, n: 1 as const };
  const part = (which: 'tension' | 'bearing') => (c: number, a: number) => ({
    c: cornerHandbook(c, a, site, C_TIP)[which],
    a: cornerHandbook(c, a, site, A_TIP)[which],
  });
  return {
    shape: g.shape,
    thickness_mm,
    deepest_a_mm: thickness_mm,
    longest_c_mm: 0.98 * ligament,
    limits: [
      fits('the length c', (c) => c, 0.98 * ligament, 'the ligament less 2 %'),
      ...boreLimits(bore).filter((l) => !l.allowed.includes('ligament')),
    ],
    k: superposed([
      { share: 1, k: part('tension') },
      { share: bearing_ratio, k: part('bearing') },
    ]),
    alone: aloneEllipse(C_TIP, A_TIP),
    net: (c, a) => 1 - diameter_mm / width_mm - (Math.PI * a * c) / (4 * width_mm * thickness_mm),
    through: holeNearEdge({
      shape: 'hole_near_edge',
      width_mm,
      diameter_mm,
      thickness_mm,
      edge_distance_mm,
      bearing_ratio,
    }),
    from: CORNER_HANDBOOK,
  };
}
