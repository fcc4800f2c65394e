import type { Decoder } from './decode.ts';
import type { Problem } from './problem.ts';
import { pastOffs } from './timelines.ts';

/** Earliest start from a minute of the clock on with the hands that it has. */
export function soonest(
  problem: Problem,
  made: Pick<Decoder, 'crew' | 'start' | 'end'>,
  op: number,
  clock: number,
): number {
  const { calendar, pauses } = problem;
  const crew = Array.from(made.crew[op]!).filter((p) => p >= 0);
  if (crew.length === 0) return clock;
  const minutes = problem.minutes[op]!;
  let w = calendar.toWork(clock);
  for (;;) {
    const before = w;
    if (!pauses[op]) w = calendar.fits(w, minutes);
    w = pastOffs(problem, crew, w, 1) - 1;
    w = pastEngaged(problem, crew, w, pastOffs(problem, crew, w, minutes));
    if (w === before) return calendar.startOf(w);
  }
}

/** Where other work that lies between two working minutes ends, or the first of them. */
function pastEngaged({ engaged }: Problem, crew: readonly number[], w: number, end: number): number {
  let past = w;
  for (const p of crew) {
    const { from, to } = engaged[p]!;
    for (let i = 0; i < from.length && from[i]! < end; i++) if (to[i]! > w) past = Math.max(past, to[i]!);
  }
  return past;
}

/** Somebody works on both. */
export const shares = (a: Int32Array, b: Int32Array): boolean => a.some((p) => p >= 0 && b.includes(p));

/** End of an operation that begins at a minute of the clock, with the hands that it has. */
export function endFrom(problem: Problem, made: Pick<Decoder, 'crew'>, op: number, start: number): number {
  const { calendar, minutes } = problem;
  const crew = Array.from(made.crew[op]!).filter((p) => p >= 0);
  if (crew.length === 0 || minutes[op] === 0) return start + minutes[op]!;
  return calendar.endOf(pastOffs(problem, crew, calendar.toWork(start), minutes[op]!));
}
