import { Chain } from './chain.ts';
import { allMusts, common, isMust, type Musts, mustsOf } from './musts.ts';
import { type Net, netOf } from './net.ts';

/** What is left to decide: the numbers in it are its own, `names` gives those of the problem. */
export interface Core {
  readonly net: Net;
  readonly musts: Musts;
  /** Of each thing those of the problem that it stands for. */
  readonly names: readonly (readonly number[])[];
  /** Things that every answer holds. */
  readonly targets: readonly number[];
}
export interface Reduced {
  readonly core: Core;
  /** Things of the problem that every least answer may hold, done first; their cost is paid. */
  readonly given: readonly number[];
  readonly paid: number;
}
type Clauses = readonly (readonly (readonly number[])[])[];

/** Of lists of members those that hold no other; each once. */
function withoutSupersets(lists: readonly (readonly number[])[]): number[][] {
  const kept: { list: number[]; set: Set<number> }[] = [];
  for (const list of [...lists].sort((a, b) => a.length - b.length))
    if (!kept.some((k) => k.list.every((x) => list.includes(x)))) kept.push({ list: [...list], set: new Set(list) });
  return kept.map((k) => k.list);
}

/** Clauses of one thing without what its musts decide already. */
function simpler(net: Net, m: Musts, chain: Chain, j: number): number[][] {
  const sharedOf = new Map<readonly number[], Uint32Array>();
  const lists: number[][] = [];
  for (let c = net.clauseFrom[j]!; c < net.clauseFrom[j + 1]!; c++) {
    const members = [...net.members.subarray(net.memberFrom[c], net.memberFrom[c + 1])];
    /** A member that needs j comes after it; one that needs another member adds nothing to it. */
    const useful = members.filter(
      (k) =>
        chain.joined[k] && !isMust(m, k, j) && !members.some((o) => o !== k && isMust(m, k, o) && !isMust(m, o, k)),
    );
    const shared = new Uint32Array(m.words);
    common(net, m, chain.joined, c, shared);
    lists.push(useful);
    sharedOf.set(useful, shared);
  }
  const kept: number[][] = [...lists].sort((a, b) => b.length - a.length);
  for (const list of [...kept]) {
    const others = kept.filter((o) => o !== list);
    const met = list.some((k) => others.some((o) => (sharedOf.get(o)![k >>> 5]! >>> (k & 31)) & 1));
    if (met) kept.splice(kept.indexOf(list), 1);
  }
  return withoutSupersets(kept);
}

/** Things that another does at least as well for no more: it serves wherever they do and asks for nothing else. */
function outdone(net: Net, m: Musts, keep: Uint8Array): Uint8Array {
  const gone = new Uint8Array(net.things);
  const clause = (c: number) => net.members.subarray(net.memberFrom[c], net.memberFrom[c + 1]);
  for (let a = 0; a < net.things; a++) {
    if (keep[a] || net.cost[a]! < 0) continue;
    const uses = net.uses.subarray(net.useFrom[a], net.useFrom[a + 1]);
    if (uses.length === 0) continue;
    const served = (b: number) => uses.every((c) => net.head[c] === b || clause(c).includes(b));
    const asksNoMore = (b: number) => {
      for (let c = net.clauseFrom[b]!; c < net.clauseFrom[b + 1]!; c++) {
        const list = clause(c);
        let fine = list.some((k) => k !== a && isMust(m, a, k));
        for (let d = net.clauseFrom[a]!; !fine && d < net.clauseFrom[a + 1]!; d++)
          fine = clause(d).every((k) => list.includes(k));
        if (!fine) return false;
      }
      return true;
    };
    gone[a] = clause(uses[0]!).some(
      (b) => b !== a && !gone[b] && net.cost[b]! <= net.cost[a]! && served(b) && asksNoMore(b),
    )
      ? 1
      : 0;
  }
  return gone;
}

/** Things that serve one other only, which cannot do without: -1, or that other. They are chosen with it. */
function absorbed(net: Net, lists: readonly (readonly (readonly number[])[])[], held: Uint8Array): Int32Array {
  const uses = new Int32Array(net.things);
  for (const list of lists) for (const l of list) for (const k of l) uses[k]!++;
  const into = new Int32Array(net.things).fill(-1);
  const taken = new Uint8Array(net.things);
  lists.forEach((list, j) => {
    for (const [k] of list.filter((l) => l.length === 1) as [number][]) {
      if (uses[k] !== 1 || net.cost[k]! < 0 || (held[k] && !held[j]) || taken[j] || taken[k] || into[k]! >= 0) continue;
      if (into[j]! >= 0 || k === j) continue;
      into[k] = j;
      taken[k] = taken[j] = 1;
    }
  });
  return into;
}

/**
 * Takes away all that cannot matter: what is never reached, what nothing wanted leads to, what stands after what it would
 * serve, clauses that others meet, things outdone by another; what every answer holds and can be done at once is given.
 *
 * @param allowed 0 for things that are left out
 * @returns null where a target is not reached
 */
export function reduce(
  cost: ArrayLike<number>,
  clauses: Clauses,
  targets: readonly number[],
  allowed?: Uint8Array,
): Reduced | null {
  let names: number[][] = clauses.map((_, j) => [j]);
  let lists: Clauses = clauses.map((l) => l.map((k) => [...new Set(k)]));
  let wanted = new Set(targets);
  const given: number[] = [];
  let may = allowed ?? new Uint8Array(names.length).fill(1);
  for (;;) {
    const net = netOf(
      names.map((of) => of.reduce((s, x) => s + cost[x]!, 0)),
      lists,
    );
    const chain = new Chain(net);
    chain.run(may);
    for (const t of wanted) if (!chain.joined[t]) return null;
    const musts = allMusts(net, chain);
    const held = new Uint8Array(net.things);
    for (const t of wanted) for (const k of mustsOf(musts, t)) held[k] = 1;
    /** Held or free of cost, and ready: done at once. */
    const atOnce = Uint8Array.from(held, (h, j) => (chain.joined[j] && (h || net.cost[j]! <= 0) ? 1 : 0));
    const done = new Chain(net);
    done.run(atOnce);
    const gone = outdone(net, musts, held);
    const next: number[][][] = [];
    for (let j = 0; j < net.things; j++) {
      const open = chain.joined[j] && !done.joined[j] && !gone[j];
      next.push(
        open
          ? simpler(net, musts, chain, j)
              .filter((l) => !l.some((k) => done.joined[k]))
              .map((l) => l.filter((k) => !gone[k]))
          : [],
      );
    }
    const into = absorbed(net, next, held);
    for (let k = 0; k < net.things; k++) {
      const j = into[k]!;
      if (j < 0) continue;
      next[j] = [...next[j]!.filter((l) => !l.includes(k)), ...next[k]!];
      names[j]!.push(...names[k]!);
    }
    const stays = new Uint8Array(net.things);
    const todo = names.flatMap((_, j) =>
      chain.joined[j] && !done.joined[j] && !gone[j] && into[j]! < 0 && (held[j] || net.cost[j]! < 0) ? [j] : [],
    );
    for (const j of todo) stays[j] = 1;
    for (let i = 0; i < todo.length; i++)
      for (const l of next[todo[i]!]!)
        for (const k of l) {
          if (stays[k]) continue;
          stays[k] = 1;
          todo.push(k);
        }
    for (let i = 0; i < done.count; i++) given.push(...names[done.order[i]!]!);
    const left = names.flatMap((_, j) => (stays[j] ? [j] : []));
    const size = (l: Clauses, which: readonly number[]) =>
      which.reduce((s, j) => s + l[j]!.reduce((t, k) => t + 1 + k.length, 0), 0);
    const same = left.length === names.length && size(next, left) === size(lists, left);
    const now = new Map(left.map((j, i) => [j, i]));
    lists = left.map((j) => next[j]!.map((l) => l.map((k) => now.get(k)!)));
    names = left.map((j) => names[j]!);
    wanted = new Set(left.flatMap((j, i) => (held[j] ? [i] : [])));
    may = new Uint8Array(names.length).fill(1);
    if (!same) continue;
    const paid = given.reduce((s, x) => s + cost[x]!, 0);
    return { core: { net, musts, names, targets: [...wanted] }, given, paid };
  }
}
