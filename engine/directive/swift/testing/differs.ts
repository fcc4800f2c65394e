import type { StandingLine } from '../../line.ts';

const near = (a: number | null | undefined, b: number | null | undefined, slack = 1e-6): boolean =>
  a === b || (typeof a === 'number' && typeof b === 'number' && Math.abs(a - b) <= slack);
/** Readings and seconds are whole: a figure that lies within rounding of the next one may stand at either. */
export function differs(fast: StandingLine, ref: StandingLine): string | null {
  for (const side of ['treatAs', 'couldBecome'] as const) {
    const [a, b] = [fast[side], ref[side]];
    if (a.standing !== b.standing) return `${side} ${a.standing}, not ${b.standing}`;
    if (!near(a.dueAt.total_s, b.dueAt.total_s, 1)) return `${side} due at ${a.dueAt.total_s}, not ${b.dueAt.total_s}`;
    if (!near(a.dueAt.landings, b.dueAt.landings))
      return `${side} due at ${a.dueAt.landings} landings, not ${b.dueAt.landings}`;
    if (a.dueAt.day !== b.dueAt.day || a.dueAt.now !== b.dueAt.now)
      return `${side} due on ${a.dueAt.day}, not ${b.dueAt.day}`;
    if (!near(a.left?.value, b.left?.value) || a.left?.unit !== b.left?.unit || a.left?.limit !== b.left?.limit)
      return `${side} left ${JSON.stringify(a.left)}, not ${JSON.stringify(b.left)}`;
    if (!near(a.left?.hours_s, b.left?.hours_s, 1) || !near(a.left?.landings, b.left?.landings))
      return `${side} left ${JSON.stringify(a.left)}, not ${JSON.stringify(b.left)}`;
  }
  if (fast.lastDone !== ref.lastDone) return `last done ${fast.lastDone}, not ${ref.lastDone}`;
  if ((fast.hangsOn === null) !== (ref.hangsOn === null)) return `hangs on ${fast.hangsOn}, not ${ref.hangsOn}`;
  return null;
}
