import type { Net } from './net.ts';

/**
 * Forward chaining: again and again a thing joins that is allowed and whose every clause holds something that joined
 * before. A loop that only supports itself never joins. Linear in the size of the net; its arrays are kept from call to call.
 */
export class Chain {
  readonly net: Net;
  /** What joined, in order: the first `count` entries. */
  readonly order: Int32Array;
  readonly joined: Uint8Array;
  count = 0;
  private readonly met: Uint8Array;
  private readonly open: Int32Array;
  private readonly touched: Int32Array;
  private touchedCount = 0;
  private readonly free: Int32Array;

  constructor(net: Net) {
    this.net = net;
    this.order = new Int32Array(net.things);
    this.joined = new Uint8Array(net.things);
    this.met = new Uint8Array(net.head.length);
    this.touched = new Int32Array(net.head.length);
    this.open = Int32Array.from({ length: net.things }, (_, j) => net.clauseFrom[j + 1]! - net.clauseFrom[j]!);
    this.free = Int32Array.from(this.open.keys()).filter((j) => this.open[j] === 0);
  }

  /** Empties it. */
  clear(): void {
    this.back(0, 0);
  }

  /** All that can join from nothing. */
  run(allowed: Uint8Array): number {
    this.clear();
    for (let i = 0; i < this.free.length; i++) {
      const j = this.free[i]!;
      if (allowed[j]) this.put(j);
    }
    this.go(0, allowed);
    return this.count;
  }

  /** Whether every clause of j is met by what joined. */
  ready(j: number): boolean {
    return this.open[j] === 0;
  }

  /** Lets one more thing join, if it is ready, and all that follows. */
  add(j: number, allowed: Uint8Array): void {
    if (this.joined[j] || this.open[j]! > 0) return;
    const from = this.count;
    this.put(j);
    this.go(from, allowed);
  }

  mark(): { readonly count: number; readonly touched: number } {
    return { count: this.count, touched: this.touchedCount };
  }

  /** Takes back to a mark. */
  back(count: number, touched: number): void {
    while (this.count > count) this.joined[this.order[--this.count]!] = 0;
    while (this.touchedCount > touched) {
      const c = this.touched[--this.touchedCount]!;
      this.met[c] = 0;
      this.open[this.net.head[c]!]!++;
    }
  }

  private put(j: number): void {
    this.joined[j] = 1;
    this.order[this.count++] = j;
  }

  private go(from: number, allowed: Uint8Array): void {
    const { useFrom, uses, head } = this.net;
    const { met, open, joined } = this;
    for (let at = from; at < this.count; at++) {
      const k = this.order[at]!;
      const end = useFrom[k + 1]!;
      for (let u = useFrom[k]!; u < end; u++) {
        const c = uses[u]!;
        if (met[c]) continue;
        met[c] = 1;
        this.touched[this.touchedCount++] = c;
        const j = head[c]!;
        if (--open[j]! === 0 && allowed[j] && !joined[j]) this.put(j);
      }
    }
  }
}
