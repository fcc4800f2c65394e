import { searchLists } from '../project/index.ts';
import { minutesToEnd } from './ahead.ts';
import { DAY_MIN, DAYS } from './calendar.ts';
import { Decoder } from './decode.ts';
import type { Problem } from './problem.ts';

/** Lists tried where nobody says how many: about a tenth of a second for one job of two hundred operations. */
export const EFFORT = 120;
const SPAN = DAYS * DAY_MIN;

/** The best list found, every operation once, each after what it waits for. */
export interface Found {
  readonly list: Int32Array;
  readonly effort: number;
}

/**
 * Looks for a list whose schedule ends early.
 *
 * What: the end of the last operation counts; of several jobs with the same last end the sum of their ends.
 * How: the search over lists of the room `project`, each list read forward, read backward from its end, and forward
 * again (double justification); begun with the order of the plan and the order of most work behind.
 */
export function searchOrder(problem: Problem, mirror: Problem, bound: number, seed: number, effort: number): Found {
  const { count, jobs } = problem;
  if (count === 0) return { list: new Int32Array(0), effort: 0 };
  const forward = new Decoder(problem);
  const backward = new Decoder(mirror);
  const ready = new Float64Array(count);
  const key = new Float64Array(count);
  const turned = new Int32Array(count);
  const kept = new Int32Array(count);
  const value = (end: number): number => (jobs === 1 ? end : end + sumOfEnds(problem, forward.end) / jobs / SPAN / 2);

  const decode = (list: Int32Array): number => {
    const first = forward.decode(list);
    const was = value(first);
    if (first <= bound || !Number.isFinite(first)) return was;
    kept.set(list);
    sortBy(list, forward.start);
    for (let i = 0; i < count; i++) {
      turned[i] = list[count - 1 - i]!;
      key[i] = -forward.end[i]!;
    }
    sortBy(turned, key);
    ready.fill(SPAN - first);
    if (!Number.isFinite(backward.decode(turned, problem.minutes, ready))) return was;
    for (let i = 0; i < count; i++) {
      list[i] = turned[count - 1 - i]!;
      key[i] = -backward.end[i]!;
    }
    sortBy(list, key);
    const now = value(forward.decode(list));
    if (now < was) return now;
    list.set(kept);
    return was;
  };

  const behind = minutesToEnd(problem);
  const urgency = Float64Array.from(behind, (m) => -m);
  const planned = problem.order.slice();
  const urgent = planned.slice();
  sortBy(urgent, urgency);
  const byJob = planned.slice();
  sortBy(byJob, Float64Array.from(problem.job));
  const found = searchLists({
    count,
    before: problem.before,
    decode,
    seed,
    effort,
    urgency,
    first: jobs > 1 ? [urgent, byJob, planned] : [urgent, planned],
    ...(jobs === 1 ? { bound } : {}),
  });
  return { list: found.list, effort: found.effort };
}

function sumOfEnds({ job, jobs }: Problem, end: Float64Array): number {
  const last = new Float64Array(jobs);
  for (let i = 0; i < end.length; i++) last[job[i]!] = Math.max(last[job[i]!]!, end[i]!);
  return last.reduce((a, b) => a + b, 0);
}

/** By insertion: keeps the order of equals, and is quick on what is almost in order. */
export function sortBy(list: Int32Array, key: Float64Array): void {
  for (let i = 1; i < list.length; i++) {
    const op = list[i]!;
    const k = key[op]!;
    let at = i;
    while (at > 0 && key[list[at - 1]!]! > k) {
      list[at] = list[at - 1]!;
      at--;
    }
    list[at] = op;
  }
}
