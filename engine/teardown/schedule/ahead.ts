import type { Problem } from './problem.ts';

/** Earliest start and end of an operation from a minute of the clock on, its hands always there: calendars alone. */
export function alone(problem: Problem, op: number, clock: number): { start: number; end: number } {
  const { calendar, hands, minutes, pauses } = problem;
  const m = minutes[op]!;
  if (hands[op]!.persons === 0 || m === 0) return { start: clock, end: clock + m };
  const from = calendar.toWork(clock);
  const w = pauses[op] ? from : calendar.fits(from, m);
  return { start: calendar.startOf(w), end: calendar.endOf(w + m) };
}

/**
 * Earliest starts and ends where hands never lack and no jig is held by others: the critical path with calendars.
 * A jig that is booked is waited for, the soonest free of those that fit.
 * @param notBefore asked for every operation, after all that it waits for: a further time before which it cannot begin
 */
export function earliestTimes(
  problem: Problem,
  notBefore?: (op: number, start: Float64Array) => number,
): { start: Float64Array; end: Float64Array } {
  const { count, order, before, ready, stayOf, stays, jigs } = problem;
  const open = stays.map(({ jigs: fit }) => (clock: number) => {
    const soonest = fit.map((j) => {
      let t = clock;
      const { from, to } = jigs[j]!;
      for (let i = 0; i < from.length; i++) if (from[i]! <= t && to[i]! > t) t = to[i]!;
      return t;
    });
    return Math.min(...soonest);
  });
  const start = new Float64Array(count);
  const end = new Float64Array(count);
  for (const op of order) {
    let at = ready[op]!;
    for (const p of before[op]!) at = Math.max(at, end[p]!);
    if (notBefore) at = Math.max(at, notBefore(op, start));
    const s = stayOf[op]!;
    if (s >= 0) at = open[s]!(at);
    const times = alone(problem, op, at);
    start[op] = times.start;
    end[op] = times.end;
  }
  return { start, end };
}

/** Earliest end of everything behind an operation that ends at a minute of the clock. */
export function endAfter(problem: Problem, op: number, clock: number): number {
  const { order, before } = problem;
  const end = new Map<number, number>([[op, clock]]);
  let last = clock;
  for (const i of order) {
    if (i === op) continue;
    let at = -1;
    for (const p of before[i]!) at = Math.max(at, end.get(p) ?? -1);
    if (at < 0) continue;
    const e = alone(problem, i, at).end;
    end.set(i, e);
    last = Math.max(last, e);
  }
  return last;
}

/** Minutes from the start of each operation along the longest path behind it, nights not counted. */
export function minutesToEnd({ order, behind, minutes, count }: Problem): Float64Array {
  const left = new Float64Array(count);
  for (let k = count - 1; k >= 0; k--) {
    const op = order[k]!;
    let most = 0;
    for (const n of behind[op]!) most = Math.max(most, left[n]!);
    left[op] = minutes[op]! + most;
  }
  return left;
}
