import highsLoader from 'highs';
import { teardown } from '../../engine/index.ts';
import type { AndOrProblem } from './builder.ts';

export interface Yardstick {
  readonly proven: boolean;
  readonly cost: number | null;
}
const solver = await highsLoader();

/**
 * The plain way: one zero-one variable a thing, a row a clause, and as long as the answer holds a loop that supports
 * itself, rows that ask for support from outside the loop; solved anew each time by a general mixed-integer solver.
 * Its own limit counts the clock on the wall, so it is given three times the rest and judged by processor time.
 */
export function byLazyCuts(problem: AndOrProblem, ms: number, clock: () => number): Yardstick {
  const { cost, clauses, targets } = problem;
  const from = clock();
  const sum = (of: readonly number[]) => [...new Set(of)].map((k) => `+ y${k}`).join(' ');
  const rows = clauses.flatMap((list, j) =>
    list.map((l) => l.filter((k) => k !== j)).map((l) => (l.length ? `${sum(l)} - y${j} >= 0` : `y${j} <= 0`)),
  );
  for (const t of targets) rows.push(`y${t} >= 1`);
  const objective = cost.map((c, j) => `${c < 0 ? '-' : '+'} ${Math.abs(c)} y${j}`).join(' ');
  const names = cost.map((_, j) => `y${j}`).join(' ');
  for (;;) {
    const left = ms - (clock() - from);
    if (left < 20) return { proven: false, cost: null };
    const text = `Minimize\n obj: ${objective}\nSubject To\n${rows.map((r, i) => ` r${i}: ${r}`).join('\n')}\nBinary\n ${names}\nEnd\n`;
    const made = solver.solve(text, { time_limit: (3 * left) / 1000, mip_rel_gap: 0, parallel: 'off' });
    if (made.Status !== 'Optimal' || clock() - from > ms) return { proven: false, cost: null };
    const columns = made.Columns as Record<string, { Primal: number }>;
    const chosen = cost.flatMap((_, j) => (columns[`y${j}`]!.Primal > 0.5 ? [j] : []));
    if (teardown.orderOf(problem, chosen)) return { proven: true, cost: Math.round(made.ObjectiveValue) };
    const done = new Set<number>();
    for (let more = true; more; ) {
      more = false;
      for (const j of chosen) {
        if (done.has(j) || !clauses[j]!.every((l) => l.some((k) => done.has(k)))) continue;
        done.add(j);
        more = true;
      }
    }
    /** Of each thing in the loop the clause that nothing outside meets; what all of these name outside must hold one. */
    const held = new Set<number>();
    const outside = new Set<number>();
    const grow = (j: number) => {
      held.add(j);
      const l = clauses[j]!.find((list) => !list.some((k) => done.has(k)))!;
      for (const k of l) if (chosen.includes(k) && !held.has(k)) grow(k);
    };
    const loop = chosen.filter((j) => !done.has(j));
    grow(loop[0]!);
    for (const j of held)
      for (const k of clauses[j]!.find((list) => !list.some((x) => done.has(x)))!) if (!held.has(k)) outside.add(k);
    for (const j of [...held].slice(0, 20)) rows.push(`${sum([...outside])} - y${j} >= 0`);
  }
}
