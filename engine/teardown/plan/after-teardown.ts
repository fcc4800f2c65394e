import { indexOf } from '../map/index.ts';
import type { Operation } from '../model.ts';
import type { StructureMap } from '../structure-document.ts';

/** The wing that an operation is on. */
function sideOf(map: StructureMap, o: Operation): 'left' | 'right' | 'both' {
  const { part, join, support, look, job } = indexOf(map);
  const at = look.get(o.of)?.at ?? job.get(o.of)?.at ?? o.of;
  return (part.get(at) ?? join.get(at) ?? support.get(at))?.side ?? 'both';
}
const meet = (a: string, b: string): boolean => a === b || a === 'both' || b === 'both';

/**
 * Nothing of a wing goes together before all that comes off it is off, and what is done on the bare wing is done: a
 * part put back early would stand in the way of rows that are still to be opened. The other wing does not wait.
 * @param ahead what comes off, with the work on the bare wing
 * @param back the way back; what of it is done already stays as it is
 */
export function afterTeardown(
  map: StructureMap,
  ahead: readonly Operation[],
  back: readonly Operation[],
): readonly Operation[] {
  const left = ahead.filter((o) => !o.done).map((o) => ({ o, side: sideOf(map, o) }));
  const waitedFor = new Set(left.flatMap(({ o }) => o.after));
  const last = left.filter(({ o }) => !waitedFor.has(o.id));
  const toDo = new Set(back.filter((o) => !o.done).map((o) => o.id));
  return back.map((o) => {
    if (o.done || o.after.some((a) => toDo.has(a))) return o;
    const side = sideOf(map, o);
    const waits = last.filter((l) => meet(l.side, side)).map((l) => l.o.id);
    return waits.length === 0 ? o : { ...o, after: [...new Set([...o.after, ...waits])] };
  });
}
