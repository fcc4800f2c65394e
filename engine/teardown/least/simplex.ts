import type { Row } from './rows.ts';

const SMALL = 1e-9;
const FEASIBLE = 1e-7;

export type Outcome = 'solved' | 'above' | 'impossible' | 'stopped';

/**
 * The dual simplex method for bounded variables in a full table: least cost of zero-one relaxed things under rows that are
 * added and dropped as the search goes. The table stays dual feasible whatever the bounds are, so a search sets bounds as
 * it likes and goes on from where it stands. Its figures guide; what is proven is computed anew from the rows
 * (`safeBound`).
 */
export class Simplex {
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
  private place: number[];
  private readonly inColumn: Int32Array;
  private inRow: number[] = [];
  /** Columns in use: the first of each row. */
  private width: number;
  private table: Float64Array[] = [];
  /** How long the edge of a row is, about: rows are chosen by what is gained per length (Devex, Forrest and Goldfarb 1992). */
  private weight: number[] = [];
  private readonly reduced: Float64Array;
  private readonly candidates: Int32Array;
  private readonly ratio: Float64Array;
  private readonly nonzero: Int32Array;

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
    this.candidates = new Int32Array(n);
    this.ratio = new Float64Array(n);
    this.nonzero = new Int32Array(n);
  }

  get size(): number {
    return this.inRow.length;
  }

  objective(): number {
    let z = 0;
    for (let j = 0; j < this.things; j++) z += this.cost[j]! * this.value[j]!;
    return z;
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

  /**
   * Goes on until nothing is out of bounds, the objective passes `until`, no point is left, or `goOn` says so.
   */
  solve(until: number, most: number, goOn: () => boolean): Outcome {
    let objective = this.objective();
    for (let k = 0; k < most; k++) {
      if (objective > until) return 'above';
      if ((k & 15) === 15 && !goOn()) return 'stopped';
      const r = this.leaving();
      if (r < 0) return this.drifted() ? this.again(until, most - k, goOn) : 'solved';
      const gain = this.step(r);
      if (gain < 0) return 'impossible';
      objective += gain;
    }
    return 'stopped';
  }

  private leaving(): number {
    let [best, at] = [0, -1];
    for (let i = 0; i < this.inRow.length; i++) {
      const v = this.inRow[i]!;
      const x = this.value[v]!;
      const out = Math.max(this.low[v]! - x, x - this.high[v]!);
      if (out <= FEASIBLE) continue;
      const score = (out * out) / this.weight[i]!;
      if (score > best) {
        best = score;
        at = i;
      }
    }
    return at;
  }

  private step(r: number): number {
    const { reduced, inColumn, candidates, ratio } = this;
    const line = this.table[r]!;
    const n = this.width;
    const v = this.inRow[r]!;
    const up = this.value[v]! < this.low[v]!;
    const goal = up ? this.low[v]! : this.high[v]!;
    const sign = up ? -1 : 1;
    let count = 0;
    let [least, nonzeros] = [Number.POSITIVE_INFINITY, 0];
    for (let q = 0; q < n; q++) {
      const a = line[q]!;
      if (a === 0) continue;
      if (a < SMALL && a > -SMALL) {
        line[q] = 0;
        continue;
      }
      this.nonzero[nonzeros++] = q;
      const x = inColumn[q]!;
      if (this.low[x] === this.high[x]) continue;
      const towards = sign * a;
      const atLow = this.value[x] === this.low[x];
      if (atLow ? towards <= 1e-7 : towards >= -1e-7) continue;
      ratio[q] = Math.abs(reduced[q]! / a);
      if (ratio[q]! < least) least = ratio[q]!;
      candidates[count++] = q;
    }
    this.touched += n;
    if (count === 0) return -1;
    /** Boxed variables are flipped as long as the row stays out of bounds. */
    const sorted = candidates.subarray(0, count).sort((p, q) => ratio[p]! - ratio[q]! || p - q);
    let rest = Math.abs(goal - this.value[v]!);
    let gain = 0;
    let before = 0;
    let i = 0;
    let enter = -1;
    for (; i < count; i++) {
      const q = sorted[i]!;
      gain += rest * (ratio[q]! - before);
      before = ratio[q]!;
      const x = inColumn[q]!;
      const room = Math.abs(line[q]!) * (this.high[x]! - this.low[x]!);
      if (rest - room <= FEASIBLE) {
        enter = i;
        break;
      }
      rest -= room;
    }
    if (enter < 0) return -1;
    let q = sorted[enter]!;
    for (let t = enter + 1; t < count && ratio[sorted[t]!]! <= ratio[sorted[enter]!]! + 1e-9; t++)
      if (Math.abs(line[sorted[t]!]!) > Math.abs(line[q]!) + 1e-9) q = sorted[t]!;
    for (let t = 0; t < enter; t++) {
      const p = sorted[t]!;
      const x = inColumn[p]!;
      this.move(p, this.value[x] === this.low[x] ? this.high[x]! : this.low[x]!);
    }
    this.pivot(r, q, goal, nonzeros);
    return gain;
  }

  /** Moves the variable of a column and what depends on it. */
  private move(q: number, to: number): void {
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

  private pivot(r: number, q: number, goal: number, nonzeros: number): void {
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

  /** Whether the values of the slacks left the rows they stand for. */
  private drifted(): boolean {
    for (let slot = 0; slot < this.rows.length; slot++) {
      const row = this.rows[slot];
      if (!row) continue;
      let s = -row.least;
      for (let e = 0; e < row.things.length; e++) s += row.factors[e]! * this.value[row.things[e]!]!;
      if (Math.abs(s - this.value[this.things + slot]!) > 1e-6) return true;
    }
    return false;
  }

  /** Builds the table anew from the rows and goes on. */
  private again(until: number, most: number, goOn: () => boolean): Outcome {
    const rows = this.rows.filter((row) => row !== null);
    const n = this.things;
    this.width = n;
    this.rows = [];
    this.inRow = [];
    this.table = [];
    this.weight = [];
    for (let j = 0; j < n; j++) {
      this.place[j] = -1 - j;
      this.inColumn[j] = j;
      this.reduced[j] = this.cost[j]!;
      this.value[j] = this.cost[j]! >= 0 ? this.low[j]! : this.high[j]!;
    }
    for (const row of rows) this.add(row);
    return this.solve(until, most, goOn);
  }
}
