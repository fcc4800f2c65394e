import type { AndOrProblem } from '../model.ts';
import type { Need } from '../structure-document.ts';

/** The AND/OR problem of a map under names: steps first, then what is made up to say it (`way:`, and what is added). */
export interface Graph extends AndOrProblem {
  readonly steps: readonly string[];
  /** How many of them, from the first on, are steps of the map. */
  readonly count: number;
  /** Place of a step; below zero where there is none. */
  readonly index: (step: string) => number;
}

/** Puts a graph together. A step that can never be done is one that was not added: a way through it is no way. */
export class GraphBuilder {
  readonly steps: string[] = [];
  readonly cost: number[] = [];
  readonly clauses: number[][][] = [];
  private readonly places = new Map<string, number>();
  private count = 0;

  /** Goes on from a graph that is there. */
  static from(graph: Graph): GraphBuilder {
    const b = new GraphBuilder();
    graph.steps.forEach((s, i) => {
      b.add(s, graph.cost[i]!);
      b.clauses[i] = graph.clauses[i]!.map((c) => [...c]);
    });
    b.count = graph.count;
    return b;
  }
  add(step: string, cost: number): number {
    const at = this.steps.length;
    this.places.set(step, at);
    this.steps.push(step);
    this.cost.push(cost);
    this.clauses.push([]);
    return at;
  }
  /** The thing of this name; added where it is not there yet, which `fresh` says. */
  put(step: string, cost: number): number {
    const known = this.places.get(step);
    this.fresh = known === undefined;
    return known ?? this.add(step, cost);
  }
  fresh = false;
  endOfSteps(): void {
    this.count = this.steps.length;
  }
  /** All of these before the thing. */
  require(at: number, needs: readonly Need[]): void {
    for (const need of needs) this.clauses[at]!.push(this.ways(need));
  }
  /** One of these lists before the thing, each as a whole. */
  requireOneOf(at: number, lists: readonly (readonly Need[])[]): void {
    this.clauses[at]!.push(lists.flatMap((list) => this.all(list)));
  }
  private ways(need: Need): number[] {
    if (typeof need === 'string') return this.place(need);
    return [...new Set(need.any.flatMap((way) => (typeof way === 'string' ? this.place(way) : this.all(way))))];
  }
  /** Its place as a list of one; an empty list where there is none. */
  place(step: string): number[] {
    const at = this.places.get(step);
    return at === undefined ? [] : [at];
  }
  /** The thing that stands for all of a list; none where one of them can never be done. */
  private all(list: readonly Need[]): number[] {
    if (list.length === 0) return [this.put('way:', 0)];
    const clauses = list.map((need) => this.ways(need));
    if (clauses.some((c) => c.length === 0)) return [];
    if (clauses.length === 1 && clauses[0]!.length === 1) return clauses[0]!;
    const name = `way:${clauses.map((c) => c.map((i) => this.steps[i]).join('|')).join('&')}`;
    const known = this.places.get(name);
    if (known !== undefined) return [known];
    const at = this.add(name, 0);
    this.clauses[at] = clauses;
    return [at];
  }
  done(targets: readonly number[] = []): Graph {
    const { steps, cost, clauses, places, count } = this;
    return { steps, cost, clauses, targets, count, index: (step) => places.get(step) ?? -1 };
  }
}
