import type { Project } from '../model.ts';
import { roomOf } from './room.ts';

/**
 * Serial schedule generation: the jobs of a list one after the other, each as early as what it waits for and the
 * resources allow. For some list this makes a shortest schedule.
 *
 * The readable form; `swiftDecoder` does the same in the hot loops and is held against it.
 *
 * @param list every job once, each after what it waits for
 * @returns start of each job
 */
export function serialSchedule(project: Project, list: ArrayLike<number>): Int32Array {
  const { durations, predecessors } = project;
  const starts = new Int32Array(project.count);
  const room = roomOf(project);
  for (const job of Array.from(list)) {
    let start = 0;
    for (const p of predecessors[job]!) start = Math.max(start, starts[p]! + durations[p]!);
    while (!room.fits(job, start)) start++;
    room.take(job, start);
    starts[job] = start;
  }
  return starts;
}
