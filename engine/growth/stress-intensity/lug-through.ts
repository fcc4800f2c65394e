import type { Geometry } from '../document.ts';
import { bearingHandbook } from './hole-near-edge.ts';
import { demandHole, oneAtHole } from './hole-through.ts';
import { fits, range } from './limit.ts';
import { polynomial, rootPi, secant } from './numbers.ts';
import { aloneThrough, type Solution } from './solution.ts';
import { LUG } from './sources.ts';

/** G₂ against c/b, b = (W − D)/2, its coefficients against u = D/W. The course prints −58.644 in the last; the handbook −58.664. */
function lugFactor(share: number, u: number): number {
  return polynomial(
    share,
    polynomial(u, 0.688, 0.772, 0.613),
    polynomial(u, 4.948, -17.318, 16.785),
    polynomial(u, -14.297, 62.994, -69.818),
    polynomial(u, 12.35, -58.664, 66.387),
  );
}
const LIGAMENT = 0.98;

/**
 * One through crack of length c at the hole of a lug, loaded by its pin alone. The remote stress is P/(W t); the
 * bearing stress of the handbook form is W/D times that.
 * Not valid within 2 % of the ligament from the edge. The source gives no range of D/W.
 */
export function lugThrough(g: Extract<Geometry, { shape: 'lug_through' }>): Solution {
  const { width_mm: width, diameter_mm: diameter, thickness_mm } = g;
  demandHole(width, diameter);
  const u = diameter / width;
  const ligament = (width - diameter) / 2;
  const gl = Math.sqrt(secant((Math.PI * u) / 2));
  const factor = (c: number): number => {
    const z = 1 / (1 + (2 * c) / diameter);
    const gw = Math.sqrt(secant(((Math.PI / 2) * (diameter + c)) / (width - c)));
    return ((oneAtHole(z) * u) / 2 + bearingHandbook(z)) * gw * gl * lugFactor(c / ligament, u);
  };
  return {
    shape: g.shape,
    thickness_mm,
    deepest_a_mm: null,
    longest_c_mm: LIGAMENT * ligament,
    limits: [
      fits('the length c', (c) => c, ligament, 'the ligament between hole and edge'),
      range('length over the ligament', (c) => c / ligament, [0, LIGAMENT], LUG),
    ],
    k: (c) => ({ c: (rootPi(c) * factor(c)) / u, a: null }),
    alone: aloneThrough,
    net: (c) => 1 - (diameter + c) / width,
    through: null,
    from: LUG,
  };
}
