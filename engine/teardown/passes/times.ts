import type { Floor } from '../floor-document.ts';
import { hourCents, isMadeAnew, meanOf, NO_TIME, type RowWork } from '../map/index.ts';
import type { Join, StructureMap, ThreePoint } from '../structure-document.ts';

export type { RowWork };
export { NO_TIME };
export const timesOver = (t: ThreePoint, k: number): ThreePoint => ({
  low_min: t.low_min * k,
  likely_min: t.likely_min * k,
  high_min: t.high_min * k,
});
export const plus = (a: ThreePoint, b: ThreePoint): ThreePoint => ({
  low_min: a.low_min + b.low_min,
  likely_min: a.likely_min + b.likely_min,
  high_min: a.high_min + b.high_min,
});
/**
 * Minutes of one kind of work on a row.
 * What: the row's own time; else the count times what one fastener of its kind takes.
 * How: of a part of the row the share of its own time. A bolt, screw, pin or clamp without a closing time closes as it opens.
 * @returns null where the map says nothing: never zero in silence
 */
export function rowMinutes(map: StructureMap, join: Join, work: RowWork, count?: number): ThreePoint | null {
  const all = join.fasteners.count;
  const n = count ?? all;
  const own = join.row?.[work];
  if (own) return timesOver(own, n / all);
  const each = map.each[join.fasteners.kind]?.[work];
  if (each) return timesOver(each, n);
  return work === 'close' && isRemovable(join) ? rowMinutes(map, join, 'open', count) : null;
}

/** Comes out and goes in again; a drilled rivet or a driven pin does not. */
export const isRemovable = (join: Join): boolean => !isMadeAnew(join);

const MINUTES_PER_HOUR = 60;
/** Cost of hands, whole cents; one cent a minute where no floor is given. */
export const handsCents = (minutes: ThreePoint, persons: number, floor?: Floor): number =>
  Math.round((meanOf(minutes) * persons * hourCents(floor)) / MINUTES_PER_HOUR);
