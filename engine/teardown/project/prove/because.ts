import type { Project } from '../model.ts';
import type { Bounds } from './bounds.ts';

/** Says of a moment what was certainly done then, as few and as weak statements as will do. */
export interface Because {
  /**
   * Statements that together take more of one resource at time t than `spare` of job j leaves; j = -1: than there is.
   * The bounds must stand as they stood then.
   */
  full(t: number, j: number, take: (x: number, value: number) => void): void;
}

/** @param asked what is asked of every figure already: such statements cost nothing */
export function becauseOf(project: Project, bounds: Bounds, asked: Int32Array): Because {
  const { count, durations, demands, capacities } = project;
  const kinds = capacities.length;
  const certain = new Int32Array(count);
  const cost = new Int32Array(count);
  const sums = new Int32Array(kinds);

  /** 0 always true, 1 asked already on both sides, more where it asks for something new. */
  const costOf = (i: number, t: number): number => {
    const always = bounds.at[1]!;
    let c = 0;
    for (let side = 0; side < 2; side++) {
      const x = 2 * i + side;
      const v = side ? -t : t - durations[i]! + 1;
      if (always[x]! >= v) continue;
      c += asked[x]! >= v ? 1 : bounds.at[bounds.level]![x]! >= v ? 4 : 8;
    }
    return c;
  };
  return {
    full(t, j, take) {
      const { least } = bounds;
      let n = 0;
      sums.fill(0);
      for (let i = 0; i < count; i++) {
        if (i === j || -least[2 * i + 1]! > t || least[2 * i]! + durations[i]! <= t) continue;
        certain[n++] = i;
        cost[i] = costOf(i, t);
        for (let k = 0; k < kinds; k++) sums[k]! += demands[i * kinds + k]!;
      }
      let k = 0;
      const beyond = (r: number) => capacities[r]! - (j < 0 ? 0 : demands[j * kinds + r]!);
      while (k < kinds && sums[k]! <= beyond(k)) k++;
      let left = sums[k]! - beyond(k);
      // Dear ones are left out first, as long as what stays is still too much.
      for (;;) {
        let drop = -1;
        for (let c = 0; c < n; c++) {
          const i = certain[c]!;
          const r = demands[i * kinds + k]!;
          if (r >= left && r > 0) continue;
          if (drop < 0 || r === 0 || cost[i]! > cost[certain[drop]!]!) {
            drop = c;
            if (r === 0) break;
          }
        }
        if (drop < 0) break;
        left -= demands[certain[drop]! * kinds + k]!;
        certain[drop] = certain[--n]!;
      }
      for (let c = 0; c < n; c++) {
        const i = certain[c]!;
        take(2 * i, t - durations[i]! + 1);
        take(2 * i + 1, -t);
      }
    },
  };
}
