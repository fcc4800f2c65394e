import { criticalPath } from '../bound/critical-path.ts';
import type { Project } from '../model.ts';

/** LFT latest finish, LST latest start, MSLK least slack, SPT shortest time, MTS most that follow, GRPW greatest rank weight. */
export const PRIORITY_RULES = ['LFT', 'LST', 'MSLK', 'SPT', 'MTS', 'GRPW'] as const;
export type PriorityRule = (typeof PRIORITY_RULES)[number];

/**
 * What a rule makes of every job: the less, the earlier it is taken.
 *
 * MTS counts all jobs that follow, at once or later; GRPW adds to its own time those of the jobs that follow at once.
 * Both are turned round, so that less is more urgent here as well.
 *
 * @see shopfloor reference, section 2.2
 */
export function priorities(project: Project, rule: PriorityRule): Int32Array {
  const { count, durations, successors } = project;
  const { latestStart, slack } = criticalPath(project);
  switch (rule) {
    case 'LFT':
      return latestStart.map((late, j) => late + durations[j]!);
    case 'LST':
      return latestStart;
    case 'MSLK':
      return slack;
    case 'SPT':
      return durations.slice();
    case 'GRPW':
      return durations.map((d, j) => -successors[j]!.reduce((sum, s) => sum + durations[s]!, d));
    case 'MTS': {
      const all: Set<number>[] = Array.from({ length: count }, () => new Set());
      for (const j of Array.from(project.order).reverse())
        for (const s of successors[j]!) {
          all[j]!.add(s);
          for (const later of all[s]!) all[j]!.add(later);
        }
      return Int32Array.from(all, (set) => -set.size);
    }
  }
}

/** The list that takes, of the jobs that are free, always the one of least priority figure; ties by number. */
export function listBy(project: Project, priority: ArrayLike<number>): Int32Array {
  const open = project.predecessors.map((list) => list.length);
  const ready = open.flatMap((n, j) => (n === 0 ? [j] : []));
  const list = new Int32Array(project.count);
  for (let i = 0; i < project.count; i++) {
    let at = 0;
    ready.forEach((j, r) => {
      const by = priority[j]! - priority[ready[at]!]!;
      if (by < 0 || (by === 0 && j < ready[at]!)) at = r;
    });
    const [job] = ready.splice(at, 1) as [number];
    list[i] = job;
    for (const s of project.successors[job]!) if (--open[s]! === 0) ready.push(s);
  }
  return list;
}
