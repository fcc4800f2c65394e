import { type Day, dayNumber } from '../foundation/day.ts';
import type { StandingLine } from './line.ts';
import { badness } from './standing.ts';

export const CHANGES = ['newly affected', 'earlier', 'later', 'no longer affected', 'unchanged'] as const;
/** What another text of a rule does to one part under one action. */
export type Change = (typeof CHANGES)[number];

const isOpen = (l: StandingLine | null): l is StandingLine =>
  l !== null && (l.notComputed || !['ended', 'not affected'].includes(l.treatAs.standing));
const standing = (l: StandingLine): number => badness(l.notComputed ? 'due' : l.treatAs.standing);
const FROM_DUE = badness('due');

/** Where the worse side of an answer lies in time; infinite where nothing tells when. */
function when(l: StandingLine, today: Day): number {
  if (standing(l) >= FROM_DUE || l.treatAs.dueAt.now) return dayNumber(today);
  const p50 = l.dates?.treatAs.p50;
  if (p50) return p50.is === 'not before' ? dayNumber(`${p50.year}-07-01` as Day) : dayNumber(p50.day);
  return l.treatAs.dueAt.day ? dayNumber(l.treatAs.dueAt.day) : Number.POSITIVE_INFINITY;
}
/** What is left on the meter that both limits are read on; null where they are read on different ones. */
function leftBy(was: StandingLine, would: StandingLine): number | null {
  const [a, b] = [was.treatAs.left, would.treatAs.left];
  if (!a || !b) return null;
  for (const axis of ['hours_s', 'landings'] as const)
    if (a[axis] !== null && b[axis] !== null) return b[axis] - a[axis];
  return a.unit === b.unit ? b.value - a.value : null;
}

/**
 * What changes for one part when a rule reads otherwise: the worse side of both is compared, first by standing where
 * one of them is due, then by the day on which it falls due, then by what is left. Null: there is none.
 */
export function changeOf(was: StandingLine | null, would: StandingLine | null, today: Day): Change {
  if (!isOpen(was)) return isOpen(would) ? 'newly affected' : 'unchanged';
  if (!isOpen(would)) return 'no longer affected';
  const worse = standing(would) - standing(was);
  const settled = Math.max(standing(was), standing(would)) >= FROM_DUE;
  const said = (step: number): Change => (step === 0 ? 'unchanged' : step > 0 ? 'later' : 'earlier');
  if (settled && worse !== 0) return said(-worse);
  const same = JSON.stringify(was.treatAs.dueAt) === JSON.stringify(would.treatAs.dueAt);
  if (same) return 'unchanged';
  const [before, after] = [when(was, today), when(would, today)];
  if (before !== after) return said(after > before ? 1 : -1);
  return said(leftBy(was, would) ?? -worse);
}
