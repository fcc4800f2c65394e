import { type Bounds, BY_CLAUSE } from './bounds.ts';

/**
 * What was learned: of each clause at least one statement "x is at least v" holds. Two statements of each are watched;
 * only when one of them is lost is the clause looked at.
 */
export class Clauses {
  /** Per clause: length, weight, then pairs of figure and value. */
  private pool = new Int32Array(1 << 14);
  private end = 1;
  /** Per figure, pairs of a clause and the value from which on the watched statement is lost. */
  private readonly watched: number[][];
  private all: number[] = [];

  constructor(private readonly bounds: Bounds) {
    this.watched = Array.from({ length: bounds.least.length }, () => []);
  }

  get count(): number {
    return this.all.length;
  }

  /** @param weight the less, the longer it is kept */
  add(literals: readonly number[], weight: number): number {
    const clause = this.end;
    const need = clause + 2 + literals.length;
    if (need > this.pool.length) {
      const larger = new Int32Array(2 * need);
      larger.set(this.pool);
      this.pool = larger;
    }
    this.pool[clause] = literals.length / 2;
    this.pool[clause + 1] = weight;
    for (let i = 0; i < literals.length; i++) this.pool[clause + 2 + i] = literals[i]!;
    this.end = need;
    this.all.push(clause);
    this.watch(clause, 0);
    this.watch(clause, 1);
    return clause;
  }

  private watch(clause: number, i: number): void {
    const x = this.pool[clause + 2 + 2 * i]!;
    this.watched[x ^ 1]!.push(clause, 1 - this.pool[clause + 3 + 2 * i]!);
  }

  /** False where a clause can no longer hold: then `bounds` has crossed. */
  lost(z: number): boolean {
    const { pool } = this;
    const { least } = this.bounds;
    const list = this.watched[z]!;
    let kept = 0;
    let holds = true;
    for (let i = 0; i < list.length; i += 2) {
      const clause = list[i]!;
      const from = list[i + 1]!;
      if (!holds || least[z]! < from || !this.moves(pool, least, clause, z, from)) {
        list[kept++] = clause;
        list[kept++] = from;
        if (holds && least[z]! >= from) {
          const x = pool[clause + 2]!;
          const v = pool[clause + 3]!;
          if (least[x]! < v && !this.bounds.raise(x, v, clause * 4 + BY_CLAUSE)) holds = false;
        }
      }
    }
    list.length = kept;
    return holds;
  }

  /** Watches another statement instead; false where there is none, or the clause holds anyway. */
  private moves(pool: Int32Array, least: Int32Array, clause: number, z: number, from: number): boolean {
    const a = clause + 2;
    if (pool[a] === (z ^ 1) && pool[a + 1] === 1 - from) swap(pool, a, a + 2);
    if (least[pool[a]!]! >= pool[a + 1]!) return false;
    const end = a + 2 * pool[clause]!;
    for (let p = a + 4; p < end; p += 2) {
      const x = pool[p]!;
      const v = pool[p + 1]!;
      if (least[x ^ 1]! >= 1 - v) continue;
      swap(pool, a + 2, p);
      this.watched[x ^ 1]!.push(clause, 1 - v);
      return true;
    }
    return false;
  }

  /** Hands over, as pairs, what of a clause was not true: all but the statement about x. */
  others(clause: number, x: number, take: (x: number, value: number) => void): void {
    const { pool } = this;
    for (let i = 0, p = clause + 2; i < pool[clause]!; i++, p += 2)
      if (pool[p] !== x) take(pool[p]! ^ 1, 1 - pool[p + 1]!);
  }

  /** Forgets the weaker half. Only at level 0. */
  forget(): void {
    const weight = (c: number) => this.pool[c + 1]!;
    const ranked = this.all.slice().sort((a, b) => weight(a) - weight(b) || b - a);
    const keep = ranked.filter((c, i) => weight(c) <= 2 || i < ranked.length / 2).sort((a, b) => a - b);
    const old = this.pool;
    this.pool = new Int32Array(old.length);
    this.end = 1;
    this.all = [];
    for (const list of this.watched) list.length = 0;
    for (const c of keep) this.readd(old, c);
  }

  /** At level 0 a statement either holds for ever, is lost for ever, or is open. */
  private readd(old: Int32Array, clause: number): void {
    const { least } = this.bounds;
    const literals: number[] = [];
    for (let i = 0, p = clause + 2; i < old[clause]!; i++, p += 2) {
      const [x, v] = [old[p]!, old[p + 1]!];
      if (least[x]! >= v) return;
      if (least[x ^ 1]! < 1 - v) literals.push(x, v);
    }
    if (literals.length >= 4) this.add(literals, old[clause + 1]!);
  }
}

function swap(pool: Int32Array, a: number, b: number): void {
  const x = pool[a]!;
  const v = pool[a + 1]!;
  pool[a] = pool[b]!;
  pool[a + 1] = pool[b + 1]!;
  pool[b] = x;
  pool[b + 1] = v;
}
