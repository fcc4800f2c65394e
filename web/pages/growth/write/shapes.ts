import type { Json, Table } from '../../../parts/write/json.ts';
import { NO_SOURCE } from '../../../parts/write/source-in.tsx';

/** Where a crack sits, and which figures say so. */
export interface Shape {
  readonly value: string;
  readonly text: string;
  /** It has a depth as well as a length, until it is through. */
  readonly deep: boolean;
  readonly fields: readonly string[];
}
const HOLE = ['width_mm', 'thickness_mm', 'diameter_mm'];
const PLATE = ['width_mm', 'thickness_mm'];
export const SHAPES: readonly Shape[] = [
  { value: 'hole_corner', text: 'corner crack at a hole', deep: true, fields: [...HOLE, 'cracks', 'bending_ratio'] },
  {
    value: 'hole_corner_bearing',
    text: 'corner crack at a hole with a pin, or off the middle',
    deep: true,
    fields: [...HOLE, 'bearing_ratio', 'edge_distance_mm'],
  },
  { value: 'hole_bore', text: 'crack in the bore of a hole', deep: true, fields: [...HOLE, 'cracks'] },
  {
    value: 'hole_through',
    text: 'through crack at a hole',
    deep: false,
    fields: [...HOLE, 'cracks', 'bearing_ratio'],
  },
  {
    value: 'hole_near_edge',
    text: 'through crack from a hole to the near edge',
    deep: false,
    fields: [...HOLE, 'edge_distance_mm', 'bearing_ratio'],
  },
  { value: 'lug_through', text: 'through crack at the hole of a lug', deep: false, fields: HOLE },
  { value: 'plate_surface', text: 'crack at the surface of a plate', deep: true, fields: [...PLATE, 'bending_ratio'] },
  { value: 'plate_corner', text: 'crack at the corner of a plate', deep: true, fields: PLATE },
  {
    value: 'plate_corner_table',
    text: 'crack at the corner of a plate, with bending',
    deep: true,
    fields: [...PLATE, 'in_plane_bending_ratio', 'out_of_plane_bending_ratio'],
  },
  { value: 'centre_through', text: 'through crack in the middle of a plate', deep: false, fields: PLATE },
  {
    value: 'edge_through',
    text: 'through crack from the edge of a plate',
    deep: false,
    fields: [...PLATE, 'bending_ratio'],
  },
  { value: 'own_table', text: 'geometry factors of our own', deep: false, fields: PLATE },
];
export const shapeOf = (value: Json | undefined): Shape | undefined => SHAPES.find((s) => s.value === value);

/** Another shape keeps the figures that both have, in whatever unit they stand. */
export function asShape(geometry: Table, value: string, names: (field: string) => readonly string[]): Table {
  const shape = shapeOf(value);
  const kept = (shape?.fields ?? []).flatMap((f) => names(f)).filter((n) => geometry[n] !== undefined);
  const made: Table = { shape: value, ...Object.fromEntries(kept.map((n) => [n, geometry[n]!])) };
  if (value === 'own_table') return { ...made, from: geometry.from ?? NO_SOURCE };
  return shape?.fields.includes('cracks') && made.cracks === undefined ? { ...made, cracks: 1 } : made;
}
