import { SMALL, Table } from './table.ts';

const FEASIBLE = 1e-7;

export type Outcome = 'solved' | 'above' | 'impossible' | 'stopped';

/**
 * The dual simplex method for bounded variables in a full table: least cost of zero-one relaxed things under rows that are
 * added and dropped as the search goes. The table stays dual feasible whatever the bounds are, so a search sets bounds as
 * it likes and goes on from where it stands. Its figures guide; what is proven is computed anew from the rows
 * (`safeBound`).
 */
export class Simplex extends Table {
  private readonly candidates: Int32Array;
  private readonly ratio: Float64Array;

  constructor(cost: Float64Array) {
    super(cost);
    this.candidates = new Int32Array(cost.length);
    this.ratio = new Float64Array(cost.length);
  }

  objective(): number {
    let z = 0;
    for (let j = 0; j < this.things; j++) z += this.cost[j]! * this.value[j]!;
    return z;
  }

  /**
   * Goes on until nothing is out of bounds, the objective passes `until`, no point is left, or `goOn` says so.
   */
  solve(until: number, most: number, goOn: () => boolean): Outcome {
    let objective = this.objective();
    for (let k = 0; k < most; k++) {
      if (objective > until) return this.drifted() ? this.again(until, most - k, goOn) : 'above';
      if ((k & 15) === 0 && !goOn()) return 'stopped';
      const r = this.leaving();
      if (r < 0) return this.drifted() ? this.again(until, most - k, goOn) : 'solved';
      const gain = this.step(r);
      if (gain < 0) {
        if (this.refuted(r)) return 'impossible';
        return this.drifted() ? this.again(until, most - k, goOn) : 'stopped';
      }
      objective += gain;
    }
    return 'stopped';
  }

  private leaving(): number {
    let [best, at, longest] = [-1, -1, 1];
    for (let i = 0; i < this.inRow.length; i++) {
      const v = this.inRow[i]!;
      const x = this.value[v]!;
      const out = Math.max(this.low[v]! - x, x - this.high[v]!);
      const weight = this.weight[i]!;
      if (weight > longest) longest = weight;
      if (out <= FEASIBLE) continue;
      const score = (out * out) / weight;
      if (score > best) {
        best = score;
        at = i;
      }
    }
    /** Lengths that only grow say nothing after a while: begun anew. */
    if (longest > 1e6) this.weight.fill(1);
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
      if (atLow ? towards <= 1e-6 : towards >= -1e-6) continue;
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

  /** Whether the rows, taken together by the factors of this line of the table and added up anew, leave no point in the bounds. */
  private refuted(r: number): boolean {
    const v = this.inRow[r]!;
    const sign = this.value[v]! < this.low[v]! ? 1 : -1;
    const sum = new Float64Array(this.things);
    let [least, size] = [0, 1];
    const take = (slot: number, price: number) => {
      const row = this.rows[slot]!;
      least += price * row.least;
      size += price * row.things.length;
      for (let e = 0; e < row.things.length; e++) sum[row.things[e]!]! += price * row.factors[e]!;
    };
    if (v >= this.things) take(v - this.things, 1);
    for (let q = 0; q < this.width; q++) {
      const price = sign * this.table[r]![q]!;
      if (this.inColumn[q]! >= this.things && price > 0) take(this.inColumn[q]! - this.things, price);
    }
    let most = 0;
    for (let j = 0; j < this.things; j++) most += sum[j]! * (sum[j]! > 0 ? this.high[j]! : this.low[j]!);
    return most < least - 1e-9 * size;
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
  again(until: number, most: number, goOn: () => boolean): Outcome {
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
