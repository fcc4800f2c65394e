import type { Project } from '../model.ts';

export interface CriticalPath {
  /** Length of the longest chain. */
  readonly length: number;
  readonly earliestStart: Int32Array;
  /** Without making the whole longer than its length. */
  readonly latestStart: Int32Array;
  readonly slack: Int32Array;
  /** Jobs without slack, in an order in which they can be done. */
  readonly critical: readonly number[];
}

/**
 * The critical path method: how long the longest chain of waits is, and how much room every job has.
 *
 * Forward: the latest finish of what it waits for. Backward: the earliest start of what waits for it. Resources do not
 * count here.
 *
 * @returns times in the units of the project, from its start
 */
export function criticalPath(project: Project): CriticalPath {
  const { count, durations, order } = project;
  const earliestStart = new Int32Array(count);
  let length = 0;
  for (const j of order) {
    for (const p of project.predecessors[j]!)
      earliestStart[j] = Math.max(earliestStart[j]!, earliestStart[p]! + durations[p]!);
    length = Math.max(length, earliestStart[j]! + durations[j]!);
  }
  const latestStart = new Int32Array(count);
  for (const j of Array.from(order).reverse()) {
    let finish = length;
    for (const s of project.successors[j]!) finish = Math.min(finish, latestStart[s]!);
    latestStart[j] = finish - durations[j]!;
  }
  const slack = latestStart.map((late, j) => late - earliestStart[j]!);
  return { length, earliestStart, latestStart, slack, critical: Array.from(order).filter((j) => slack[j] === 0) };
}
