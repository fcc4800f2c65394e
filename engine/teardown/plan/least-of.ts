import { Refusal } from '../../foundation/refusal.ts';
import type { TeardownDocument } from '../document.ts';
import { type LeastOptions, leastSet } from '../least/index.ts';
import { type Graph, listed, reachableFrom, rootsOf, stepTitle } from '../map/index.ts';
import type { LeastSet } from '../model.ts';
import { inText } from '../words.ts';
import { type Chosen, chosenOf } from './chosen.ts';

export interface Least {
  readonly set: LeastSet;
  readonly chosen: Chosen;
}

/** The least set of a question, without what nothing needs. @throws Refusal `teardown.unreachable` */
export function leastOf(
  document: TeardownDocument,
  graph: Graph,
  targets: readonly number[],
  options: LeastOptions,
): Least {
  requireReachable(document, graph, targets);
  const set = leastSet({ cost: graph.cost, clauses: graph.clauses, targets }, options);
  const paying = set.chosen.filter((i) => graph.cost[i]! < 0);
  return { set, chosen: chosenOf(graph, set.chosen, [...targets, ...paying]) };
}

export function requireReachable(document: TeardownDocument, graph: Graph, targets: readonly number[]): void {
  const reached = new Set(reachableFrom(graph, []));
  for (const t of targets) {
    if (reached.has(t)) continue;
    const title = (s: string) => inText(stepTitle(document.map, s));
    const roots = rootsOf(graph, t).map((r) =>
      r.is === 'loop'
        ? `${listed(r.steps.map(title))}, which wait for each other in a circle`
        : `${listed(r.steps.map(title))}, which nothing leads to`,
    );
    const why = roots.length > 0 ? `every way needs ${roots.join('; and ')}` : 'what it asks for stays in its place';
    throw new Refusal('teardown.unreachable', {
      given: `${nameOf(document, graph.steps[t]!)} cannot be reached: ${why}`,
      allowed: 'a target that the map leads to',
      remedy: 'Give one of these another way on the map, or take out what it cannot need',
    });
  }
}

function nameOf(document: TeardownDocument, node: string): string {
  const [kind, ...rest] = node.split(':');
  const of = rest.at(-1)!;
  if (kind === 'target') return document.map.parts.find((p) => p.id === of)?.name ?? of;
  if (kind === 'look' || kind === 'job')
    return [...document.map.looks, ...document.map.jobs].find((x) => x.id === of)?.name ?? of;
  if (kind === 'any') return 'A choice of targets';
  return stepTitle(document.map, rest.length > 1 ? rest.join(':') : node);
}
