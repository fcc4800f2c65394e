import type { Graph } from '../map/index.ts';
import { reachableFrom } from '../map/index.ts';

/** A set of things in an order in which it can be done, and for each thing what of the set it rests on. */
export interface Chosen {
  /** In a valid order. */
  readonly order: readonly number[];
  readonly set: ReadonlySet<number>;
  /** For each thing of the set the things that meet its clauses, the first of the order for each. */
  readonly rests: ReadonlyMap<number, readonly number[]>;
}

/** Only what is in a set, as a problem of its own: the rest can never be done. */
const within = (graph: Graph, set: ReadonlySet<number>): Graph => ({
  ...graph,
  clauses: graph.clauses.map((c, i) => (set.has(i) ? c : [[]])),
});

/** Puts a set in order and drops what nothing of it needs: `keep` and what that rests on stay. */
export function chosenOf(graph: Graph, chosen: Iterable<number>, keep: readonly number[]): Chosen {
  const given = new Set(chosen);
  const order = reachableFrom(within(graph, given), []).filter((i) => given.has(i));
  const place = new Map(order.map((i, at) => [i, at]));
  const rests = new Map<number, number[]>();
  const set = new Set<number>();
  const rest = [...keep];
  for (let i = rest.pop(); i !== undefined; i = rest.pop()) {
    if (set.has(i)) continue;
    set.add(i);
    const on = graph.clauses[i]!.flatMap((clause) => {
      const inSet = clause.filter((k) => place.has(k));
      return inSet.length > 0 ? [inSet.reduce((a, b) => (place.get(b)! < place.get(a)! ? b : a))] : [];
    });
    rests.set(i, on);
    rest.push(...on);
  }
  return { order: order.filter((i) => set.has(i)), set, rests };
}

export const costIn = (graph: Graph, set: Iterable<number>): number => {
  let sum = 0;
  for (const i of set) sum += graph.cost[i]!;
  return sum;
};
/** Only steps of the map. */
export const stepsOf = (graph: Graph, chosen: Chosen): number[] => chosen.order.filter((i) => i < graph.count);
