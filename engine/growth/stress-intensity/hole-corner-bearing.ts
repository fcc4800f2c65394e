import type { Geometry } from '../document.ts';
import { type Angle, aloneEllipse, frontFactor, rootOverShape, surfaceSeries } from './ellipse.ts';
import { A_TIP, type AtPoint, C_TIP, cornerFactors } from './hole-corner.ts';
import { bearingHandbook, demandEdge, holeNearEdge } from './hole-near-edge.ts';
import { demandHole, oneAtHole } from './hole-through.ts';
import { fits, range } from './limit.ts';
import { secant } from './numbers.ts';
import type { Solution } from './solution.ts';
import { CORNER_HANDBOOK, NEWMAN_RAJU_RANGE } from './sources.ts';

const LIGAMENT = 0.98;

/** Plate, hole and near edge: hole D, its centre B from the near edge, width W, thickness t. */
export interface Site {
  readonly d: number;
  readonly b: number;
  readonly w: number;
  readonly t: number;
}

/** K per stress of one corner crack at a hole, handbook form: remote stress with bearing of a share of it. */
export function cornerHandbook(s: Site, at: Angle, bearing_ratio: number): AtPoint {
  const radii = s.d / 2;
  const slant0 = Math.cos(0.85 * at.radians) / radii;
  const pin = Math.sqrt((s.w + s.d) / (s.w - s.d));
  const hole = secant((Math.PI * s.d) / (2 * s.w));
  const factors = cornerFactors(s.t, at);
  return (c, a) => {
    const v = a / s.t;
    const z0 = 1 / (1 + c * slant0);
    const falls = 1 + 0.13 * z0 * z0;
    const g0 = oneAtHole(z0) / falls;
    const width = Math.sqrt(hole * secant(((Math.PI / 2) * Math.sqrt(v) * (s.d + c)) / (2 * s.b - c)));
    const front = factors(c, a) * frontFactor(c, a, at);
    const gw = rootOverShape(c, a) * surfaceSeries(c, a, v * v) * front * width;
    if (bearing_ratio === 0) return g0 * gw;
    const z1 = 1 / (1 + (c / radii) * Math.cos((0.85 - 0.25 * Math.sqrt(Math.sqrt(v))) * at.radians));
    const g1 = (bearingHandbook(z1) * pin) / falls;
    return (g0 + bearing_ratio * ((g0 * s.d) / (2 * s.w) + g1)) * gw;
  };
}

/**
 * One corner crack at a hole by the handbook: remote and bearing stress, the hole off the middle. Its factor of a long
 * crack tends to that of one crack, so nothing more is taken off for one. It goes on as the through crack near an edge.
 * Not valid outside a/c 0.2 to 2 and r/t 0.5 to 2, as Newman and Raju's crack, whose series it takes, nor within 2 % of
 * the ligament from the edge; the handbook prints no range.
 */
export function holeCornerBearing(g: Extract<Geometry, { shape: 'hole_corner_bearing' }>): Solution {
  const { width_mm, diameter_mm, thickness_mm, bearing_ratio } = g;
  const edge_distance_mm = g.edge_distance_mm ?? width_mm / 2;
  demandHole(width_mm, diameter_mm);
  demandEdge(width_mm, diameter_mm, edge_distance_mm);
  const site: Site = { d: diameter_mm, b: edge_distance_mm, w: width_mm, t: thickness_mm };
  const r = diameter_mm / 2;
  const ligament = edge_distance_mm - r;
  const [kc, ka] = [cornerHandbook(site, C_TIP, bearing_ratio), cornerHandbook(site, A_TIP, bearing_ratio)];
  return {
    shape: g.shape,
    thickness_mm,
    deepest_a_mm: thickness_mm,
    longest_c_mm: LIGAMENT * ligament,
    limits: [
      fits('the depth a', (_, a) => a, thickness_mm, 'the thickness'),
      fits('the length c', (c) => c, ligament, 'the ligament between hole and near edge'),
      range('depth over length, a/c,', (c, a) => a / c, [0.2, 2], NEWMAN_RAJU_RANGE),
      range('radius of the hole over the thickness, r/t,', () => r / thickness_mm, [0.5, 2], NEWMAN_RAJU_RANGE),
      range('length over the ligament', (c) => c / ligament, [0, LIGAMENT], CORNER_HANDBOOK),
    ],
    k: (c, a) => ({ c: kc(c, a), a: ka(c, a) }),
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
