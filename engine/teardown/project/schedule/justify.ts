import type { Project } from '../model.ts';
import { makespanOf, roomOf } from './room.ts';

/**
 * Double justification: every job as late as it can without moving the end, the last first; then every job as early as
 * it can, the first first. Never makes a schedule longer.
 *
 * The readable form; `swiftDecoder` does the same in the hot loops and is held against it.
 *
 * @param starts a schedule that keeps precedence and resources
 * @param list breaks ties of equal times: every job after what it waits for
 * @returns start of each job, and the jobs by start
 * @see Valls, Ballestin and Quintanilla, EJOR 165 (2005) 375-386
 */
export function doubleJustified(
  project: Project,
  starts: ArrayLike<number>,
  list: ArrayLike<number>,
): { starts: Int32Array; list: Int32Array } {
  const { durations, predecessors, successors } = project;
  const end = makespanOf(project, starts);
  const late = new Int32Array(project.count);
  const toTheRight = Array.from(list)
    .reverse()
    .sort((a, b) => starts[b]! + durations[b]! - (starts[a]! + durations[a]!));
  let room = roomOf(project);
  for (const job of toTheRight) {
    let start = end - durations[job]!;
    for (const s of successors[job]!) start = Math.min(start, late[s]! - durations[job]!);
    while (!room.fits(job, start)) start--;
    room.take(job, start);
    late[job] = start;
  }
  const early = new Int32Array(project.count);
  const toTheLeft = toTheRight.reverse().sort((a, b) => late[a]! - late[b]!);
  room = roomOf(project);
  for (const job of toTheLeft) {
    let start = 0;
    for (const p of predecessors[job]!) start = Math.max(start, early[p]! + durations[p]!);
    while (!room.fits(job, start)) start++;
    room.take(job, start);
    early[job] = start;
  }
  return { starts: early, list: Int32Array.from(toTheLeft.sort((a, b) => early[a]! - early[b]!)) };
}
