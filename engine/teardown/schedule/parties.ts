import type { Problem } from './problem.ts';

/**
 * Work that certain persons alone can do, counted in parties of so many: of three persons one party of two, so that what
 * takes two of them goes one after the other.
 */
export interface Party {
  /** What each operation takes of it, party minutes; 0 for work that others can do as well. */
  readonly content: Float64Array;
  /** Working minute by which so much is done at the soonest, begun at a working minute; past the end where never. */
  doneBy(from: number, content: number): number;
}

/** Parties of everybody, and of every set of persons who alone hold a skill. */
export function partiesOf(problem: Problem): Party[] {
  const { hands, minutes, off, count } = problem;
  const sets = new Map<string, readonly number[]>();
  const everybody = off.map((_, p) => p);
  sets.set(everybody.join(), everybody);
  for (const { holders, persons } of hands) if (persons > 0) sets.set(holders.join(), Array.from(holders));
  return [...sets.values()].flatMap((set) => {
    const own = new Set(set);
    const theirs = hands.map((h) => h.persons > 0 && h.holders.every((p) => own.has(p)));
    const sizes = new Set([1, ...hands.flatMap((h, i) => (theirs[i] ? [h.persons] : []))]);
    return [...sizes].map((size): Party => {
      const content = new Float64Array(count);
      for (let i = 0; i < count; i++) if (theirs[i]) content[i] = minutes[i]! * Math.floor(hands[i]!.persons / size);
      return { content, doneBy: workedBy(problem, set, size) };
    });
  });
}

function workedBy({ off, calendar }: Problem, set: readonly number[], size: number): Party['doneBy'] {
  const changes = new Map<number, number>();
  const add = (at: number, by: number) => changes.set(at, (changes.get(at) ?? 0) + by);
  for (const p of set)
    for (let i = 0; i < off[p]!.from.length; i++) {
      add(off[p]!.from[i]!, -1);
      add(off[p]!.to[i]!, 1);
    }
  const rising = [...changes].sort((a, b) => a[0] - b[0]);
  return (from, content) => {
    let there = set.length;
    let at = from;
    let left = content;
    for (const [when, by] of rising) {
      const parties = Math.floor(there / size);
      if (when > at) {
        if (left <= parties * (when - at)) break;
        left -= parties * (when - at);
        at = when;
      }
      there += by;
    }
    const parties = Math.floor(there / size);
    return parties > 0 ? at + Math.ceil(left / parties) : calendar.whole + 1;
  };
}
