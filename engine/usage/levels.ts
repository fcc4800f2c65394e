/**
 * How often levels are passed, one way: levels rise, times an hour fall. Between levels log-linear, to a level that is
 * never passed straight; below the first level as often as the first, beyond the last never.
 */
export interface Levels {
  readonly at: Float64Array;
  readonly times: Float64Array;
}

export const firstOf = (l: Levels): number => l.at[0]!;
export const lastOf = (l: Levels): number => l.at[l.at.length - 1]!;
/** Events an hour that pass the first level. */
export const allOf = (l: Levels): number => l.times[0]!;

const between = (a: number, b: number, share: number): number =>
  b > 0 ? a * Math.exp(share * Math.log(b / a)) : a * (1 - share);
const shareOf = (a: number, b: number, times: number): number =>
  b > 0 ? Math.log(times / a) / Math.log(b / a) : (a - times) / a;

/** Times an hour that a level is passed. */
export function timesAt(l: Levels, level: number): number {
  const n = l.at.length;
  if (level <= l.at[0]!) return l.times[0]!;
  if (level > l.at[n - 1]!) return 0;
  let i = 1;
  for (let low = 0, high = n - 1; high - low > 1; ) {
    const mid = (low + high) >> 1;
    if (l.at[mid]! < level) low = mid;
    else high = mid;
    i = high;
  }
  const [a, b] = [l.times[i - 1]!, l.times[i]!];
  if (a === b) return a;
  return between(a, b, (level - l.at[i - 1]!) / (l.at[i]! - l.at[i - 1]!));
}

/**
 * Level that is passed so often: the lowest such level, or with `highest` the highest. 0 where it is asked more often
 * than any level is passed; the last level where it is asked more seldom than that is passed.
 */
export function levelAt(l: Levels, times: number, highest = false): number {
  const n = l.at.length;
  if (times > l.times[0]!) return 0;
  let low = -1;
  let high = n;
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (highest ? l.times[mid]! >= times : l.times[mid]! > times) low = mid;
    else high = mid;
  }
  if (low < 0) return l.at[0]!;
  if (high === n) return l.at[n - 1]!;
  const [a, b] = [l.times[low]!, l.times[high]!];
  return l.at[low]! + shareOf(a, b, times) * (l.at[high]! - l.at[low]!);
}

/** Natural logarithm by which occurrences may fall within one band. */
const FALL = 0.15;
/** Bands to a level that is never passed. */
const TO_NONE = 20;
/**
 * Cuts occurrences into bands: each stretch between two levels into `parts`, or, without, so that they fall by much the
 * same share in every band. Returns times an hour, falling, from those of the first level to those of the last.
 */
export function cutsOf(l: Levels, parts?: number): number[] {
  const cuts: number[] = [l.times[0]!];
  const cut = (to: number, n: number) => {
    const from = cuts.at(-1)!;
    for (let k = 1; k < n; k++) cuts.push(between(from, to, k / n));
    if (to < from) cuts.push(to);
  };
  for (let i = 1; i < l.at.length; i++) {
    const to = l.times[i]!;
    const from = cuts.at(-1)!;
    if (to === from) continue;
    if (parts !== undefined) cut(to, parts);
    else if (to === 0) {
      cut(l.times[i - 1]!, 1);
      cut(0, TO_NONE);
    } else {
      const bands = Math.log(from / to) / FALL;
      if (bands > 0.5 || i === l.at.length - 1) cut(to, Math.ceil(bands));
    }
  }
  return cuts;
}
