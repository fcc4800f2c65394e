import fc from 'fast-check';
import type { Geometry } from '../../document.ts';
import type { CrackSize } from '../../model.ts';

const plate = { width_mm: 60, thickness_mm: 4 };
const hole = { ...plate, diameter_mm: 6 };
const from = { source: 'made up for a test', known: 'invented' as const };

/** One of every shape, asymmetric wherever it can be. */
export const EVERY_GEOMETRY: readonly Geometry[] = [
  { shape: 'centre_through', ...plate },
  { shape: 'edge_through', ...plate, bending_ratio: 0.3 },
  { shape: 'hole_through', ...hole, cracks: 1, bearing_ratio: 0 },
  { shape: 'hole_through', ...hole, cracks: 2, bearing_ratio: 1.5 },
  { shape: 'hole_near_edge', ...hole, edge_distance_mm: 14, bearing_ratio: 1.5 },
  { shape: 'lug_through', ...hole },
  { shape: 'hole_corner', ...hole, cracks: 1, bending_ratio: 0 },
  { shape: 'hole_corner', ...hole, cracks: 2, bending_ratio: 0.2 },
  { shape: 'hole_corner_bearing', ...hole, bearing_ratio: 2, edge_distance_mm: 20 },
  { shape: 'hole_bore', ...hole, cracks: 1 },
  { shape: 'plate_surface', ...plate, bending_ratio: 0.2 },
  { shape: 'plate_corner', ...plate },
  { shape: 'plate_corner_table', ...plate, in_plane_bending_ratio: 0.2, out_of_plane_bending_ratio: 0.1 },
  {
    shape: 'own_table',
    ...plate,
    points: [
      { c_mm: 0.2, beta: 2.8 },
      { c_mm: 3, beta: 1.6 },
      { c_mm: 25, beta: 2.4 },
    ],
    from,
  },
];

/** Evenly spread, unlike doubles. */
export const evenly = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 10_000 }).map((i) => min + ((max - min) * i) / 10_000);

/** Sizes that most of them hold. */
export const someSize: fc.Arbitrary<Required<CrackSize>> = fc
  .tuple(evenly(0.3, 3.5), evenly(0.35, 1.8))
  .map(([a, ratio]) => ({ a_mm: a, c_mm: a / ratio }));
