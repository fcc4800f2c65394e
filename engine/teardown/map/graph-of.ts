import type { Floor } from '../floor-document.ts';
import type { AndOrProblem } from '../model.ts';
import type { StructureMap } from '../structure-document.ts';
import { costOf } from './cost.ts';
import { type Graph, GraphBuilder } from './graph.ts';
import { indexOf } from './index-of.ts';

/**
 * The map as an AND/OR problem.
 *
 * A part is off when every join that holds it is open and its own needs are met. Opening a row frees all its layers.
 * A row is open when its needs are met. What must still be off or open when something goes back is taken off before it
 * comes off: the way back runs the way out in reverse. A part that stays is no step.
 */
export function graphOf(map: StructureMap, floor?: Floor): Graph {
  const b = new GraphBuilder();
  const { joinsOf } = indexOf(map);
  const parts = map.parts.filter((p) => !p.stays);
  for (const s of map.supports) b.add(`support:${s.id}`, costOf(map, `support:${s.id}`, floor).cents);
  for (const j of map.joins) b.add(`open:${j.id}`, costOf(map, `open:${j.id}`, floor).cents);
  for (const p of parts) b.add(`off:${p.id}`, costOf(map, `off:${p.id}`, floor).cents);
  b.endOfSteps();
  let at = 0;
  for (const s of map.supports) b.require(at++, s.needs);
  for (const j of map.joins) b.require(at++, [...j.needs, ...j.close_needs]);
  for (const p of parts) {
    b.require(
      at,
      joinsOf(p.id).map((j) => `open:${j.id}`),
    );
    b.require(at++, [...p.needs, ...p.back_needs]);
  }
  return b.done();
}

/**
 * All that can be done from a state, in an order in which it can be done, the state first. Forward chaining, linear in
 * the size of the graph.
 */
export function reachableFrom(problem: AndOrProblem, done: Iterable<number>): number[] {
  const n = problem.cost.length;
  const open = problem.clauses.map((c) => c.length);
  const met = problem.clauses.map((c) => new Uint8Array(c.length));
  const uses: [number, number][][] = Array.from({ length: n }, () => []);
  problem.clauses.forEach((clauses, j) => {
    clauses.forEach((clause, k) => {
      for (const i of clause) uses[i]!.push([j, k]);
    });
  });
  const reached = new Uint8Array(n);
  const order: number[] = [];
  const take = (i: number) => {
    if (reached[i]) return;
    reached[i] = 1;
    order.push(i);
  };
  for (const i of done) take(i);
  for (let i = 0; i < n; i++) if (open[i] === 0) take(i);
  for (let at = 0; at < order.length; at++)
    for (const [j, k] of uses[order[at]!]!) {
      if (met[j]![k]) continue;
      met[j]![k] = 1;
      open[j]!--;
      if (open[j] === 0) take(j);
    }
  return order;
}
