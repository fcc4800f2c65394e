import type { AndOrProblem } from '../../model.ts';

/** The least cost by trying every subset and chaining it forward; null where no subset serves. Up to some 15 things. */
export function byTrying({ cost, clauses, targets }: AndOrProblem): number | null {
  let least: number | null = null;
  for (let set = 0; set < 1 << cost.length; set++) {
    if (!targets.every((t) => (set >> t) & 1)) continue;
    let done = 0;
    for (let before = -1; before !== done; ) {
      before = done;
      for (let j = 0; j < cost.length; j++)
        if ((set >> j) & 1 && clauses[j]!.every((clause) => clause.some((k) => (done >> k) & 1))) done |= 1 << j;
    }
    if (done !== set) continue;
    const sum = cost.reduce((s, c, j) => s + ((set >> j) & 1 ? c : 0), 0);
    if (least === null || sum < least) least = sum;
  }
  return least;
}
