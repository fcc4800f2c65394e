import type { Target, TeardownDocument } from '../document.ts';
import { type Graph, GraphBuilder, graphOf, hourCents, indexOf, meanOf } from '../map/index.ts';
import type { Look, Need, SmallJob } from '../structure-document.ts';
import { doneSteps, type RecordedState } from './recorded.ts';

/** A look or a small job, with what it costs and is expected to save. */
export interface Offer {
  readonly id: string;
  readonly is: 'look' | 'job';
  readonly what: Look | SmallJob;
  /** Hands and parts of it alone, cents. */
  readonly cost: number;
  /** Chance times what is saved by it now, cents. */
  readonly saves: number;
}
export const nodeOf = (offer: { readonly id: string; readonly is: 'look' | 'job' }): string =>
  `${offer.is}:${offer.id}`;

/** Looks and jobs that are still to be decided on: not looked at, not done, on the side that is worked on or asked for by name. */
export function offersOf(document: TeardownDocument, state: RecordedState): Offer[] {
  const { map, floor, side } = document;
  const index = indexOf(map);
  const isHere = (x: Look | SmallJob) => {
    const at = index.part.get(x.at)?.side ?? index.join.get(x.at)?.side ?? 'both';
    return side === 'both' || at === 'both' || at === side || document.wanted.includes(x.id);
  };
  const hands = (x: Look | SmallJob) => (meanOf(x.minutes) * x.persons * hourCents(floor)) / 60;
  const looks = map.looks
    .filter((l) => !state.looked.has(l.id))
    .map((l): Offer => {
      const saves = Math.max(0, l.chance * (l.later_cents - l.now_cents));
      return { id: l.id, is: 'look', what: l, cost: Math.round(hands(l)), saves: Math.round(saves) };
    });
  const jobs = map.jobs
    .filter((j) => !state.done.includes(`job:${j.id}`))
    .map((j): Offer => {
      const cost = Math.round(hands(j) + j.parts_cents);
      return { id: j.id, is: 'job', what: j, cost, saves: Math.round(j.chance * j.later_cents) };
    });
  return [...looks, ...jobs].filter((o) => isHere(o.what));
}

export interface Question {
  readonly graph: Graph;
  /** Targets of the question as nodes, with their words. */
  readonly targets: readonly { readonly node: number; readonly target: Target | null }[];
}

/**
 * The whole question as one AND/OR problem: the map with what is done at no cost, a thing for each target, for each
 * stated order and for each look and job on offer, whose cost is what it costs less what it is expected to save.
 *
 * A new part's price stands only where there is a choice of targets: else every plan pays it.
 */
export function questionOf(document: TeardownDocument, state: RecordedState, offers: readonly Offer[]): Question {
  const { map, floor } = document;
  const b = GraphBuilder.from(graphOf(map, floor));
  const done = doneSteps(state);
  const roots: number[] = [];
  const targets: { node: number; target: Target | null }[] = [];
  for (const step of done) settle(b, document, step);
  roots.push(...done.map((s) => b.place(s)[0]!));
  const closing = done.map((s) => b.place(`again:${s}`)[0]).filter((i) => i !== undefined);
  roots.push(...closing);
  const target = (t: Target, choice: boolean): number => {
    const node = b.put(`target:${t.work}:${t.part}`, choice ? priceOf(document, t) : 0);
    if (b.fresh) {
      if (t.work === 'reach') b.requireOneOf(node, reaching(document, t.part));
      else b.require(node, [`off:${t.part}`]);
      if (t.work === 'replace')
        for (const order of map.stated) if (order.only_if === t.part) b.require(node, order.steps);
      targets.push({ node, target: t });
    }
    return node;
  };
  for (const t of [...document.targets, ...state.added]) {
    if (!('any' in t)) {
      const node = target(t, false);
      roots.push(node);
      continue;
    }
    const ways = t.any.map((one) => target(one, true));
    const node = b.add(`any:${roots.length}`, 0);
    b.clauses[node]!.push(ways);
    roots.push(node);
  }
  for (const order of map.stated)
    if (!order.only_if) for (const step of order.steps) roots.push(b.place(step)[0] ?? impossible(b, step));
  for (const step of document.also) roots.push(b.place(step)[0] ?? impossible(b, step));
  for (const o of offers) b.require(b.add(nodeOf(o), o.cost - o.saves), o.what.needs);
  return { graph: b.done([...new Set(roots)]), targets };
}

/** A step that can never be done, as a thing that nothing leads to. */
function impossible(b: GraphBuilder, step: string): number {
  const node = b.add(step, 0);
  b.clauses[node]!.push([]);
  return node;
}

/** What is done costs nothing more; what it needs to go back may still be to come. */
function settle(b: GraphBuilder, document: TeardownDocument, step: string): void {
  const { join, part } = indexOf(document.map);
  const at = b.place(step)[0]!;
  const of = step.slice(step.indexOf(':') + 1);
  b.cost[at] = 0;
  b.clauses[at] = [];
  const back: readonly Need[] = step.startsWith('open:')
    ? join.get(of)!.close_needs
    : step.startsWith('off:')
      ? part.get(of)!.back_needs
      : [];
  if (back.length > 0) b.require(b.add(`again:${step}`, 0), back);
}

/** Off, or as bare as a look at it needs; where no look is at it, with nothing in front of it and its rows. */
function reaching(document: TeardownDocument, part: string): readonly (readonly Need[])[] {
  const index = indexOf(document.map);
  const looks = document.map.looks.filter((l) => l.at === part && l.needs.length > 0).map((l) => l.needs);
  const bare = [...index.part.get(part)!.needs, ...index.joinsOf(part).flatMap((j) => j.needs)];
  return [[`off:${part}`], ...(looks.length > 0 ? looks : [bare])];
}

function priceOf(document: TeardownDocument, t: Target): number {
  const order = t.work === 'replace' ? indexOf(document.map).part.get(t.part)?.order : undefined;
  return order ? Math.round((order.price_low_cents + order.price_high_cents) / 2) : 0;
}
