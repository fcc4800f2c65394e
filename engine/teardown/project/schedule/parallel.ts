import { criticalPath } from '../bound/critical-path.ts';
import type { Project } from '../model.ts';
import { makespanOf, roomOf } from './room.ts';
import { type PriorityRule, priorities } from './rules.ts';

/**
 * Parallel schedule generation: at every moment in turn the free jobs are begun, the most urgent first, as long as the
 * resources allow. No resource idles while a free job would fit, which may exclude every shortest schedule.
 *
 * WCS, worst case slack: latest start less the latest moment to which beginning another free job could put this one
 * off. The reference lists it among the rules that take the most; as slack, the least is urgent, and so it is taken here.
 *
 * @returns start of each job
 * @see Kolisch, Journal of Operations Management 14 (1996) 179-192 (WCS from memory)
 */
export function parallelSchedule(project: Project, rule: PriorityRule | 'WCS'): Int32Array {
  const { count, durations, predecessors } = project;
  const starts = new Int32Array(count).fill(-1);
  const room = roomOf(project);
  const { latestStart } = criticalPath(project);
  const fixed = rule === 'WCS' ? null : priorities(project, rule);
  const over = (p: number, now: number) => starts[p]! >= 0 && starts[p]! + durations[p]! <= now;
  let left = count;
  for (let now = 0; left > 0; ) {
    const free: number[] = [];
    for (let j = 0; j < count; j++)
      if (starts[j]! < 0 && predecessors[j]!.every((p) => over(p, now)) && room.fits(j, now)) free.push(j);
    if (free.length === 0) {
      now = nextEnd(project, starts, now);
      continue;
    }
    const figure = (j: number) => fixed?.[j] ?? latestStart[j]! - putOff(project, free, j, now, starts);
    const job = free.reduce((a, b) => (figure(b) < figure(a) ? b : a));
    room.take(job, now);
    starts[job] = now;
    left--;
  }
  return starts;
}

function nextEnd({ count, durations }: Project, starts: Int32Array, now: number): number {
  let next = Number.POSITIVE_INFINITY;
  for (let j = 0; j < count; j++)
    if (starts[j]! >= 0 && starts[j]! + durations[j]! > now) next = Math.min(next, starts[j]! + durations[j]!);
  return next;
}

/** Latest moment at which job j can begin if another of the free jobs is begun now. */
function putOff(project: Project, free: readonly number[], j: number, now: number, starts: Int32Array): number {
  let latest = now;
  for (const i of free) {
    if (i === j) continue;
    const room = roomOf(project);
    starts.forEach((s, other) => {
      if (s >= 0) room.take(other, s);
    });
    room.take(i, now);
    let start = now;
    const end = Math.max(now + project.durations[i]!, makespanOf(project, starts));
    while (start < end && !room.fits(j, start)) start++;
    latest = Math.max(latest, start);
  }
  return latest;
}
