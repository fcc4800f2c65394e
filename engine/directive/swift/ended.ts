import type { SwiftAction } from './compile.ts';
import { doneUnder, type SwiftLife } from './life.ts';

/** `endedBy` without findings and alternatives: done without a repeat, by another action, or by the part number. */
export function isEnded({ directive: d, action }: SwiftAction, life: SwiftLife, done: boolean): boolean {
  if (done && !action.repeat) return true;
  return (action.ended_by ?? []).some((e) => {
    if ('action' in e) {
      const other = d.actions.find((x) => x.id === e.action)!;
      return doneUnder(d, other, life.thing).some((x) => e.finding === undefined || x.finding === e.finding);
    }
    return 'part_number' in e && life.thing.partNumber === e.part_number;
  });
}
