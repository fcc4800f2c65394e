import { Branching } from './branching.ts';
import { Chain } from './chain.ts';
import { Cuts } from './cuts.ts';
import { follows } from './follows.ts';
import { type Found, Improver } from './improve.ts';
import type { Core } from './reduce.ts';
import { safeBound } from './safe-bound.ts';
import { Simplex } from './simplex.ts';

export interface Searched {
  readonly found: Found;
  readonly bound: number;
  readonly touched: number;
  readonly nodes: number;
}
interface Open {
  /** Bounds that were changed on the way here are taken back to this length of the trail. */
  readonly trail: number;
  readonly thing: number;
  readonly value: 0 | 1;
  readonly bound: number;
}

/** Branch and cut over one core. Depth first; the bound is the least of all that is still open. */
export class Search {
  private readonly core: Core;
  private readonly simplex: Simplex;
  private readonly cuts: Cuts;
  private readonly improver: Improver;
  private readonly chain: Chain;
  private readonly grain: number;
  private readonly trail: number[] = [];
  private readonly open: Open[] = [];
  private readonly branching: Branching;
  private readonly limit: (touched: number) => boolean;
  best: Found;
  nodes = 0;

  constructor(core: Core, first: Found, grain: number, limit: (touched: number) => boolean) {
    const { net } = core;
    this.core = core;
    this.best = first;
    this.grain = grain;
    this.limit = limit;
    this.simplex = new Simplex(net.cost);
    this.cuts = new Cuts(core);
    this.improver = new Improver(core);
    this.chain = new Chain(net);
    this.branching = new Branching(this.simplex, {
      set: (j, value) => this.set(j, value),
      mark: () => this.trail.length,
      back: (mark) => this.back(mark),
      until: () => this.until,
      goOn: this.goOn,
    });
    for (const t of core.targets) this.simplex.bound(t, 1, 1);
  }

  get touched(): number {
    return this.simplex.touched;
  }

  private readonly goOn = (): boolean => this.limit(this.simplex.touched);

  /** Costs are whole multiples of the grain: a bound is worth the next multiple. */
  private rounded(bound: number): number {
    return Math.ceil(bound / this.grain - 1e-6) * this.grain;
  }

  /** A bound beyond which nothing better can lie. */
  private get until(): number {
    return this.best.cost - this.grain + 1e-6 * this.grain;
  }

  run(): Searched {
    let here = this.node(0, Number.NEGATIVE_INFINITY);
    for (;;) {
      if (here === 'stopped') break;
      if (here !== 'done') {
        const { thing, bound, first } = here;
        this.open.push({ trail: this.trail.length, thing, value: first === 1 ? 0 : 1, bound });
        this.open.push({ trail: this.trail.length, thing, value: first, bound });
      }
      const next = this.take();
      if (!next) return this.end(this.best.cost);
      here = this.enter(next);
    }
    let bound = this.now;
    for (const o of this.open) bound = Math.min(bound, o.bound);
    return this.end(Math.min(this.best.cost, this.rounded(Math.max(bound, this.least()))));
  }

  /** Bound of the node at which it stopped. */
  private now = Number.POSITIVE_INFINITY;

  private end(bound: number): Searched {
    return { found: this.best, bound, touched: this.simplex.touched, nodes: this.nodes };
  }

  /** Sum of all that is negative, and of the targets: nothing is less. */
  private least(): number {
    const { net, targets } = this.core;
    let s = 0;
    for (let j = 0; j < net.things; j++) s += Math.min(0, net.cost[j]!);
    for (const t of targets) s += Math.max(0, net.cost[t]!);
    return s;
  }

  private take(): Open | null {
    for (;;) {
      const o = this.open.pop();
      if (!o) return null;
      if (this.rounded(o.bound) >= this.best.cost) continue;
      return o;
    }
  }

  private enter(o: Open) {
    this.back(o.trail);
    this.set(o.thing, o.value);
    return this.node(this.open.length, o.bound);
  }

  private set(j: number, value: 0 | 1): void {
    this.trail.push(j, this.simplex.low[j]!, this.simplex.high[j]!);
    this.simplex.bound(j, value, value);
  }

  private back(mark: number): void {
    while (this.trail.length > mark) {
      const high = this.trail.pop()!;
      const low = this.trail.pop()!;
      this.simplex.bound(this.trail.pop()!, low, high);
    }
  }

  /** Puts out (or in) what would lift the bound over the best known. */
  private fix(): void {
    const { bound, reduced } = safeBound(this.simplex);
    const { low, high } = this.simplex;
    for (let j = 0; j < reduced.length; j++) {
      if (low[j] === high[j]) continue;
      if (this.rounded(bound + Math.abs(reduced[j]!)) < this.best.cost) continue;
      this.set(j, reduced[j]! > 0 ? 0 : 1);
    }
  }

  private better(found: Found | null): void {
    if (found && found.cost < this.best.cost) this.best = this.improver.addWhatPays(found);
  }

  private guess(deep: boolean): void {
    const { net } = this.core;
    const x = this.simplex.value;
    const pays: number[] = [];
    for (let j = 0; j < net.things; j++) if (net.cost[j]! < 0 && x[j]! > 0.5) pays.push(j);
    const price = (j: number) => Math.max(0, net.cost[j]!) * (1 - 0.999 * Math.min(1, Math.max(0, x[j]!)));
    const found = this.improver.derive(price, pays) ?? this.improver.derive(price);
    this.better(found);
    if (found && deep) this.better(this.improver.around(found, 60, this.goOn));
  }

  /** Solves and cuts a node. 'done' where nothing better lies under it; else what to branch on. */
  private node(depth: number, inherited: number): 'done' | 'stopped' | { thing: number; bound: number; first: 0 | 1 } {
    this.nodes++;
    this.now = inherited;
    if (!follows(this.core, this.chain, this.simplex, (j, value) => this.set(j, value))) return 'done';
    const { net } = this.core;
    const { simplex } = this;
    const x = simplex.value;
    let bound = inherited;
    let tail = 0;
    for (let round = 0; ; round++) {
      let outcome = simplex.solve(this.until, 100_000, this.goOn);
      let safe = safeBound(simplex).bound;
      if (outcome === 'above' && this.rounded(safe) < this.best.cost) {
        /** The table says more than its rows prove: built anew. */
        outcome = simplex.again(Number.POSITIVE_INFINITY, 100_000, this.goOn);
        safe = safeBound(simplex).bound;
      }
      if (outcome === 'stopped') {
        this.now = Math.max(bound, safe);
        return 'stopped';
      }
      if (outcome === 'impossible') return 'done';
      if (this.rounded(safe) >= this.best.cost) return 'done';
      if (safe < bound + (depth === 0 ? 0.002 : 0.02) * Math.max(this.grain, this.best.cost - bound)) tail++;
      else tail = 0;
      bound = Math.max(bound, safe);
      this.now = bound;
      if (depth === 0 ? round % 5 === 4 : round === 0) this.guess(depth === 0 && round % 20 === 4);
      if (this.rounded(bound) >= this.best.cost) return 'done';
      this.fix();
      if (depth === 0) simplex.forget();
      const plain = this.cuts.plain(x, 200);
      const rows = [...plain];
      if (plain.length < 20) rows.push(...this.cuts.gates(x, depth === 0 ? 24 : 10, depth === 0 ? 2 : 1));
      const whole = this.fraction() < 0;
      if (rows.length === 0) {
        if (whole) {
          const chosen = Uint8Array.from({ length: net.things }, (_, j) => (x[j]! > 0.5 ? 1 : 0));
          const sound = this.improver.drop(chosen);
          if (this.core.targets.every((t) => sound.chosen[t])) {
            if (sound.cost < this.best.cost) this.best = sound;
            if (this.rounded(bound) >= this.best.cost) return 'done';
          }
        }
        break;
      }
      if (!whole && tail > (depth === 0 ? 12 : 2) && round > 2) break;
      for (const row of rows) simplex.add(row);
      if (round % 2 === 1) simplex.dropSlack(() => false);
    }
    const thing = this.branching.choose(bound);
    if (thing < 0) return this.settle(bound);
    return { thing, bound, first: x[thing]! > 0.4 ? 1 : 0 };
  }

  /** All is whole, yet it was not proven: rounding in the table. Branches on anything free. */
  private settle(bound: number): 'done' | { thing: number; bound: number; first: 0 | 1 } {
    for (let j = 0; j < this.core.net.things; j++)
      if (this.simplex.low[j] !== this.simplex.high[j])
        return { thing: j, bound, first: this.simplex.value[j]! > 0.5 ? 1 : 0 };
    return 'done';
  }

  private fraction(): number {
    const x = this.simplex.value;
    for (let j = 0; j < this.core.net.things; j++) if (x[j]! > 1e-5 && x[j]! < 1 - 1e-5) return j;
    return -1;
  }
}
