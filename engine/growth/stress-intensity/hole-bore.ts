import type { Geometry } from '../document.ts';
import { type Angle, aloneEllipse, fourth, frontFactor, rootOverShape } from './ellipse.ts';
import {
  A_TIP,
  type AtPoint,
  type Bore,
  boreLimits,
  boreLongest,
  boreWidth,
  C_TIP,
  fallOff,
  fewer,
} from './hole-corner.ts';
import { demandHole, holeThrough } from './hole-through.ts';
import type { Solution } from './solution.ts';
import { NEWMAN_RAJU } from './sources.ts';

/** M₁ + M₂v² + M₃v⁴ of an embedded ellipse. */
function embeddedSeries(c: number, a: number, v2: number): number {
  const x = a / c;
  const x15 = x * Math.sqrt(x);
  return (a <= c ? 1 : Math.sqrt(1 / x)) + (0.05 / (0.11 + x15)) * v2 + (0.29 / (0.23 + x15)) * v2 * v2;
}

/**
 * K per stress of semi-ellipses in the bore of a hole, 2a along the bore and c outward. `bore.t` is half the thickness of
 * the plate, as for the embedded ellipse.
 */
export function surfaceInBore(bore: Bore, at: Angle): AtPoint {
  const [falls, width] = [fallOff(bore.r, 0.9, 0.08, at), boreWidth(bore)];
  const bent = 0.1 * (1 - at.cos) * (1 - at.cos);
  return (c, a) => {
    const v = a / bore.t;
    const g1 = 1 - (fourth(v) * Math.sqrt(2.6 - 2 * v) * at.cos) / (1 + (4 * a) / c);
    const left = (1 - v) * (1 - v);
    const g3 = 1 + bent * fourth(left) * left;
    const front = g1 * g3 * frontFactor(c, a, at);
    return rootOverShape(c, a) * embeddedSeries(c, a, v * v) * front * falls(c) * width(c, v) * fewer(c, a, bore);
  };
}

/**
 * One or two semi-ellipses at mid-thickness in the bore of a hole. It is through when 2a reaches the thickness and goes
 * on as a through crack of length c. Not valid outside a/c 0.2 to 2, r over half the thickness 0.5 to 2.
 */
export function holeBore(g: Extract<Geometry, { shape: 'hole_bore' }>): Solution {
  const { width_mm, diameter_mm, thickness_mm, cracks } = g;
  demandHole(width_mm, diameter_mm);
  const bore: Bore = { r: diameter_mm / 2, b: width_mm / 2, t: thickness_mm / 2, n: cracks };
  const [kc, ka] = [surfaceInBore(bore, C_TIP), surfaceInBore(bore, A_TIP)];
  return {
    shape: g.shape,
    thickness_mm,
    deepest_a_mm: bore.t,
    longest_c_mm: boreLongest(bore),
    limits: boreLimits(bore, 'half of the thickness'),
    k: (c, a) => ({ c: kc(c, a), a: ka(c, a) }),
    alone: aloneEllipse(C_TIP, A_TIP),
    net: (c, a) => 1 - diameter_mm / width_mm - (cracks * Math.PI * a * c) / (2 * width_mm * thickness_mm),
    through: holeThrough({ shape: 'hole_through', width_mm, diameter_mm, thickness_mm, cracks, bearing_ratio: 0 }),
    from: NEWMAN_RAJU,
  };
}
