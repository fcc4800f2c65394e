import type { Net } from './net.ts';

/**
 * A cheap way to the goals by adding up: the price of a thing is its own and, of each clause, that of the cheapest
 * member; what two clauses share is counted twice, so it is a guess and no bound. Things are settled by rising price, so
 * what supports a thing is settled before it and no loop arises.
 */
export class Derivation {
  private readonly net: Net;
  private readonly price: Float64Array;
  private readonly open: Int32Array;
  private readonly met: Int32Array;
  private readonly settled: Uint8Array;
  private readonly heap: Int32Array;
  private size = 0;

  constructor(net: Net) {
    this.net = net;
    this.price = new Float64Array(net.things);
    this.open = new Int32Array(net.things);
    this.met = new Int32Array(net.head.length);
    this.settled = new Uint8Array(net.things);
    this.heap = new Int32Array(net.things);
  }

  /**
   * Marks in `into` what a cheap way to the goals holds. Prices must not be negative; Infinity bans a thing.
   *
   * @returns false where a goal is not reached
   */
  run(own: Float64Array, goals: readonly number[], into: Uint8Array): boolean {
    const { net, price, open, met, settled } = this;
    met.fill(-1);
    settled.fill(0);
    this.size = 0;
    for (let j = 0; j < net.things; j++) {
      price[j] = own[j]!;
      open[j] = net.clauseFrom[j + 1]! - net.clauseFrom[j]!;
      if (open[j] === 0 && own[j]! < Number.POSITIVE_INFINITY) this.push(j);
    }
    while (this.size > 0) {
      const k = this.pop();
      settled[k] = 1;
      for (let u = net.useFrom[k]!; u < net.useFrom[k + 1]!; u++) {
        const c = net.uses[u]!;
        if (met[c] !== -1) continue;
        met[c] = k;
        const j = net.head[c]!;
        if (settled[j]) continue;
        price[j]! += price[k]!;
        if (--open[j]! === 0 && own[j]! < Number.POSITIVE_INFINITY) this.push(j);
      }
    }
    const stack: number[] = [];
    for (const g of goals) {
      if (!settled[g]) return false;
      if (!into[g]) stack.push(g);
      into[g] = 1;
    }
    while (stack.length) {
      const j = stack.pop()!;
      for (let c = net.clauseFrom[j]!; c < net.clauseFrom[j + 1]!; c++) {
        const k = met[c]!;
        if (into[k]) continue;
        into[k] = 1;
        stack.push(k);
      }
    }
    return true;
  }

  private push(j: number): void {
    const { heap, price } = this;
    let i = this.size++;
    while (i > 0) {
      const up = (i - 1) >> 1;
      const other = heap[up]!;
      if (price[other]! <= price[j]!) break;
      heap[i] = other;
      i = up;
    }
    heap[i] = j;
  }

  private pop(): number {
    const { heap, price } = this;
    const top = heap[0]!;
    const j = heap[--this.size]!;
    let i = 0;
    for (;;) {
      let down = 2 * i + 1;
      if (down >= this.size) break;
      if (down + 1 < this.size && price[heap[down + 1]!]! < price[heap[down]!]!) down++;
      if (price[heap[down]!]! >= price[j]!) break;
      heap[i] = heap[down]!;
      i = down;
    }
    heap[i] = j;
    return top;
  }
}
