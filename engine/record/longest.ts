/**
 * Longest run of figures that never fall, as indices; what is left out contradicts it.
 * Of runs of one length the one with the higher figures is kept: more flown is the worse side.
 */
export function longestRising(values: readonly number[]): Set<number> {
  const n = values.length;
  const tails: number[] = [];
  const back = new Array<number>(n).fill(-1);
  for (let k = n - 1; k >= 0; k--) {
    const x = -values[k]!;
    let a = 0;
    let b = tails.length;
    while (a < b) {
      const mid = (a + b) >> 1;
      if (-values[tails[mid]!]! <= x) a = mid + 1;
      else b = mid;
    }
    back[k] = a > 0 ? tails[a - 1]! : -1;
    tails[a] = k;
  }
  const kept = new Set<number>();
  for (let k = tails.at(-1) ?? -1; k >= 0; k = back[k]!) kept.add(k);
  return kept;
}
