import { randomSource } from '../../../foundation/random.ts';
import type { AndOrProblem } from '../../model.ts';

/**
 * A problem by chance: ways of one to three, loops as they fall, some costs below zero. `open` gives every thing that
 * could never be reached one way more, so that all targets are.
 */
export function drawn(seed: number, things: number, open = false): AndOrProblem {
  const random = randomSource(seed, things);
  const int = (n: number) => Math.floor(random.next() * n);
  const cost = Array.from({ length: things }, () => int(open ? 40 : 10) - (random.next() < 0.25 ? 8 : 0));
  const clauses = cost.map(() =>
    random.next() < 0.2
      ? []
      : Array.from({ length: 1 + int(3) }, () => Array.from({ length: 1 + int(3) }, () => int(things))),
  );
  const targets = Array.from({ length: open ? 3 : int(3) }, () => int(things));
  for (let done = new Set<number>(); open && done.size < things; ) {
    done = new Set();
    for (let before = -1; before !== done.size; ) {
      before = done.size;
      clauses.forEach((list, j) => {
        if (list.every((clause) => clause.some((k) => done.has(k)))) done.add(j);
      });
    }
    const never = cost.flatMap((_, j) => (done.has(j) ? [] : [j]));
    const j = never[int(never.length)];
    if (j === undefined) break;
    for (const clause of clauses[j]!)
      if (!clause.some((k) => done.has(k))) {
        const reached = [...done][int(done.size)];
        if (reached === undefined) clauses[j]!.splice(0);
        else clause.push(reached);
      }
  }
  return { cost, clauses, targets };
}
