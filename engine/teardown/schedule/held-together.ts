import type { Decoder } from './decode.ts';
import type { Problem } from './problem.ts';
import { endFrom, shares, soonest } from './soonest.ts';

const LOOKED = 12;
const TRIES = 60;

/**
 * What holds up an operation that was put off for a working life: the operation outside its group with which alone the
 * group, its hands as they are, could not have begun it earlier.
 */
export function heldTogether(problem: Problem, made: Decoder, op: number, seen: ReadonlySet<number>): number | null {
  const g = problem.groupOf[op]!;
  if (g < 0) return null;
  const { members } = problem.groups[g]!;
  const own = new Set(members);
  const linked = (by: number, m: number): boolean =>
    made.end[by]! <= made.start[m]! && (problem.before[m]!.includes(by) || shares(made.crew[by]!, made.crew[m]!));
  return (
    Array.from(made.end.keys())
      .filter((by) => !own.has(by) && !seen.has(by) && members.some((m) => linked(by, m)))
      .sort((a, b) => made.end[b]! - made.end[a]!)
      .slice(0, LOOKED)
      .find((by) => {
        const waits = new Set(members.filter((m) => linked(by, m)));
        return beginOf(problem, made, g, op, (m) => (waits.has(m) ? made.end[by]! : 0)) >= made.start[op]!;
      }) ?? null
  );
}

/** Earliest start of one of a group whose members begin no earlier than said, and keep their working lives. */
function beginOf(problem: Problem, made: Decoder, g: number, op: number, from: (m: number) => number): number {
  const { members, lives } = problem.groups[g]!;
  const start = new Map<number, number>();
  const end = new Map<number, number>();
  const least = new Map(members.map((m) => [m, Math.max(problem.ready[m]!, from(m))]));
  for (let tries = 0; tries < TRIES; tries++) {
    for (const m of members) {
      const at = Math.max(least.get(m)!, ...Array.from(problem.before[m]!, (p) => end.get(p) ?? 0));
      start.set(m, soonest(problem, made, m, at));
      end.set(m, endFrom(problem, made, m, start.get(m)!));
    }
    const broken = lives.filter(({ a, b, most }) => start.get(b)! - start.get(a)! > most);
    if (broken.length === 0) break;
    for (const { a, b, most } of broken) least.set(a, Math.max(least.get(a)!, start.get(b)! - most));
  }
  return start.get(op)!;
}
