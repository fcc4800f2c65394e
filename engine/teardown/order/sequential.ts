/** A sequence of things with the cost of going from each to the next. */
export interface SequentialOrder {
  readonly order: readonly number[];
  readonly cost: number;
  /** No order costs less. */
  readonly bound: number;
  readonly proven: boolean;
}

/** Up to here all sets that can come first are followed. */
const EXACT_THINGS = 18;
const ROUNDS = 40;

/**
 * The order of least total cost of going from one to the next, under precedence: the sequential ordering problem.
 *
 * Exact by dynamic programming over the sets that can come first, for up to 18 things. Above, the nearest next thing that
 * may come, improved by exchanging two runs that follow each other, with a bound: each thing after the first is reached
 * at least at the least cost of reaching it.
 *
 * @param matrix cost from the row to the column; the diagonal is not read
 * @param before pairs: the first stands before the second, anywhere
 * @returns an empty order where the pairs go round in a circle
 * @see TSPLIB, sequential ordering problem; Held and Karp 1962 from memory
 */
export function sequentialOrder(
  matrix: readonly (readonly number[])[],
  before: readonly (readonly [number, number])[],
): SequentialOrder {
  const n = matrix.length;
  const preceding = Array.from({ length: n }, () => new Set<number>());
  for (const [a, b] of before) preceding[b]!.add(a);
  const first = nearest(matrix, preceding);
  if (first.length < n) return { order: [], cost: 0, bound: 0, proven: false };
  if (n <= EXACT_THINGS) {
    const exact = overSets(matrix, preceding);
    return { ...exact, bound: exact.cost, proven: true };
  }
  const order = exchanged(matrix, preceding, first);
  const cost = costOfOrder(matrix, order);
  const bound = Math.min(cost, lowest(matrix, preceding));
  return { order, cost, bound, proven: bound === cost };
}
type Matrix = readonly (readonly number[])[];
type Preceding = readonly ReadonlySet<number>[];

export const costOfOrder = (matrix: Matrix, order: readonly number[]): number =>
  order.reduce((sum, i, k) => (k === 0 ? 0 : sum + matrix[order[k - 1]!]![i]!), 0);

function nearest(matrix: Matrix, preceding: Preceding): number[] {
  const n = matrix.length;
  const done = new Set<number>();
  const order: number[] = [];
  while (order.length < n) {
    const last = order.at(-1);
    let best = -1;
    for (let i = 0; i < n; i++) {
      if (done.has(i) || ![...preceding[i]!].every((p) => done.has(p))) continue;
      if (best < 0 || (last !== undefined && matrix[last]![i]! < matrix[last]![best]!)) best = i;
    }
    if (best < 0) return order;
    done.add(best);
    order.push(best);
  }
  return order;
}

function overSets(matrix: Matrix, preceding: Preceding): { order: number[]; cost: number } {
  const n = matrix.length;
  const masks = preceding.map((p) => [...p].reduce((m, i) => m | (1 << i), 0));
  const sets = 1 << n;
  const value = new Float64Array(sets * n).fill(Number.POSITIVE_INFINITY);
  const from = new Int8Array(sets * n).fill(-1);
  for (let i = 0; i < n; i++) if (masks[i] === 0) value[(1 << i) * n + i] = 0;
  for (let set = 1; set < sets; set++)
    for (let last = 0; last < n; last++) {
      const here = value[set * n + last]!;
      if (here === Number.POSITIVE_INFINITY) continue;
      for (let i = 0; i < n; i++) {
        if ((set >> i) & 1 || (masks[i]! & set) !== masks[i]!) continue;
        const at = (set | (1 << i)) * n + i;
        const cost = here + matrix[last]![i]!;
        if (cost < value[at]!) {
          value[at] = cost;
          from[at] = last;
        }
      }
    }
  let last = 0;
  for (let i = 1; i < n; i++) if (value[(sets - 1) * n + i]! < value[(sets - 1) * n + last]!) last = i;
  const cost = n === 0 ? 0 : value[(sets - 1) * n + last]!;
  const order: number[] = [];
  for (let set = sets - 1; set > 0; ) {
    order.unshift(last);
    const before = from[set * n + last]!;
    set &= ~(1 << last);
    last = before;
  }
  return { order, cost };
}

/** Exchanges two runs that follow each other as long as that lowers the cost and nothing comes before what precedes it. */
function exchanged(matrix: Matrix, preceding: Preceding, start: readonly number[]): number[] {
  const n = start.length;
  let order = [...start];
  const step = (a: number | undefined, b: number | undefined) =>
    a === undefined || b === undefined ? 0 : matrix[a]![b]!;
  for (let round = 0; round < ROUNDS; round++) {
    let better: number[] | null = null;
    for (let i = 0; i < n && !better; i++)
      for (let j = i + 1; j < n && !better; j++)
        for (let k = j + 1; k <= n && !better; k++) {
          const [a, b] = [order.slice(i, j), order.slice(j, k)];
          if (b.some((x) => a.some((y) => preceding[x]!.has(y)))) break;
          const [left, right] = [order[i - 1], order[k]];
          const was = step(left, a[0]) + step(a.at(-1), b[0]) + step(b.at(-1), right);
          const is = step(left, b[0]) + step(b.at(-1), a[0]) + step(a.at(-1), right);
          if (is < was - 1e-9) better = [...order.slice(0, i), ...b, ...a, ...order.slice(k)];
        }
    if (!better) return order;
    order = better;
  }
  return order;
}

/** Each thing is reached from one that may stand right before it; the first one is reached from none. */
function lowest(matrix: Matrix, preceding: Preceding): number {
  const n = matrix.length;
  const least = matrix.map((_, i) =>
    Math.min(...matrix.map((row, k) => (k === i || preceding[k]!.has(i) ? Number.POSITIVE_INFINITY : row[i]!))),
  );
  const starts = [...Array(n).keys()].filter((i) => preceding[i]!.size === 0);
  const saved = Math.max(...starts.map((i) => (Number.isFinite(least[i]!) ? least[i]! : Number.POSITIVE_INFINITY)));
  const finite = least.filter((x) => Number.isFinite(x)).reduce((a, b) => a + b, 0);
  return Number.isFinite(saved) ? finite - saved : finite;
}
