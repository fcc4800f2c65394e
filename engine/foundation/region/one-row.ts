import { type Block, type BlockBest, dot, SLACK } from './block.ts';

const whole = (x: number): boolean => Number.isInteger(x) || !Number.isFinite(x);

/** True where `bestOfOneRow` is exact: no row, or one row of continuous variables, or of whole ones with unit coefficients. */
export function hasClosedForm(block: Block): boolean {
  const row = block.rows[0];
  if (block.rows.length > 1) return false;
  if (!row || !block.integer.some(Boolean)) return true;
  return (
    block.integer.every(Boolean) && row.terms.every(([, c]) => Math.abs(c) === 1) && whole(row.low) && whole(row.high)
  );
}

/**
 * Largest value of an objective over a box with at most one sum constraint, without a solver.
 *
 * Every variable starts at its own best end. If the sum is then too large or too small, variables are
 * moved towards their other end, the cheapest per unit of the sum first, until it fits: the exchange
 * argument of the fractional knapsack. Whole numbers stay whole when coefficients are 1 or -1 and the
 * ends of the row are whole. Not valid for other blocks: ask `hasClosedForm` first.
 *
 * @returns null if the block is impossible
 */
export function bestOfOneRow(block: Block, objective: readonly number[]): BlockBest | null {
  const x = objective.map((c, i) => (c > 0 ? block.high[i]! : block.low[i]!));
  const row = block.rows[0];
  if (row) {
    let sum = 0;
    for (const [v, a] of row.terms) sum += a * x[v]!;
    const target = Math.min(row.high, Math.max(row.low, sum));
    const sign = Math.sign(target - sum);
    if (sign !== 0) {
      const moves = row.terms
        .map(([v, a]) => ({ v, a, reach: a * (block.low[v]! + block.high[v]! - 2 * x[v]!), cost: 0 }))
        .filter((m) => m.reach * sign > 0);
      for (const m of moves) m.cost = Math.abs(objective[m.v]! / m.a);
      moves.sort((p, q) => p.cost - q.cost || p.v - q.v);
      let left = Math.abs(target - sum);
      for (const m of moves) {
        const step = Math.min(left, Math.abs(m.reach));
        x[m.v] =
          step === Math.abs(m.reach) ? block.low[m.v]! + block.high[m.v]! - x[m.v]! : x[m.v]! + (sign * step) / m.a;
        left -= step;
        if (left <= 0) break;
      }
      if (left > SLACK * Math.max(1, ...row.terms.map(([, a]) => Math.abs(a)))) return null;
    }
  }
  return { bound: dot(objective, x), point: x, exact: true };
}
