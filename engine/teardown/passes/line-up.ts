import type { MapFinding, Operation } from '../model.ts';
import type { Join, ThreePoint } from '../structure-document.ts';
import type { Sequence } from './backwards.ts';
import type { Wing } from './context.ts';
import { idOf, operation } from './operation.ts';
import { NO_TIME, type RowWork, rowMinutes } from './times.ts';

/** The work as it is written down: operations in order, and what is to be said about them. */
export interface LineUp {
  readonly wing: Wing;
  readonly sequence: Sequence;
  readonly operations: Operation[];
  readonly findings: MapFinding[];
  /** Jig that stands, from its set-up to its release. */
  jig: string | null;
  /** Rows without a time for some work. */
  readonly untimed: Map<RowWork, string[]>;
}

export function add(line: LineUp, ...[kind, of, stage, title, given]: Parameters<typeof operation>): Operation {
  const placed = { jig: line.jig, ...given };
  const hand = placed.jig === null ? undefined : handOf(line, of);
  const op = operation(kind, of, stage, title, { ...placed, ...(hand ? { hand } : {}) }, line.wing.document.floor);
  line.operations.push(op);
  return op;
}

/** The wing that a part, a row or a jig belongs to. */
const handOf = ({ wing }: LineUp, id: string): 'left' | 'right' | 'both' | undefined =>
  (wing.part(id) ?? wing.join(id) ?? wing.jigs.find((s) => s.id === id))?.side;

/** Minutes of work on a row; a row without a time counts nothing and is named in a finding. */
export function timeOf(line: LineUp, join: Join, work: RowWork, count?: number): ThreePoint {
  const t = rowMinutes(line.wing.map, join, work, count);
  if (t) return t;
  line.untimed.set(work, [...(line.untimed.get(work) ?? []), join.id]);
  return NO_TIME;
}

/** Layers of a row that were off. */
export const offLayers = (line: LineUp, join: Join): readonly string[] =>
  join.layers.filter((l) => line.wing.opened.off.includes(l));

/** Pieces that must be in before this one, by the access of their own. */
export const waitsFor = (line: LineUp, piece: string): readonly string[] => [
  ...new Set(line.sequence.waits.get(piece) ?? []),
];

/** Whether temporary fasteners go in: rivets always, others where the map gives a time for it. */
export const isClipped = (line: LineUp, join: Join): boolean =>
  join.fasteners.kind.endsWith('rivet') || rowMinutes(line.wing.map, join, 'clip') !== null;

export const ids = (kind: Parameters<typeof idOf>[0], all: readonly string[]): string[] =>
  all.map((a) => idOf(kind, a));
