import type { Project } from '../model.ts';
import { packedOf } from './packed.ts';
import { timelineOf } from './timeline.ts';

/** Turns lists into schedules without taking memory: the hot form of `serialSchedule` and `doubleJustified`. */
export interface SwiftDecoder {
  /** Serial schedule of a list, then double justification; the list is put in order of the starts. Returns the makespan. */
  decode(list: Int32Array): number;
  /** Serial schedule alone; the list stays. */
  serial(list: Int32Array): number;
  /** Starts of the last one; the same array all the time. */
  readonly starts: Int32Array;
}

export function swiftDecoder(project: Project): SwiftDecoder {
  const { count, durations } = project;
  const horizon = durations.reduce((sum, d) => sum + d, 0);
  const line = timelineOf(packedOf(project), durations, horizon);
  const [before, beforeAt] = flat(project.predecessors);
  const [after, afterAt] = flat(project.successors);
  const starts = new Int32Array(count);
  const late = new Int32Array(count);
  const key = new Int32Array(count);
  const turned = new Int32Array(count);

  const forward = (list: Int32Array): number => {
    let makespan = 0;
    for (let i = 0; i < count; i++) {
      const job = list[i]!;
      let from = 0;
      for (let p = beforeAt[job]!; p < beforeAt[job + 1]!; p++) {
        const end = starts[before[p]!]! + durations[before[p]!]!;
        if (end > from) from = end;
      }
      const start = line.earliest(job, from);
      line.take(job, start);
      starts[job] = start;
      if (start + durations[job]! > makespan) makespan = start + durations[job]!;
    }
    line.clear(makespan);
    return makespan;
  };
  const backward = (list: Int32Array, end: number) => {
    for (let i = 0; i < count; i++) {
      const job = list[i]!;
      let until = end;
      for (let s = afterAt[job]!; s < afterAt[job + 1]!; s++) if (late[after[s]!]! < until) until = late[after[s]!]!;
      const start = line.latest(job, until);
      line.take(job, start);
      late[job] = start;
    }
    line.clear(end);
  };
  return {
    serial: forward,
    decode(list) {
      const end = forward(list);
      for (let i = 0; i < count; i++) {
        turned[i] = list[count - 1 - i]!;
        key[i] = -(starts[i]! + durations[i]!);
      }
      sortBy(turned, key);
      backward(turned, end);
      for (let i = 0; i < count; i++) list[i] = turned[count - 1 - i]!;
      sortBy(list, late);
      const makespan = forward(list);
      sortBy(list, starts);
      return makespan;
    },
    starts,
  };
}

/** By insertion: keeps the order of equals, and is quick on what is almost in order. */
function sortBy(list: Int32Array, key: Int32Array): void {
  for (let i = 1; i < list.length; i++) {
    const job = list[i]!;
    const k = key[job]!;
    let at = i;
    while (at > 0 && key[list[at - 1]!]! > k) {
      list[at] = list[at - 1]!;
      at--;
    }
    list[at] = job;
  }
}

function flat(lists: readonly Int32Array[]): [Int32Array, Int32Array] {
  const at = new Int32Array(lists.length + 1);
  lists.forEach((list, j) => {
    at[j + 1] = at[j]! + list.length;
  });
  return [Int32Array.from(lists.flatMap((list) => Array.from(list))), at];
}
