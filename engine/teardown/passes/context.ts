import type { TeardownDocument } from '../document.ts';
import type { Join, Part, StructureMap, Support } from '../structure-document.ts';
import { type Holes, holesOf } from './holes.ts';
import type { Opened } from './model.ts';
import { isRemovable, rowMinutes } from './times.ts';

/** Parts that give the wing its shape: they go into the jig, with all that is drilled or measured there. The rest follows when the wing is riveted. */
const SHAPE: readonly Part['kind'][] = [
  'spar',
  'cap',
  'web',
  'skin',
  'rib',
  'nose_section',
  'doubler',
  'splice',
  'stringer',
  'fitting',
];

/** What the passes ask of a document again and again, looked up once. */
export interface Wing {
  readonly document: TeardownDocument;
  readonly map: StructureMap;
  readonly opened: Opened;
  part(id: string): Part | undefined;
  join(id: string): Join | undefined;
  /** Open joins that are drilled in the dry pass, with how many of their holes. */
  readonly drilled: ReadonlyMap<string, number>;
  /** Parts that go into the jig, in the order in which they came off. */
  readonly shape: readonly string[];
  /** Open joins that hold the shape: all their parts are in the jig or never came off. Not the attach bolts. */
  readonly rows: readonly string[];
  /** Something is drilled: the shape goes up dry, comes apart, and goes up again. */
  readonly twice: boolean;
  holes(join: Join): Holes;
  /** Jigs of the map for the sides that are worked on. */
  readonly jigs: readonly Support[];
}

/** Holes of a row that the dry pass drills: all of a row through a new part, else those that take the next size. */
function drillCount(map: StructureMap, join: Join, holes: Holes, replaced: ReadonlySet<string>): number {
  if (join.attach) return 0;
  const through = join.layers.some((l) => replaced.has(l));
  if (!through) return holes.pilot + holes.elongated + holes.oversize;
  return isRemovable(join) && !rowMinutes(map, join, 'drill') ? 0 : join.fasteners.count;
}

export function wingOf(document: TeardownDocument, opened: Opened): Wing {
  const { map } = document;
  const parts = new Map(map.parts.map((p) => [p.id, p]));
  const joins = new Map(map.joins.map((j) => [j.id, j]));
  const off = new Set(opened.off);
  const replaced = new Set(opened.replaced);
  const holes = (join: Join) => holesOf(document, join);
  const open = opened.open.flatMap((id) => joins.get(id) ?? []);
  const drilled = new Map<string, number>();
  for (const j of open) {
    const count = Math.min(j.fasteners.count, drillCount(map, j, holes(j), replaced));
    if (count > 0) drilled.set(j.id, count);
  }
  const inJig = open.filter((j) => drilled.has(j.id) || (j.jig_before_rivets && !j.attach));
  const held = new Set(inJig.flatMap((j) => j.layers));
  const shape = opened.off.filter((id) => {
    const part = parts.get(id);
    return part && (SHAPE.includes(part.kind) || held.has(id));
  });
  const up = new Set(shape);
  const rows = open.filter((j) => !j.attach && j.layers.every((l) => up.has(l) || !off.has(l))).map((j) => j.id);
  const sides = new Set(rows.map((id) => joins.get(id)!.side));
  const jigs = map.supports.filter((s) => s.jig && (s.side === 'both' || sides.has('both') || sides.has(s.side)));
  return {
    document,
    map,
    opened,
    part: (id) => parts.get(id),
    join: (id) => joins.get(id),
    drilled,
    shape,
    rows,
    twice: drilled.size > 0,
    holes,
    jigs: rows.some((id) => drilled.has(id) || joins.get(id)!.jig_before_rivets) ? jigs : [],
  };
}
