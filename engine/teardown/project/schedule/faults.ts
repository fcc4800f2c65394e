import type { Project } from '../model.ts';

/**
 * What is wrong with a schedule, in words: written anew from the rules, sharing nothing with what makes schedules.
 *
 * @param starts start of each job
 * @returns an empty list where it keeps every rule
 */
export function faultsOf(project: Project, starts: ArrayLike<number>): string[] {
  const faults: string[] = [];
  const { count, durations, capacities, demands } = project;
  if (starts.length !== count) return [`${starts.length} starts of ${count} jobs`];
  for (let j = 0; j < count; j++) {
    const start = starts[j]!;
    if (!Number.isInteger(start) || start < 0) faults.push(`job ${j + 1} starts at ${start}`);
    for (const s of project.successors[j]!)
      if (starts[s]! < start + durations[j]!) faults.push(`job ${s + 1} starts before job ${j + 1} has ended`);
  }
  // What is taken only rises where a job starts.
  for (let j = 0; j < count; j++)
    for (let k = 0; k < capacities.length; k++) {
      let taken = 0;
      for (let i = 0; i < count; i++)
        if (starts[i]! <= starts[j]! && starts[j]! < starts[i]! + durations[i]!)
          taken += demands[i * capacities.length + k]!;
      if (taken > capacities[k]!) faults.push(`resource ${k + 1}: ${taken} of ${capacities[k]} at ${starts[j]}`);
    }
  return faults;
}
