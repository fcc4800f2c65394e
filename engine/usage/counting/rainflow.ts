import type { CountedCycle } from '../model.ts';
import { peaksOnly } from './peaks-only.ts';

/** Takes one counted range: its two stresses in the order in which they came, and ½ or 1. */
export type Counted = (from: number, to: number, count: number) => void;
const collect = (count: (each: Counted) => void): CountedCycle[] => {
  const cycles: CountedCycle[] = [];
  count((a, b, n) => cycles.push({ max: Math.max(a, b), min: Math.min(a, b), count: n }));
  return cycles;
};

/**
 * Rainflow counting of a history, half cycles left open counted as halves.
 *
 * Reversals go on a stack. The last range X closes the one before it, Y, once it is as large: Y counts one and both its
 * points go, unless Y holds the start of the history; then Y counts a half and only the start goes. What is left at the
 * end counts a half each.
 *
 * One pass; plateaus and points on the way are dropped first. A history of fewer than two different points has none.
 *
 * @param points any unit of stress
 * @returns cycles in the order in which they close
 * @throws Refusal `foundation.not-finite`
 * @see ASTM E1049-85 (2017), 5.4.4
 */
export const rainflow = (points: ArrayLike<number>): CountedCycle[] => collect((each) => eachRainflow(points, each));

/** The same, handing over each cycle as it closes: for histories of millions of points. */
export function eachRainflow(points: ArrayLike<number>, each: Counted): void {
  const reversals = peaksOnly(points);
  const stack = new Float64Array(reversals.length);
  let start = 0;
  let n = 0;
  for (const p of reversals) {
    stack[n++] = p;
    while (n - start >= 3) {
      const x = Math.abs(stack[n - 1]! - stack[n - 2]!);
      const y = Math.abs(stack[n - 2]! - stack[n - 3]!);
      if (x < y) break;
      if (n - start === 3) {
        each(stack[n - 3]!, stack[n - 2]!, 0.5);
        start++;
      } else {
        each(stack[n - 3]!, stack[n - 2]!, 1);
        stack[n - 3] = stack[n - 1]!;
        n -= 2;
      }
    }
  }
  for (let i = start; i + 1 < n; i++) each(stack[i]!, stack[i + 1]!, 0.5);
}

/** Each range between neighbouring reversals, up and down, as a half. @see ASTM E1049-85 (2017), 5.4.2 */
export function simpleRange(points: ArrayLike<number>): CountedCycle[] {
  const reversals = peaksOnly(points);
  return collect((each) => {
    for (let i = 0; i + 1 < reversals.length; i++) each(reversals[i]!, reversals[i + 1]!, 0.5);
  });
}

/** Counts Y whenever X closes it, whatever it holds; returns what is left on the stack. */
function eachClosed(reversals: Float64Array, each: Counted): Float64Array {
  const stack = new Float64Array(reversals.length);
  let n = 0;
  for (const p of reversals) {
    stack[n++] = p;
    while (n >= 3) {
      const [a, b] = [stack[n - 3]!, stack[n - 2]!];
      if (Math.abs(p - b) < Math.abs(b - a)) break;
      each(a, b, 1);
      stack[n - 3] = p;
      n -= 2;
    }
  }
  return stack.slice(0, n);
}

/**
 * Range pairs: a range and the one that closes it count one; what is left is counted backwards from the end. A single
 * range that stays alone counts one: of the two counts that the standard allows, the harsher.
 * @see ASTM E1049-85 (2017), 5.4.3
 */
export const rangePair = (points: ArrayLike<number>): CountedCycle[] =>
  collect((each) => {
    const left = eachClosed(peaksOnly(points), each);
    const alone = eachClosed(left.reverse(), each);
    if (alone.length === 2) each(alone[0]!, alone[1]!, 1);
  });

/**
 * Rainflow of a history that repeats: counted from its highest peak round to it again, where every range closes and no
 * halves are left.
 * @see ASTM E1049-85 (2017), 5.4.5
 */
export function repeatingRainflow(points: ArrayLike<number>): CountedCycle[] {
  const reversals = peaksOnly(points);
  if (reversals.length < 2) return [];
  let highest = 0;
  for (let i = 1; i < reversals.length; i++) if (reversals[i]! > reversals[highest]!) highest = i;
  const round = new Float64Array(reversals.length + 1);
  round.set(reversals.subarray(highest));
  round.set(reversals.subarray(0, highest + 1), reversals.length - highest);
  return collect((each) => {
    eachClosed(peaksOnly(round), each);
  });
}
