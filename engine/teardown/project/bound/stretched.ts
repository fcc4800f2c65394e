import type { Project } from '../model.ts';
import { criticalPath } from './critical-path.ts';

/**
 * Stretched critical path: beside one longest chain, a job that is not on it and does not fit in one piece while the
 * chain runs makes the whole longer by what is missing.
 *
 * @returns a length that no schedule is shorter than
 * @see Stinson, Davis and Khumawala, AIIE Transactions 10 (1978) 252-259 (from memory)
 */
export function stretchedPath(project: Project): number {
  const { count, durations, demands, capacities } = project;
  const kinds = capacities.length;
  const { length, earliestStart, latestStart } = criticalPath(project);
  const chain = oneChain(project);
  const on = new Uint8Array(count);
  /** The job of the chain that runs at a time. */
  const runs = new Int32Array(length).fill(-1);
  for (const j of chain) {
    on[j] = 1;
    runs.fill(j, earliestStart[j]!, earliestStart[j]! + durations[j]!);
  }
  const beside = (j: number, t: number): boolean => {
    for (let k = 0; k < kinds; k++)
      if (demands[runs[t]! * kinds + k]! + demands[j * kinds + k]! > capacities[k]!) return false;
    return true;
  };
  let most = length;
  for (let j = 0; j < count; j++) {
    if (on[j]) continue;
    let longest = 0;
    let piece = 0;
    for (let t = earliestStart[j]!; t < latestStart[j]! + durations[j]!; t++) {
      piece = beside(j, t) ? piece + 1 : 0;
      if (piece > longest) longest = piece;
    }
    most = Math.max(most, length + durations[j]! - Math.min(longest, durations[j]!));
  }
  return most;
}

/** Jobs of one longest chain: each begins where the one before it ends. */
function oneChain(project: Project): number[] {
  const { durations, predecessors } = project;
  const { length, earliestStart } = criticalPath(project);
  const ends = (j: number) => earliestStart[j]! + durations[j]!;
  const chain: number[] = [];
  let at = Array.from({ length: project.count }, (_, j) => j).find((j) => ends(j) === length);
  while (at !== undefined) {
    const start: number = earliestStart[at]!;
    chain.push(at);
    at = Array.from(predecessors[at]!).find((p) => ends(p) === start);
  }
  return chain;
}
