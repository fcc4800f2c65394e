import { normalCdf } from '../../outlook/index.ts';
import { unreadable } from './refuse.ts';

/** Low, likely and high time of a job, and the jobs that wait for it, counted from 0. */
export interface PertJob {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  readonly successors: readonly number[];
}
export interface PertPath {
  /** Mean of the longest chain of mean times. */
  readonly mean: number;
  /** Sum of the variances along it. */
  readonly variance: number;
  /** The chain, in order; of several as long the one of greatest variance. */
  readonly path: readonly number[];
  /** Chance that this chain has ended by a time, 0 to 1. */
  chanceBy(time: number): number;
}

/**
 * PERT: mean, variance and chance of the longest chain, from three-point times.
 *
 * Mean (a + 4m + b)/6, variance ((b - a)/6) squared, summed along the chain as if the jobs were independent; the chance
 * by the normal distribution. Without spread it is 0 before the mean and 1 from it on.
 *
 * Not valid as the chance of the whole where other chains are nearly as long: it ignores them, and so is too hopeful.
 * Resources do not count.
 *
 * @param jobs times in one unit, not below zero, low to high
 * @throws Refusal `teardown.project-unreadable`: times reversed or below zero, a ring, an unknown successor
 * @see shopfloor reference, sections 2.4 (RS-11) and 5.1
 */
export function pertPath(jobs: readonly PertJob[]): PertPath {
  jobs.forEach(({ low, likely, high, successors }, j) => {
    if (!(low >= 0 && low <= likely && likely <= high && high < Number.POSITIVE_INFINITY))
      unreadable(
        `times of job ${j + 1}: ${low}, ${likely}, ${high}`,
        'low, likely, high, none below zero',
        'Put them in order.',
      );
    for (const s of successors)
      if (!jobs[s])
        unreadable(
          `job ${j + 1} names job ${s + 1} as its successor`,
          `jobs 1 to ${jobs.length}`,
          'Correct the number.',
        );
  });
  const mean = jobs.map((j) => (j.low + 4 * j.likely + j.high) / 6);
  const variance = jobs.map((j) => ((j.high - j.low) / 6) ** 2);
  const begins = Float64Array.from(jobs, () => 0);
  const spread = Float64Array.from(jobs, () => 0);
  const from = Int32Array.from(jobs, () => -1);
  let last = -1;
  for (const j of inOrder(jobs)) {
    const [end, v] = [begins[j]! + mean[j]!, spread[j]! + variance[j]!];
    for (const s of jobs[j]!.successors)
      if (longer(end, v, begins[s]!, spread[s]!)) {
        begins[s] = end;
        spread[s] = v;
        from[s] = j;
      }
    if (last < 0 || longer(end, v, begins[last]! + mean[last]!, spread[last]! + variance[last]!)) last = j;
  }
  const path: number[] = [];
  for (let j = last; j >= 0; j = from[j]!) path.unshift(j);
  const [total, sum] = last < 0 ? [0, 0] : [begins[last]! + mean[last]!, spread[last]! + variance[last]!];
  return {
    mean: total,
    variance: sum,
    path,
    chanceBy: (time) => (sum > 0 ? normalCdf((time - total) / Math.sqrt(sum)) : time >= total ? 1 : 0),
  };
}

/** Sums of sixths differ in the last digits by the way they were added. */
const SAME = 1e-9;
function longer(end: number, variance: number, thanEnd: number, thanVariance: number): boolean {
  const by = end - thanEnd;
  return Math.abs(by) <= SAME * (1 + Math.abs(end)) ? variance > thanVariance : by > 0;
}

function inOrder(jobs: readonly PertJob[]): number[] {
  const open = jobs.map(() => 0);
  for (const { successors } of jobs) for (const s of successors) open[s]!++;
  const order = open.flatMap((n, j) => (n === 0 ? [j] : []));
  for (let i = 0; i < order.length; i++)
    for (const s of jobs[order[i]!]!.successors) if (--open[s]! === 0) order.push(s);
  if (order.length < jobs.length)
    unreadable(
      'jobs that wait for each other in a ring',
      'every job can be done after those it waits for',
      'Take one of these waits away.',
    );
  return order;
}
