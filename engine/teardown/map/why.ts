import type { Graph } from './graph.ts';
import { reachableFrom } from './graph-of.ts';

/** What stands behind a thing that can never be done: a need without any way, or things that wait for each other. */
export interface Root {
  readonly is: 'no way' | 'loop';
  /** Steps; of a loop in order, each waiting for the next and the last for the first. */
  readonly steps: readonly string[];
}

/**
 * The first things missing on every way to a step, as groups: nothing else stands in front of a group but itself.
 * Empty where the step can be reached.
 */
export function rootsOf(graph: Graph, from: number, done: readonly number[] = []): Root[] {
  const reached = new Set(reachableFrom(graph, done));
  if (reached.has(from)) return [];
  const waits = (i: number): number[] =>
    graph.clauses[i]!.filter((c) => c.every((k) => !reached.has(k))).flatMap((c) => [...c]);
  const blocked = (i: number) => graph.clauses[i]!.some((c) => c.length === 0);
  return groupsOf(from, (i) => (blocked(i) ? [] : waits(i)))
    .filter((g) => g.every((i) => blocked(i) || waits(i).every((k) => g.includes(k))))
    .map((g): Root => {
      const one = g.length === 1 && (blocked(g[0]!) || !waits(g[0]!).includes(g[0]!));
      const steps = one ? g : circle(g, waits);
      return { is: one ? 'no way' : 'loop', steps: steps.filter((i) => i < graph.count).map((i) => graph.steps[i]!) };
    })
    .filter((r) => r.steps.length > 0);
}

/** A way round in a group of things that wait for each other, the lowest first. */
function circle(group: readonly number[], waits: (i: number) => number[]): number[] {
  const inside = new Set(group);
  const way: number[] = [];
  let at = Math.min(...group);
  while (!way.includes(at)) {
    way.push(at);
    at = waits(at).find((k) => inside.has(k))!;
  }
  const round = way.slice(way.indexOf(at));
  const lowest = round.indexOf(Math.min(...round));
  return [...round.slice(lowest), ...round.slice(0, lowest)];
}

/** Strongly connected groups that a thing leads to, by Tarjan's algorithm without recursion. */
function groupsOf(from: number, next: (i: number) => readonly number[]): number[][] {
  const at = new Map<number, number>();
  const low = new Map<number, number>();
  const held: number[] = [];
  const holding = new Set<number>();
  const groups: number[][] = [];
  const calls: { i: number; rest: number[] }[] = [];
  const enter = (i: number) => {
    at.set(i, at.size);
    low.set(i, at.get(i)!);
    held.push(i);
    holding.add(i);
    calls.push({ i, rest: [...next(i)] });
  };
  enter(from);
  while (calls.length > 0) {
    const call = calls.at(-1)!;
    const k = call.rest.pop();
    if (k !== undefined) {
      if (!at.has(k)) enter(k);
      else if (holding.has(k)) low.set(call.i, Math.min(low.get(call.i)!, at.get(k)!));
      continue;
    }
    calls.pop();
    const above = calls.at(-1);
    if (above) low.set(above.i, Math.min(low.get(above.i)!, low.get(call.i)!));
    if (low.get(call.i) !== at.get(call.i)) continue;
    const group: number[] = [];
    for (;;) {
      const top = held.pop()!;
      holding.delete(top);
      group.push(top);
      if (top === call.i) break;
    }
    groups.push(group.sort((a, b) => a - b));
  }
  return groups;
}
