/** Ranks, from 1, of the order statistics that hold a percentile between them; null where the sample does not reach. */
export interface Ranks {
  readonly low: number | null;
  readonly high: number | null;
}

/** The rank of the sample's own percentile: the smallest with at least this share of the sample at or below it. */
export const rankOf = (count: number, share: number): number => Math.min(count, Math.max(1, Math.ceil(count * share)));

/**
 * Between which order statistics a percentile lies, whatever the distribution.
 *
 * What: of `count` independent draws the number at or below the percentile is binomial (count, share); the low rank is
 * the largest that lies above it with a chance of at most (1 − level) / 2, the high rank the smallest that lies below it so.
 * How: the binomial masses are built up from the mode by their ratios and divided by their sum: exact to rounding.
 * Not valid for: draws that depend on each other.
 * @param count 1 to some millions
 * @param share 0 < share < 1
 * @returns ranks from 1; null where even the extreme draw is not far enough out
 * @see distribution-free bounds of a quantile by order statistics; textbook, held against a statistics package
 */
export function ranksAround(count: number, share: number, level = 0.95): Ranks {
  const mode = Math.min(count, Math.floor((count + 1) * share));
  const odds = share / (1 - share);
  const NOTHING = 1e-20;
  const below: number[] = [];
  for (let k = mode, mass = 1; k > 0; k--) {
    mass *= k / ((count - k + 1) * odds);
    below.push(mass);
    if (mass < NOTHING) break;
  }
  const above: number[] = [];
  for (let k = mode, mass = 1; k < count; k++) {
    mass *= ((count - k) * odds) / (k + 1);
    above.push(mass);
    if (mass < NOTHING) break;
  }
  const lowest = mode - below.length;
  const masses = [...below.reverse(), 1, ...above];
  const whole = masses.reduce((s, m) => s + m, 0);
  const tail = ((1 - level) / 2) * whole;
  let low: number | null = null;
  for (let i = 0, sum = 0; i < masses.length; i++) {
    sum += masses[i]!;
    if (sum > tail) {
      low = lowest + i >= 1 ? lowest + i : null;
      break;
    }
  }
  let high: number | null = null;
  for (let i = masses.length - 1, sum = 0; i >= 0; i--) {
    sum += masses[i]!;
    if (sum > tail) {
      high = lowest + i + 1 <= count ? lowest + i + 1 : null;
      break;
    }
  }
  return { low, high };
}
