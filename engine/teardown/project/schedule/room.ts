import type { Project } from '../model.ts';

/** What is left of every resource at every unit of time. The readable form: one figure each, nothing packed. */
export interface Room {
  /** Can job j be done from `start` on? */
  fits(job: number, start: number): boolean;
  take(job: number, start: number): void;
}

export function roomOf(project: Project): Room {
  const { durations, demands, capacities } = project;
  const kinds = capacities.length;
  const used = new Map<number, number[]>();
  const at = (t: number) => used.get(t) ?? Array<number>(kinds).fill(0);
  return {
    fits(job, start) {
      for (let t = start; t < start + durations[job]!; t++)
        if (at(t).some((u, k) => u + demands[job * kinds + k]! > capacities[k]!)) return false;
      return true;
    },
    take(job, start) {
      for (let t = start; t < start + durations[job]!; t++)
        used.set(
          t,
          at(t).map((u, k) => u + demands[job * kinds + k]!),
        );
    },
  };
}

/** End of the last job. */
export function makespanOf(project: Project, starts: ArrayLike<number>): number {
  let end = 0;
  for (let j = 0; j < project.count; j++) end = Math.max(end, starts[j]! + project.durations[j]!);
  return end;
}
