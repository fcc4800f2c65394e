import type { Project, ProjectInput } from './model.ts';
import { unreadable } from './refuse.ts';

/** Sum of all times: the hot loops keep one figure for every unit of time. */
const LONGEST = 1_000_000;

/**
 * Makes a project of plain lists and checks it.
 *
 * Jobs are put in an order in which every job stands after what it waits for; where that fails they go round in a ring.
 *
 * Not valid for jobs that may be interrupted, done in several ways, or that use resources up.
 *
 * @param input times in whole units, shares of resources as whole numbers, jobs counted from 0
 * @throws Refusal `teardown.project-unreadable`: broken or negative figures, more demanded than there is, a ring
 */
export function projectOf(input: ProjectInput): Project {
  const count = input.durations.length;
  const kinds = input.capacities.length;
  if (count === 0) unreadable('no job', 'at least one job', 'Give the jobs of the project.');
  if (input.demands.length !== count || input.successors.length !== count)
    unreadable(
      `${count} times, ${input.demands.length} lists of demands, ${input.successors.length} lists of successors`,
      'one of each per job',
      'Give a line of demands and a line of successors for every job.',
    );
  let total = 0;
  for (let j = 0; j < count; j++) total += whole(input.durations[j]!, `time of job ${j + 1}`);
  if (total > LONGEST)
    unreadable(
      `times that sum to ${total}`,
      `at most ${LONGEST} units`,
      'Count in a coarser unit, for example minutes.',
    );
  for (let k = 0; k < kinds; k++) whole(input.capacities[k]!, `capacity of resource ${k + 1}`);
  const demands = new Int32Array(count * kinds);
  input.demands.forEach((row, j) => {
    if (row.length !== kinds)
      unreadable(`${row.length} demands of job ${j + 1}`, `one for each of ${kinds} resources`, 'Complete its line.');
    for (let k = 0; k < kinds; k++) {
      const asked = whole(row[k]!, `demand of job ${j + 1}`);
      if (asked > input.capacities[k]! && input.durations[j]! > 0)
        unreadable(
          `job ${j + 1} takes ${asked} of resource ${k + 1}`,
          `at most its capacity, ${input.capacities[k]}`,
          'Raise the capacity or lower the demand: as it stands the job can never be done.',
        );
      demands[j * kinds + k] = asked;
    }
  });
  const successors = input.successors.map((list, j) => jobsOf(list, count, j));
  const before: number[][] = Array.from({ length: count }, () => []);
  successors.forEach((list, j) => {
    for (const s of list) before[s]!.push(j);
  });
  return {
    count,
    durations: Int32Array.from(input.durations),
    capacities: Int32Array.from(input.capacities),
    demands,
    successors,
    predecessors: before.map((list) => Int32Array.from(list)),
    order: orderOf(successors, before),
  };
}

function whole(value: number, what: string): number {
  if (!Number.isInteger(value) || value < 0 || value > 1e9)
    unreadable(`${what}: ${value}`, 'a whole number, not below zero', 'Correct the figure.');
  return value;
}

function jobsOf(list: ArrayLike<number>, count: number, job: number): Int32Array {
  const seen = [...new Set(Array.from(list))].sort((a, b) => a - b);
  for (const s of seen)
    if (!Number.isInteger(s) || s < 0 || s >= count)
      unreadable(`job ${job + 1} names job ${s + 1} as its successor`, `jobs 1 to ${count}`, 'Correct the number.');
  return Int32Array.from(seen);
}

function orderOf(successors: readonly Int32Array[], before: readonly (readonly number[])[]): Int32Array {
  const open = before.map((list) => list.length);
  const order: number[] = [];
  open.forEach((n, j) => {
    if (n === 0) order.push(j);
  });
  for (let i = 0; i < order.length; i++) for (const s of successors[order[i]!]!) if (--open[s]! === 0) order.push(s);
  if (order.length < successors.length)
    unreadable(
      `jobs that wait for each other in a ring: ${ringOf(open, before)
        .map((j) => j + 1)
        .join(', ')}`,
      'every job can be done after those it waits for',
      'Take one of these waits away.',
    );
  return Int32Array.from(order);
}

/** Walks back along jobs that were never free until one is met again. */
function ringOf(open: readonly number[], before: readonly (readonly number[])[]): number[] {
  const way: number[] = [];
  let at = open.findIndex((n) => n > 0);
  while (!way.includes(at)) {
    way.push(at);
    at = before[at]!.find((p) => open[p]! > 0)!;
  }
  return way.slice(way.indexOf(at)).reverse();
}
