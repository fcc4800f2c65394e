import type { Project } from '../model.ts';
import { criticalPath } from './critical-path.ts';

/**
 * Energetic reasoning: would a schedule of some length ask more of a resource within a stretch of time than there is?
 *
 * Every job, pushed as far left and as far right as precedence and the length allow, takes at least the smaller share
 * within the stretch. Stretches run from an earliest start to a latest end. The shortest length that is not refuted is a
 * bound; it is found by halving, as a longer schedule only leaves more room.
 *
 * @param atLeast a bound known before
 * @param atMost length of a schedule: never refuted
 * @returns a length that no schedule is shorter than
 * @see Baptiste, Le Pape and Nuijten, Annals of Operations Research 92 (1999) 305-333 (from memory)
 */
export function energyBound(project: Project, atLeast: number, atMost: number): number {
  const { length, earliestStart, latestStart } = criticalPath(project);
  let low = Math.max(atLeast, length);
  let high = Math.max(atMost, low);
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (refuted(project, earliestStart, latestStart, middle - length)) low = middle + 1;
    else high = middle;
  }
  return low;
}

function refuted(project: Project, early: Int32Array, latest: Int32Array, room: number): boolean {
  const { count, durations, demands, capacities } = project;
  const kinds = capacities.length;
  const froms = Int32Array.from(new Set(early));
  const tos = Int32Array.from(new Set(latest.map((late, j) => late + room + durations[j]!)));
  const asked = new Float64Array(kinds);
  for (const from of froms)
    for (const to of tos) {
      if (to <= from) continue;
      asked.fill(0);
      for (let j = 0; j < count; j++) {
        const d = durations[j]!;
        const left = early[j]! + d - from;
        const right = to - latest[j]! - room;
        const within = Math.min(d, left, right, to - from);
        if (within <= 0) continue;
        for (let k = 0; k < kinds; k++) asked[k]! += within * demands[j * kinds + k]!;
      }
      for (let k = 0; k < kinds; k++) if (asked[k]! > capacities[k]! * (to - from)) return true;
    }
  return false;
}
