import type { Row } from './rows.ts';

export const SMALL = 1e-9;

/**
 * The full table of a bounded linear program: basic variables by those that stand at a bound, rows that are added and
 * dropped, columns that are left out when they are settled, and the step from one basis to the next.
 */
export class Table {
  readonly things: number;
  readonly cost: Float64Array;
  /** Bounds and values of things, then of the slacks of rows. */
  readonly low: number[];
  readonly high: number[];
  readonly value: number[];
  rows: (Row | null)[] = [];
  /** Work so far: entries of the table touched. */
  touched = 0;
  pivots = 0;
  /** Row of the table of a basic variable, else −1 − column. */
  protected place: number[];
  protected readonly inColumn: Int32Array;
  protected inRow: number[] = [];
  /** Columns in use: the first of each row. */
  protected width: number;
  protected table: Float64Array[] = [];
  /** How long the edge of a row is, about: rows are chosen by what is gained per length (Devex, Forrest and Goldfarb 1992). */
  protected weight: number[] = [];
  protected readonly reduced: Float64Array;
  protected readonly nonzero: Int32Array;

  constructor(cost: Float64Array) {
    const n = cost.length;
    this.things = n;
    this.width = n;
    this.cost = cost;
    this.low = new Array<number>(n).fill(0);
    this.high = new Array<number>(n).fill(1);
    this.value = Array.from(cost, (c) => (c < 0 ? 1 : 0));
    this.place = Array.from({ length: n }, (_, j) => -1 - j);
    this.inColumn = Int32Array.from({ length: n }, (_, j) => j);
    this.reduced = Float64Array.from(cost);
    this.nonzero = new Int32Array(n);
  }

  get size(): number {
    return this.inRow.length;
  }

  /** Sets the bounds of a thing; where it stands outside of the table's rows it moves to the bound that suits its price. */
  bound(j: number, low: number, high: number): void {
    if (this.low[j] === low && this.high[j] === high) return;
    this.low[j] = low;
    this.high[j] = high;
    const p = this.place[j]!;
    if (p >= 0) return;
    const q = -1 - p;
    this.move(q, this.reduced[q]! >= 0 ? low : high);
  }

  add(row: Row): number {
    const n = this.things;
    const line = new Float64Array(n);
    let value = -row.least;
    for (let e = 0; e < row.things.length; e++) {
      const j = row.things[e]!;
      const f = row.factors[e]!;
      value += f * this.value[j]!;
      const p = this.place[j]!;
      if (p >= 0) {
        const other = this.table[p]!;
        for (let q = 0; q < this.width; q++) line[q]! += f * other[q]!;
        this.touched += this.width;
      } else if (-1 - p < this.width) line[-1 - p]! -= f;
    }
    let slot = this.rows.indexOf(null);
    if (slot < 0) slot = this.rows.length;
    this.rows[slot] = row;
    const s = n + slot;
    this.low[s] = 0;
    this.high[s] = Number.POSITIVE_INFINITY;
    this.value[s] = value;
    this.place[s] = this.inRow.length;
    this.inRow.push(s);
    this.table.push(line);
    this.weight.push(1);
    return slot;
  }

  /** Drops rows that do not bind and that `still` does not want kept. */
  dropSlack(still: (row: Row) => boolean): number {
    let dropped = 0;
    for (let i = this.inRow.length - 1; i >= 0; i--) {
      const s = this.inRow[i]!;
      if (s < this.things || this.value[s]! < 0.01) continue;
      if (still(this.rows[s - this.things]!)) continue;
      this.rows[s - this.things] = null;
      this.place[s] = Number.NaN;
      const last = this.inRow.length - 1;
      if (i !== last) {
        this.inRow[i] = this.inRow[last]!;
        this.table[i] = this.table[last]!;
        this.weight[i] = this.weight[last]!;
        this.place[this.inRow[i]!] = i;
      }
      this.inRow.pop();
      this.table.pop();
      this.weight.pop();
      dropped++;
    }
    return dropped;
  }

  /** Leaves out the columns of things that are settled for good; their bounds are never changed again. */
  forget(): void {
    for (let q = this.width - 1; q >= 0; q--) {
      const x = this.inColumn[q]!;
      if (x >= this.things || this.low[x] !== this.high[x]) continue;
      const last = --this.width;
      const other = this.inColumn[last]!;
      this.inColumn[q] = other;
      this.inColumn[last] = x;
      this.place[other] = -1 - q;
      this.place[x] = -1 - last;
      const d = this.reduced[q]!;
      this.reduced[q] = this.reduced[last]!;
      this.reduced[last] = d;
      for (const line of this.table) line[q] = line[last]!;
    }
  }

  /** Price of a row: what its bound is worth. Zero where it does not bind. */
  priceOf(slot: number): number {
    const p = this.place[this.things + slot]!;
    return p < 0 ? Math.max(0, this.reduced[-1 - p]!) : 0;
  }

  /** Moves the variable of a column and what depends on it. */
  protected move(q: number, to: number): void {
    const x = this.inColumn[q]!;
    const by = to - this.value[x]!;
    this.value[x] = to;
    if (by === 0) return;
    for (let i = 0; i < this.table.length; i++) {
      const a = this.table[i]![q]!;
      if (a !== 0) this.value[this.inRow[i]!]! -= a * by;
    }
    this.touched += this.table.length;
  }

  protected pivot(r: number, q: number, goal: number, nonzeros: number): void {
    const { table, nonzero, reduced } = this;
    const line = table[r]!;
    const pivot = line[q]!;
    const leaves = this.inRow[r]!;
    const enters = this.inColumn[q]!;
    const by = (this.value[leaves]! - goal) / pivot;
    this.move(q, this.value[enters]! + by);
    this.value[leaves] = goal;
    for (let k = 0; k < nonzeros; k++) line[nonzero[k]!]! /= pivot;
    line[q] = 1 / pivot;
    const { weight } = this;
    const length = weight[r]! / (pivot * pivot);
    weight[r] = Math.max(1, length);
    for (let i = 0; i < table.length; i++) {
      if (i === r) continue;
      const other = table[i]!;
      const f = other[q]!;
      if (f === 0) continue;
      other[q] = 0;
      if (f < SMALL && f > -SMALL) continue;
      const longer = f * f * length;
      if (longer > weight[i]!) weight[i] = longer;
      for (let k = 0; k < nonzeros; k++) other[nonzero[k]!]! -= f * line[nonzero[k]!]!;
      this.touched += nonzeros;
    }
    const d = reduced[q]!;
    reduced[q] = 0;
    if (d !== 0) for (let k = 0; k < nonzeros; k++) reduced[nonzero[k]!]! -= d * line[nonzero[k]!]!;
    this.inRow[r] = enters;
    this.inColumn[q] = leaves;
    this.place[enters] = r;
    this.place[leaves] = -1 - q;
    this.pivots++;
  }
}
