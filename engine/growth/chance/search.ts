import type { CrackSize } from '../model.ts';
import type { LifeProblem } from './problem.ts';

const TRIES = 60;
const CLOSE = 1e-10;
const TOUGHNESSES = [0.25, 1, 4];

/** Whether the strength never rises from one of these sizes to the next, at a low, the middle and a high toughness. */
export const neverRises = (problem: LifeProblem, sizes: readonly CrackSize[]): boolean =>
  TOUGHNESSES.every((t) => {
    const strength = sizes.map(problem.strengthOf(t));
    return strength.every((s, i) => i === 0 || s <= strength[i - 1]!);
  });

/** The first place, from 0 to last, where a margin is not above zero; null where it is everywhere. */
export function firstOf(margin: (i: number) => number, last: number): number | null {
  for (let i = 0; i <= last; i++) if (margin(i) <= 0) return i;
  return null;
}
/** The same where the margin never rises. */
export function firstFalling(margin: (i: number) => number, last: number): number | null {
  if (margin(last) > 0) return null;
  let [low, high] = [-1, last];
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (margin(mid) <= 0) high = mid;
    else low = mid;
  }
  return high;
}
/** Where a margin that is above zero at 0 and not above it at 1 passes zero; never before it does. */
export function zeroOf(margin: (share: number) => number): number {
  let [low, high] = [0, 1];
  let [above, below] = [margin(0), margin(1)];
  for (let i = 0; i < TRIES && high - low > CLOSE; i++) {
    const guess =
      i % 3 === 2 || !(above < Number.POSITIVE_INFINITY) || below === above
        ? (low + high) / 2
        : low + ((high - low) * above) / (above - below);
    const mid = Math.min(Math.max(guess, low + CLOSE / 2), high - CLOSE / 2);
    const m = margin(mid);
    if (m <= 0) [high, below] = [mid, m];
    else [low, above] = [mid, m];
  }
  return high;
}
