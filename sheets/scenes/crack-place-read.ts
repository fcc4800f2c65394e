/** Lengths in mm of a place that is being written, as far as they are there. */
export interface CrackPlace {
  readonly shape: string;
  readonly width: number;
  readonly thickness: number;
  readonly diameter: number | null;
  /** Middle of the hole, from the left edge. */
  readonly hole: number;
  /** Length of the first flaw, and its depth where it is not through. */
  readonly c: number | null;
  readonly a: number | null;
  readonly sort: 'through' | 'through middle' | 'corner' | 'bore' | 'surface' | 'none';
  /** Cracks as seen from the front, from the left edge. */
  readonly cracks: readonly { readonly from: number; readonly to: number }[];
}
type Fields = Readonly<Record<string, unknown>>;
const fields = (x: unknown): Fields => (typeof x === 'object' && x !== null ? (x as Fields) : {});
/** Lengths from a ten-thousandth of a millimetre to a hundred metres can be drawn. */
const length = (x: unknown): number | null => (typeof x === 'number' && x >= 1e-4 && x < 1e5 ? x : null);

const SORTS: Readonly<Record<string, CrackPlace['sort']>> = {
  centre_through: 'through middle',
  edge_through: 'through',
  hole_through: 'through',
  hole_near_edge: 'through',
  lug_through: 'through',
  hole_corner: 'corner',
  hole_corner_bearing: 'corner',
  hole_bore: 'bore',
  plate_surface: 'surface',
  plate_corner: 'corner',
  plate_corner_table: 'corner',
  own_table: 'none',
};

/** The place that a document in engine units speaks of; null where a length is missing or the hole does not fit. */
export function crackPlaceOf(document: unknown): CrackPlace | null {
  const g = fields(fields(document).geometry);
  const shape = String(g.shape);
  const sort = SORTS[shape];
  const [width, thickness] = [length(g.width_mm), length(g.thickness_mm)];
  if (sort === undefined || width === null || thickness === null) return null;
  const holed = shape.startsWith('hole') || shape.startsWith('lug');
  const diameter = holed ? length(g.diameter_mm) : null;
  if (holed && (diameter === null || diameter >= width)) return null;
  const edge = length(g.edge_distance_mm);
  const hole = edge !== null && edge < width ? width - edge : width / 2;
  if (diameter !== null && hole + diameter / 2 > width) return null;
  const flaw = fields(fields(document).first_flaw);
  const room = diameter === null ? width : width - hole - diameter / 2;
  const c = fitting(length(flaw.c_mm), sort === 'surface' || sort === 'through middle' ? width / 2 : room);
  const part = sort === 'corner' || sort === 'bore' || sort === 'surface';
  const a = part ? fitting(length(flaw.a_mm), sort === 'bore' ? thickness / 2 : thickness) : null;
  const drawn = c !== null && (!part || a !== null) && sort !== 'none';
  return {
    shape,
    width,
    thickness,
    diameter,
    hole,
    c: drawn ? c : null,
    a: drawn ? a : null,
    sort,
    cracks: drawn ? cracksOf(sort, { width, hole, diameter, c, both: g.cracks === 2 }) : [],
  };
}
const fitting = (x: number | null, room: number): number | null => (x !== null && x <= room ? x : null);

function cracksOf(
  sort: CrackPlace['sort'],
  p: { width: number; hole: number; diameter: number | null; c: number; both: boolean },
): { from: number; to: number }[] {
  const { width, hole, diameter, c } = p;
  if (sort === 'surface' || sort === 'through middle') return [{ from: width / 2 - c, to: width / 2 + c }];
  if (diameter === null) return [{ from: 0, to: c }];
  const right = { from: hole + diameter / 2, to: hole + diameter / 2 + c };
  const left = { from: hole - diameter / 2 - c, to: hole - diameter / 2 };
  return p.both ? [right, left] : [right];
}
