import { describe, expect, it } from 'vitest';
import type { Geometry } from '../document.ts';
import { crackForm } from './index.ts';

/**
 * USAF Damage Tolerant Design Handbook, tables 11.3.10 to 11.3.12: no worked answer is printed, so these were computed
 * once from the printed equations, written down a second time in another language. They guard the typing, not the handbook.
 */
const close = (given: number, other: number) => expect(Math.abs(given / other - 1)).toBeLessThan(1e-9);
const hole = { width_mm: 60, thickness_mm: 4, diameter_mm: 6 };

describe('handbook forms against a second computation', () => {
  it.each([
    [14, 1, 0.11805504503722787, 0.03380330240010817],
    [14, 4, 0.14722019578215065, 0.02623128893845538],
    [30, 1, 0.11461570873802061, 0.03281849971809564],
    [30, 4, 0.13435437618821847, 0.023938892644188692],
  ])('hole %s mm from the edge, c %s', (edge_distance_mm, c_mm, tension, bearing) => {
    const k = (bearing_ratio: number) =>
      crackForm({ shape: 'hole_near_edge', ...hole, edge_distance_mm, bearing_ratio }).k({ c_mm }).c;
    close(k(0), tension);
    close(k(2.5), tension + 2.5 * bearing);
  });
  it.each([
    [6, 24, 1, 0.19421796402585548],
    [6, 24, 5, 0.21462581840792425],
    [10, 20, 2, 0.32453399350366796],
    [10, 16, 2.5, 0.6986364760366262],
  ])('lug, D %s, W %s, c %s', (diameter_mm, width_mm, c_mm, k) =>
    close(crackForm({ shape: 'lug_through', width_mm, thickness_mm: 3, diameter_mm }).k({ c_mm }).c, k),
  );
  it.each([
    [2, 1.2, [0.06293039796910317, 0.01608422715951811], [0.10922802241193055, 0.028400557857551117]],
    [1.5, 2.4, [0.1087514725519916, 0.030437352252216693], [0.11251259436853354, 0.030837144230233506]],
  ])(
    'corner with bearing, c %s, a %s, hole 20 mm from the edge',
    (c_mm, a_mm, [tension, bearing], [deep, deepBearing]) => {
      const k = (bearing_ratio: number) =>
        crackForm({ shape: 'hole_corner_bearing', ...hole, edge_distance_mm: 20, bearing_ratio }).k({ c_mm, a_mm });
      close(k(0).c, tension!);
      close(k(0).a!, deep!);
      close(k(2).c, tension! + 2 * bearing!);
      close(k(2).a!, deep! + 2 * deepBearing!);
    },
  );
});

/** What is left of the section, counted by hand: width 60, thickness 4, hole 6, c 2, a 1.6. */
it.each<[Geometry, number]>([
  [{ shape: 'centre_through', width_mm: 60, thickness_mm: 4 }, 56 / 60],
  [{ shape: 'edge_through', width_mm: 60, thickness_mm: 4, bending_ratio: 0 }, 58 / 60],
  [{ shape: 'hole_through', ...hole, cracks: 1, bearing_ratio: 0 }, 52 / 60],
  [{ shape: 'hole_through', ...hole, cracks: 2, bearing_ratio: 0 }, 50 / 60],
  [{ shape: 'hole_near_edge', ...hole, edge_distance_mm: 14, bearing_ratio: 0 }, 52 / 60],
  [{ shape: 'lug_through', ...hole }, 52 / 60],
  [{ shape: 'hole_corner', ...hole, cracks: 1, bending_ratio: 0 }, (216 - 0.8 * Math.PI) / 240],
  [{ shape: 'hole_corner', ...hole, cracks: 2, bending_ratio: 0 }, (216 - 1.6 * Math.PI) / 240],
  [{ shape: 'hole_corner_bearing', ...hole, bearing_ratio: 0 }, (216 - 0.8 * Math.PI) / 240],
  [{ shape: 'hole_bore', ...hole, cracks: 1 }, (216 - 1.6 * Math.PI) / 240],
  [{ shape: 'hole_bore', ...hole, cracks: 2 }, (216 - 3.2 * Math.PI) / 240],
  [{ shape: 'plate_surface', width_mm: 60, thickness_mm: 4, bending_ratio: 0 }, (240 - 1.6 * Math.PI) / 240],
  [{ shape: 'plate_corner', width_mm: 60, thickness_mm: 4 }, (240 - 0.8 * Math.PI) / 240],
])('net section of %j', (geometry, net) => {
  expect(crackForm(geometry).net({ c_mm: 2, a_mm: 1.6 })).toBeCloseTo(net, 12);
});
it('a crack longer than the section leaves nothing, not less than nothing', () => {
  expect(crackForm({ shape: 'edge_through', width_mm: 60, thickness_mm: 4, bending_ratio: 0 }).net({ c_mm: 70 })).toBe(
    0,
  );
});
