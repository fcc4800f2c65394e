import { Chain } from './chain.ts';
import { isMust } from './musts.ts';
import type { Core } from './reduce.ts';
import { atLeastOne, type Row } from './rows.ts';

const LEAST_CUT = 0.02;

/**
 * Valid rows that the values x break. Three kinds, each true of every set that can be done: a thing needs one of each of
 * its clauses; a thing needs its musts; and of things without which a goal is not reached (found by forward chaining, so
 * that a loop supports nothing) the set holds one if it holds the goal.
 */
export class Cuts {
  private readonly core: Core;
  private readonly chain: Chain;
  private readonly allowed: Uint8Array;
  private readonly key: Float64Array;
  private readonly isTarget: Uint8Array;
  private seed = 1;

  constructor(core: Core) {
    const { net } = core;
    this.core = core;
    this.chain = new Chain(net);
    this.allowed = new Uint8Array(net.things);
    this.key = new Float64Array(net.things);
    this.isTarget = new Uint8Array(net.things);
    for (const t of core.targets) this.isTarget[t] = 1;
  }

  private next(): number {
    this.seed = (Math.imul(this.seed, 1664525) + 1013904223) >>> 0;
    return this.seed / 4294967296;
  }

  private row(of: readonly number[], j: number): Row {
    return atLeastOne(of, this.isTarget[j] ? null : j);
  }

  /** Clauses and musts that x breaks, the worst of each thing. */
  plain(x: ArrayLike<number>, most: number): Row[] {
    const { net, musts } = this.core;
    const found: { broken: number; of: number[]; j: number }[] = [];
    for (let j = 0; j < net.things; j++) {
      const at = this.isTarget[j] ? 1 : x[j]!;
      if (at < LEAST_CUT) continue;
      for (let c = net.clauseFrom[j]!; c < net.clauseFrom[j + 1]!; c++) {
        let sum = 0;
        for (let e = net.memberFrom[c]!; e < net.memberFrom[c + 1]! && sum < at; e++) sum += x[net.members[e]!]!;
        if (at - sum <= LEAST_CUT) continue;
        found.push({ broken: at - sum, of: [...net.members.subarray(net.memberFrom[c], net.memberFrom[c + 1])], j });
      }
      let [worst, must] = [LEAST_CUT, -1];
      for (let w = 0; w < musts.words; w++)
        for (let rest = musts.bits[j * musts.words + w]!; rest !== 0; rest &= rest - 1) {
          const k = (w << 5) + 31 - Math.clz32(rest & -rest);
          if (k !== j && at - x[k]! > worst) [worst, must] = [at - x[k]!, k];
        }
      if (must >= 0) found.push({ broken: worst, of: [must], j });
    }
    found.sort((a, b) => b.broken - a.broken);
    return found.slice(0, most).map((f) => this.row(f.of, f.j));
  }

  /**
   * Things without one of which the goal is not reached, light under x: things are let in, heaviest first, each unless the
   * goal would be reached; what stays out is such a set, and none smaller within it is.
   */
  private gate(x: ArrayLike<number>, goal: number, noise: number): number[] {
    const { net, musts } = this.core;
    const { chain, allowed, key } = this;
    const todo: number[] = [];
    for (let k = 0; k < net.things; k++) {
      /** What needs the goal never helps to reach it. */
      const after = k !== goal && isMust(musts, k, goal);
      allowed[k] = after || x[k]! > 1 - 1e-6 ? 1 : 0;
      if (k === goal) allowed[k] = 1;
      if (allowed[k]) continue;
      key[k] = x[k]! * (1 - noise * this.next()) + 1e-3 * noise * this.next();
      todo.push(k);
    }
    chain.run(allowed);
    if (chain.joined[goal]) return [];
    todo.sort((a, b) => key[b]! - key[a]! || a - b);
    const out: number[] = [];
    for (const k of todo) {
      const mark = chain.mark();
      allowed[k] = 1;
      chain.add(k, allowed);
      if (!chain.joined[goal]) continue;
      chain.back(mark.count, mark.touched);
      allowed[k] = 0;
      out.push(k);
    }
    return out;
  }

  /** Gates that x breaks, for up to so many goals, one after the other without what the one before held. */
  gates(x: ArrayLike<number>, goals: number, each: number): Row[] {
    const { net } = this.core;
    const found: Row[] = [];
    /** First what hangs in the air: chosen in part, and not reached with all that is chosen in part. */
    for (let k = 0; k < net.things; k++) this.allowed[k] = x[k]! > 1e-6 ? 1 : 0;
    this.chain.run(this.allowed);
    const loose = Uint8Array.from({ length: net.things }, (_, j) =>
      x[j]! > LEAST_CUT && !this.chain.joined[j] ? 1 : 0,
    );
    const order: number[] = [];
    for (let j = 0; j < net.things; j++) if (loose[j] || x[j]! > 0.1) order.push(j);
    const asks = (j: number) => net.clauseFrom[j + 1]! - net.clauseFrom[j]!;
    order.sort((a, b) => loose[b]! - loose[a]! || x[b]! - x[a]! || asks(b) - asks(a) || a - b);
    const start = order.length > goals ? Math.floor(this.next() * order.length) : 0;
    for (let i = 0; i < Math.min(goals, order.length); i++) {
      const goal = order[(i < goals / 2 ? i : start + i) % order.length]!;
      const at = x[goal]!;
      const now = Float64Array.from({ length: net.things }, (_, k) => x[k]!);
      for (let n = 0; n < each; n++) {
        const out = this.gate(now, goal, n === 0 ? 0 : 0.5);
        if (out.length === 0) break;
        let sum = 0;
        for (const k of out) sum += x[k]!;
        if (at - sum > LEAST_CUT) {
          found.push(this.row(out, goal));
          for (const k of out) now[k] = 1;
        }
      }
    }
    return found;
  }
}
