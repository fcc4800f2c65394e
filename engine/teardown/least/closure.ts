import { MaxFlow } from './max-flow.ts';
import { requireWorths } from './require.ts';

/** A choice that holds what each of its things needs, and what it is worth. */
export interface Closure {
  /** Ascending; of equally good choices the smallest. */
  readonly chosen: readonly number[];
  readonly worth: number;
}

/**
 * The choice of things of greatest worth that holds with each thing all its prerequisites: a least cut between the things
 * of positive worth and those of negative worth (Picard 1976). Worths may be broken; the worth is added up from the choice.
 *
 * Not valid for alternatives (any one of several): see `leastSet`. A ring of prerequisites is chosen whole or not at all.
 *
 * @param worth of each thing, any unit, below zero where it costs
 * @param prerequisites of each thing, by number
 * @throws Refusal `teardown.problem-unsound`
 * @see Picard, Management Science 22 (1976) 1268-1272, from memory; checked on newman1 of MineLib, Ann. Oper. Res. 206 (2013) 93-114
 */
export function maximumClosure(worth: readonly number[], prerequisites: readonly (readonly number[])[]): Closure {
  requireWorths(worth, prerequisites);
  const n = worth.length;
  const arcs = prerequisites.reduce((s, list) => s + list.length, 0);
  const flow = new MaxFlow(n + 2, n + arcs);
  worth.forEach((w, j) => {
    if (w > 0) flow.arc(n, j, w);
    if (w < 0) flow.arc(j, n + 1, -w);
    for (const k of prerequisites[j]!) flow.arc(j, k, Number.POSITIVE_INFINITY);
  });
  flow.run(n, n + 1);
  const near = flow.reached();
  const chosen = worth.flatMap((_, j) => (near[j] ? [j] : []));
  return { chosen, worth: chosen.reduce((s, j) => s + worth[j]!, 0) };
}
