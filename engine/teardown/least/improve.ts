import { Chain } from './chain.ts';
import { Derivation } from './derive.ts';
import type { Core } from './reduce.ts';

/** A set of the core that can be done in an order, with its cost. */
export interface Found {
  readonly chosen: Uint8Array;
  readonly cost: number;
}

/** Good sets, found by cheap derivations, by dropping and by going round what is dear. What it returns can always be done. */
export class Improver {
  private readonly core: Core;
  private readonly chain: Chain;
  private readonly derivation: Derivation;
  private readonly own: Float64Array;
  private readonly isTarget: Uint8Array;
  /** Things in the order in which dropping them is tried. */
  private readonly dearFirst: Int32Array;

  constructor(core: Core) {
    const { net } = core;
    this.core = core;
    this.chain = new Chain(net);
    this.derivation = new Derivation(net);
    this.own = new Float64Array(net.things);
    this.isTarget = new Uint8Array(net.things);
    for (const t of core.targets) this.isTarget[t] = 1;
    this.dearFirst = Int32Array.from(Array.from(net.cost.keys()).sort((a, b) => net.cost[b]! - net.cost[a]!));
  }

  /** A set by cheap derivation under these prices, the goals besides the targets given. Null where something is not reached. */
  derive(price: (j: number) => number, more: readonly number[] = []): Found | null {
    const { net, targets } = this.core;
    for (let j = 0; j < net.things; j++) this.own[j] = price(j);
    const into = new Uint8Array(net.things);
    if (!this.derivation.run(this.own, [...targets, ...more], into)) return null;
    return this.drop(into);
  }

  /** Drops, dearest first, what can go so that the set gets no dearer, with all that falls with it. */
  drop(set: Uint8Array): Found {
    const { net } = this.core;
    const chosen = set.slice();
    let cost = this.keep(chosen);
    for (let again = true; again; ) {
      again = false;
      for (let i = 0; i < net.things; i++) {
        const j = this.dearFirst[i]!;
        if (!chosen[j] || this.isTarget[j]) continue;
        if (net.cost[j]! < 0) break;
        chosen[j] = 0;
        this.chain.run(chosen);
        if (this.core.targets.every((t) => this.chain.joined[t])) {
          const left = this.costOfChain();
          if (left <= cost) {
            if (left < cost) again = true;
            chosen.set(this.chain.joined);
            cost = left;
            continue;
          }
        }
        chosen[j] = 1;
      }
    }
    return { chosen, cost };
  }

  /** Adds what pays: each thing of negative cost with the cheapest way to it, if both together are below zero. */
  addWhatPays(found: Found): Found {
    const { net } = this.core;
    let best = found;
    for (let j = 0; j < net.things; j++) {
      if (net.cost[j]! >= 0 || best.chosen[j]) continue;
      const now = best;
      const tried = this.derive((k) => (now.chosen[k] ? 0 : Math.max(0, net.cost[k]!)), [j, ...marked(now.chosen)]);
      if (tried && tried.cost < best.cost) best = tried;
    }
    return best;
  }

  /** Bans one chosen thing after the other, goes round it with the rest at hand, and stays where that is cheaper. */
  around(found: Found, tries: number, goOn: () => boolean): Found {
    const { net } = this.core;
    let best = found;
    let left = tries;
    for (let again = true; again && left > 0; ) {
      again = false;
      for (let i = 0; i < net.things && left > 0; i++) {
        const ban = this.dearFirst[i]!;
        if (!best.chosen[ban] || this.isTarget[ban] || net.cost[ban]! <= 0) continue;
        if (!goOn()) return best;
        left--;
        const now = best;
        const pays = marked(now.chosen).filter((k) => net.cost[k]! < 0);
        const price = (k: number) =>
          k === ban ? Number.POSITIVE_INFINITY : (now.chosen[k] ? 0.05 : 1) * Math.max(0, net.cost[k]!);
        const tried = this.derive(price, pays) ?? this.derive(price);
        if (tried && tried.cost < best.cost) {
          best = tried;
          again = true;
        }
      }
    }
    return best;
  }

  /** Leaves only what can be done, and of that, what costs nothing less. */
  private keep(chosen: Uint8Array): number {
    this.chain.run(chosen);
    chosen.set(this.chain.joined);
    return this.costOfChain();
  }

  private costOfChain(): number {
    let s = 0;
    for (let i = 0; i < this.chain.count; i++) s += this.core.net.cost[this.chain.order[i]!]!;
    return s;
  }
}

function marked(set: Uint8Array): number[] {
  const found: number[] = [];
  for (let j = 0; j < set.length; j++) if (set[j]) found.push(j);
  return found;
}
