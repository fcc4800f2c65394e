import type { Assessment, EndOfAnswer } from './model.ts';
import { soonest } from './soonest.ts';
import { badness } from './standing.ts';

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
    ahead(w.treatAs) && ahead(x.treatAs) ? { ...w.treatAs, dueAt: soonest(w.treatAs, x.treatAs).dueAt } : w.treatAs;
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
