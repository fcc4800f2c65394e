import type { Geometry } from '../document.ts';
import { fits, range } from './limit.ts';
import { polynomial, rootPi } from './numbers.ts';
import { aloneThrough, type Solution } from './solution.ts';
import { PLANE } from './sources.ts';
import { superposed } from './superposition.ts';

/** β of tension against x = c/W, within 0.5 %. */
export const edgeFactor = (x: number): number => polynomial(x, 1.122, -0.231, 10.55, -21.71, 30.82);
/** β of in-plane bending, σ = 6M/(t W²) at the edge, within 0.2 %. */
export const edgeBendingFactor = (x: number): number => polynomial(x, 1.122, -1.4, 7.33, -13.08, 14);

/** Tada's forms for tension (0.5 % at any x) and bending: the second form, which the tests hold against the first. */
export function edgeFactorTada(x: number): number {
  const h = (Math.PI * x) / 2;
  return (Math.sqrt(Math.tan(h) / h) * (0.752 + 2.02 * x + 0.37 * (1 - Math.sin(h)) ** 3)) / Math.cos(h);
}
export function edgeBendingFactorTada(x: number): number {
  const h = (Math.PI * x) / 2;
  return (Math.sqrt(Math.tan(h) / h) * (0.923 + 0.199 * (1 - Math.sin(h)) ** 4)) / Math.cos(h);
}
const DEEPEST = 0.6;

/** Through crack of length c from an edge, tension and in-plane bending superposed. Not valid beyond c/W = 0.6. */
export function edgeThrough(g: Extract<Geometry, { shape: 'edge_through' }>): Solution {
  const { width_mm: width, thickness_mm } = g;
  return {
    shape: g.shape,
    thickness_mm,
    deepest_a_mm: null,
    longest_c_mm: DEEPEST * width,
    limits: [
      fits('the length c', (c) => c, width, 'the width'),
      range('length over width, c/W,', (c) => c / width, [0, DEEPEST], PLANE),
    ],
    k: superposed([
      { share: 1, k: (c) => ({ c: rootPi(c) * edgeFactor(c / width), a: null }) },
      { share: g.bending_ratio, k: (c) => ({ c: rootPi(c) * edgeBendingFactor(c / width), a: null }) },
    ]),
    alone: aloneThrough,
    net: (c) => 1 - c / width,
    through: null,
    from: PLANE,
  };
}
