import type { Assessment, DueAt, EndOfAnswer } from './model.ts';
import { badness } from './standing.ts';

const least = <T extends number | string>(a: T | null, b: T | null): T | null =>
  a === null ? b : b === null || a <= b ? a : b;

/** True where the first falls due no later than the second, as far as their axes can be compared. */
function noLater(a: EndOfAnswer, b: EndOfAnswer): boolean {
  if (a.dueAt.now !== b.dueAt.now) return a.dueAt.now;
  if (a.left && b.left && a.left.unit === b.left.unit) return a.left.value <= b.left.value;
  for (const axis of ['landings', 'total_s', 'day'] as const) {
    const [x, y] = [a.dueAt[axis], b.dueAt[axis]];
    if (x !== null && y !== null && x !== y) return x < y;
  }
  return a.left !== null || b.left === null;
}
/** Due by whichever of both comes first on each axis: a reading of the worse, a date of the better, both count. */
const soonest = (a: DueAt, b: DueAt): DueAt => ({
  total_s: least(a.total_s, b.total_s),
  landings: least(a.landings, b.landings),
  day: least(a.day, b.day),
  now: a.now || b.now,
});
/** Ahead of its limit; what has reached it needs no second date. */
const ahead = (e: EndOfAnswer): boolean =>
  e.standing !== 'ended' && e.standing !== 'not affected' && badness(e.standing) < badness('due');

/**
 * One answer of two: the record with only what is proven for the part, and with all that is alleged. In force is the
 * worse of both; what the paper may change it to, the better. An early look that counts can bring the next one
 * forward, so neither is always the worse.
 */
export function worseSide(proven: Assessment, alleged: Assessment, because: string | null): Assessment {
  const step = badness(proven.treatAs.standing) - badness(alleged.treatAs.standing);
  const [w, x] =
    step > 0 || (step === 0 && noLater(proven.treatAs, alleged.treatAs)) ? [proven, alleged] : [alleged, proven];
  const up = badness(proven.couldBecome.standing) - badness(alleged.couldBecome.standing);
  const best = up < 0 || (up === 0 && noLater(alleged.couldBecome, proven.couldBecome)) ? proven : alleged;
  const treatAs: EndOfAnswer =
    ahead(w.treatAs) && ahead(x.treatAs)
      ? { ...w.treatAs, dueAt: soonest(w.treatAs.dueAt, x.treatAs.dueAt) }
      : w.treatAs;
  return {
    ...w,
    affected: proven.affected.yes ? proven.affected : alleged.affected,
    standing: { worst: treatAs.standing, best: best.couldBecome.standing },
    treatAs,
    couldBecome: best.couldBecome,
    lastDone: proven.lastDone,
    notComputed: proven.notComputed ?? alleged.notComputed,
    warnings: [...new Set([...proven.warnings, ...alleged.warnings, ...(because ? [because] : [])])],
  };
}
