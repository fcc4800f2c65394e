import type { LinearTerm } from './model.ts';

/** A row of a block: low <= sum of terms <= high. The variable of a term is its place in the block. */
export interface Row {
  readonly terms: readonly LinearTerm[];
  readonly low: number;
  readonly high: number;
}

/** Variables that hang together through their constraints, and nothing else. */
export interface Block {
  /** Place of each variable in the region. */
  readonly variables: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly integer: readonly boolean[];
  readonly rows: readonly Row[];
}

/**
 * The largest value of an objective over a block. `bound` is never exceeded; `point` is a possible
 * assignment, absent only if the solver gave up. `exact` says that the point reaches the bound.
 */
export interface BlockBest {
  readonly bound: number;
  readonly point: readonly number[] | null;
  readonly exact: boolean;
}

/** Slack of a constraint that counts as kept: seconds or pieces; a millionth of a second is no flight. */
export const SLACK = 1e-6;

export const dot = (c: readonly number[], x: readonly number[]): number => {
  let t = 0;
  for (let i = 0; i < c.length; i++) t += c[i]! * x[i]!;
  return t;
};
export const rowValue = (row: Row, x: readonly number[]): number => {
  let t = 0;
  for (const [v, c] of row.terms) t += c * x[v]!;
  return t;
};
export const isPossible = (block: Block, x: readonly number[], slack = SLACK): boolean =>
  x.every((value, i) => value >= block.low[i]! - slack && value <= block.high[i]! + slack) &&
  block.rows.every((row) => {
    const s = rowValue(row, x);
    const room = slack * Math.max(1, ...row.terms.map(([, c]) => Math.abs(c)));
    return s >= row.low - room && s <= row.high + room;
  });
