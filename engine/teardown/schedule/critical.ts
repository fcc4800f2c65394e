import type { Decoder } from './decode.ts';
import { heldTogether } from './held-together.ts';
import type { Problem } from './problem.ts';
import { shares, soonest } from './soonest.ts';

/** What an operation of the chain waits for: the one before it on the chain, or, for the first, the calendar. */
export type Waits = 'start' | 'need' | 'hands' | 'jig' | 'life';
export interface Link {
  readonly op: number;
  readonly waits: Waits;
}

/**
 * The operations that hold the end, from the first to the last.
 *
 * What: each begins at the earliest minute that the calendars leave after the end of the one before it, which it needs,
 * whose hands it takes, or whose jig. `life`: it was put off so that what must follow it within a working life can
 * follow; with that one before it, it could not have begun earlier. The first waits for nothing but the first day, days off or a booked jig.
 * How: from the last end backwards, over operations without slack.
 */
export function criticalChain(problem: Problem, made: Decoder): Link[] {
  if (problem.count === 0) return [];
  let op = 0;
  for (let i = 1; i < problem.count; i++) if (made.end[i]! > made.end[op]!) op = i;
  const seen = new Set<number>();
  const chain: Link[] = [];
  for (;;) {
    seen.add(op);
    const held = heldUp(problem, made, op, seen);
    chain.push({ op, waits: held?.waits ?? 'start' });
    if (!held) return chain.reverse();
    op = held.by;
  }
}

interface Held {
  readonly by: number;
  readonly waits: Waits;
}
function heldUp(problem: Problem, made: Decoder, op: number, seen: ReadonlySet<number>): Held | null {
  const own = tight(problem, made, op, seen);
  if (own) return own;
  const s = problem.stayOf[op]!;
  if (s >= 0 && made.start[op] === made.stayStart[s])
    for (const other of problem.stays[s]!.members)
      if (other !== op && made.start[other] === made.stayStart[s]) {
        const held = tight(problem, made, other, seen);
        if (held) return { by: held.by, waits: 'jig' };
      }
  const by = heldTogether(problem, made, op, seen);
  return by === null ? null : { by, waits: 'life' };
}

/** What ended last before it and leaves it no earlier minute. */
function tight(problem: Problem, made: Decoder, op: number, seen: ReadonlySet<number>): Held | null {
  const start = made.start[op]!;
  const holds = (by: number): boolean =>
    !seen.has(by) && made.end[by]! <= start && soonest(problem, made, op, made.end[by]!) >= start;
  for (const by of problem.before[op]!) if (holds(by)) return { by, waits: 'need' };
  const s = problem.stayOf[op]!;
  if (s >= 0 && start === made.stayStart[s])
    for (let other = 0; other < problem.stays.length; other++)
      if (other !== s && made.stayJig[other] === made.stayJig[s] && made.stayEnd[other]! <= start)
        for (const by of problem.stays[other]!.members)
          if (made.end[by] === made.stayEnd[other] && holds(by)) return { by, waits: 'jig' };
  for (let by = 0; by < problem.count; by++)
    if (by !== op && shares(made.crew[by]!, made.crew[op]!) && holds(by)) return { by, waits: 'hands' };
  return null;
}
