import { Refusal } from '../../foundation/refusal.ts';
import type { AndOrProblem } from '../model.ts';

const unsound = (given: string, allowed: string): Refusal =>
  new Refusal('teardown.problem-unsound', {
    given,
    allowed,
    remedy: 'Number the things from 0, give each a whole cost, and name only things that exist',
  });

/** Refuses numbers that cannot be a problem. */
export function requireSound({ cost, clauses, targets }: AndOrProblem): void {
  if (clauses.length !== cost.length)
    throw unsound(
      `${cost.length} costs and clauses of ${clauses.length} things`,
      'one cost and one list of clauses each',
    );
  const bad = cost.findIndex((c) => !Number.isSafeInteger(c));
  if (bad >= 0) throw unsound(`${cost[bad]} as the cost of ${bad}`, 'whole cents');
  if (cost.reduce((s, c) => s + Math.abs(c), 0) > 1e14)
    throw unsound('costs of more than 1e14 together', 'at most 1e14');
  const exists = (k: number) => Number.isInteger(k) && k >= 0 && k < cost.length;
  clauses.forEach((list, j) => {
    for (const clause of list)
      for (const k of clause)
        if (!exists(k)) throw unsound(`${k} in a clause of ${j}`, `a number from 0 to ${cost.length - 1}`);
  });
  for (const t of targets) if (!exists(t)) throw unsound(`${t} as a target`, `a number from 0 to ${cost.length - 1}`);
}

/** Refuses worths and prerequisites that cannot be a choice. */
export function requireWorths(worth: readonly number[], prerequisites: readonly (readonly number[])[]): void {
  if (prerequisites.length !== worth.length)
    throw unsound(`${worth.length} worths and prerequisites of ${prerequisites.length} things`, 'one of each');
  const bad = worth.findIndex((w) => !Number.isFinite(w));
  if (bad >= 0) throw unsound(`${worth[bad]} as the worth of ${bad}`, 'a finite number');
  prerequisites.forEach((list, j) => {
    for (const k of list)
      if (!Number.isInteger(k) || k < 0 || k >= worth.length)
        throw unsound(`${k} as a prerequisite of ${j}`, `a number from 0 to ${worth.length - 1}`);
  });
}
