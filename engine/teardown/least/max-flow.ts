/**
 * Greatest flow by shortest augmenting layers (Dinic 1970), over flat arrays. Capacities may be broken numbers: each
 * augmentation empties an arc exactly, so it ends; what rounding leaves in an arc, less than 1e-12 of the greatest
 * finite capacity, counts as empty.
 */
export class MaxFlow {
  private readonly first: Int32Array;
  private readonly next: Int32Array;
  private readonly to: Int32Array;
  private readonly room: Float64Array;
  private readonly level: Int32Array;
  private readonly at: Int32Array;
  private readonly queue: Int32Array;
  private count = 0;
  private empty = 0;

  constructor(nodes: number, arcs: number) {
    this.first = new Int32Array(nodes).fill(-1);
    this.next = new Int32Array(2 * arcs);
    this.to = new Int32Array(2 * arcs);
    this.room = new Float64Array(2 * arcs);
    this.level = new Int32Array(nodes);
    this.at = new Int32Array(nodes);
    this.queue = new Int32Array(nodes);
  }

  /** An arc; Infinity where it is never the narrow one. */
  arc(from: number, to: number, capacity: number): void {
    this.half(from, to, capacity);
    this.half(to, from, 0);
    if (Number.isFinite(capacity)) this.empty = Math.max(this.empty, 1e-12 * capacity);
  }

  private half(from: number, to: number, capacity: number): void {
    const e = this.count++;
    this.to[e] = to;
    this.room[e] = capacity;
    this.next[e] = this.first[from]!;
    this.first[from] = e;
  }

  run(source: number, sink: number): number {
    let flow = 0;
    while (this.layers(source, sink)) {
      this.at.set(this.first);
      for (let pushed = this.path(source, sink); pushed > 0; pushed = this.path(source, sink)) flow += pushed;
    }
    return flow;
  }

  /** After `run`: nodes on the source's side of the least cut nearest to it. */
  reached(): boolean[] {
    return Array.from(this.level, (l) => l >= 0);
  }

  private layers(source: number, sink: number): boolean {
    this.level.fill(-1);
    this.level[source] = 0;
    this.queue[0] = source;
    let end = 1;
    for (let i = 0; i < end; i++) {
      const v = this.queue[i]!;
      for (let e = this.first[v]!; e >= 0; e = this.next[e]!) {
        const w = this.to[e]!;
        if (this.level[w]! >= 0 || this.room[e]! <= this.empty) continue;
        this.level[w] = this.level[v]! + 1;
        this.queue[end++] = w;
      }
    }
    return this.level[sink]! >= 0;
  }

  /** One augmenting path through the layers, without recursion. */
  private path(source: number, sink: number): number {
    const arcs: number[] = [];
    let v = source;
    while (v !== sink) {
      const e = this.at[v]!;
      if (e < 0) {
        if (arcs.length === 0) return 0;
        const back = arcs.pop()!;
        v = this.to[back ^ 1]!;
        this.at[v] = this.next[back]!;
      } else if (this.room[e]! > this.empty && this.level[this.to[e]!] === this.level[v]! + 1) {
        arcs.push(e);
        v = this.to[e]!;
      } else this.at[v] = this.next[e]!;
    }
    const least = arcs.reduce((m, e) => Math.min(m, this.room[e]!), Number.POSITIVE_INFINITY);
    for (const e of arcs) {
      this.room[e]! -= least;
      this.room[e ^ 1]! += least;
    }
    return least;
  }
}
