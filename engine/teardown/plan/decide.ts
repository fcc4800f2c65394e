import type { TeardownDocument } from '../document.ts';
import { type LeastOptions, leastSet } from '../least/index.ts';
import { type Graph, reachableFrom } from '../map/index.ts';
import type { MapFinding } from '../model.ts';
import { type Chosen, chosenOf, costIn, stepsOf } from './chosen.ts';
import { type Asked, type Decided, isExposed, stateOf, under } from './extras.ts';
import { type Least, leastOf } from './least-of.ts';
import { nodeOf, type Offer } from './question.ts';

export interface Joint {
  readonly least: Least;
  readonly chosen: Chosen;
  readonly decided: readonly Decided[];
  readonly findings: readonly MapFinding[];
}

/** Steps of the map on which a thing of the plan rests, all the way down. */
export function stepsUnder(graph: Graph, chosen: Chosen, node: number): string[] {
  return [...under(chosen, node)].filter((i) => i < graph.count).map((i) => graph.steps[i]!);
}

/**
 * Targets, looks and small jobs as one optimum.
 *
 * What is wanted is a target; what is not wanted is not on offer. What the map asks for on every plan that exposes it
 * may pay for access like any other, and is done where the optimum exposes it; it never makes the optimum go another
 * way to leave it hidden.
 */
export function decide(
  document: TeardownDocument,
  graph: Graph,
  offers: readonly Offer[],
  targets: readonly number[],
  options: LeastOptions,
): Joint {
  const wanted = new Set(document.wanted);
  const refused = (o: Offer) => document.unwanted.includes(o.id) && !isAlways(o);
  const place = (o: Offer) => graph.index(nodeOf(o));
  const roots = [...targets, ...offers.filter((o) => wanted.has(o.id)).map(place)];
  const without = (out: (o: Offer) => boolean): Graph => {
    const shut = new Set(offers.filter(out).map(place));
    return { ...graph, clauses: graph.clauses.map((c, i) => (shut.has(i) ? [[]] : c)) };
  };
  const onOffer = without(refused);
  const least = leastOf(document, onOffer, roots, options);
  const state = stateOf(graph, least.chosen);
  const forced = offers.filter((o) => isAlways(o) && isExposed(o, state)).map(place);
  const paying = offers.map(place).filter((i) => least.chosen.set.has(i));
  const chosen = chosenOf(onOffer, [...least.chosen.set, ...forced], [...roots, ...paying, ...forced]);
  const reachable = new Set(reachableFrom(graph, []));
  const decided = offers
    .filter((o) => reachable.has(place(o)))
    .map((offer): Decided => {
      const on = chosen.set.has(place(offer));
      const asked: Asked =
        isAlways(offer) && (on || isExposed(offer, state))
          ? 'always'
          : wanted.has(offer.id)
            ? 'wanted'
            : document.unwanted.includes(offer.id)
              ? 'unwanted'
              : 'by sums';
      return { offer, chosen: on, asked, ...(on ? { access: 0, more: [] } : accessFor(graph, chosen, place(offer))) };
    });
  return { least, chosen, decided, findings: findingsOf(document, offers, decided, reachable, place) };
}
/** A look into a bay before it is closed is as much asked for as one that the map always wants. */
const isAlways = (o: Offer): boolean =>
  o.is === 'look' && 'always' in o.what && (o.what.always || o.what.before_closing);

/** Least further access to something that is not chosen, given the plan. */
function accessFor(graph: Graph, chosen: Chosen, node: number): { access: number; more: string[] } {
  const clauses = graph.clauses.map((c, i) =>
    chosen.set.has(i) ? [] : i >= graph.count && graph.cost[i]! < 0 && i !== node ? [[]] : c,
  );
  const cost = graph.cost.map((c, i) => (chosen.set.has(i) || i === node ? 0 : Math.max(0, c)));
  const found = leastSet({ cost, clauses, targets: [node] }, { effort: 1 });
  const more = chosenOf({ ...graph, clauses, cost }, found.chosen, [node]);
  return {
    access: costIn({ ...graph, cost }, more.set),
    more: stepsOf(graph, more)
      .filter((i) => !chosen.set.has(i))
      .map((i) => graph.steps[i]!),
  };
}

function findingsOf(
  document: TeardownDocument,
  offers: readonly Offer[],
  decided: readonly Decided[],
  reachable: ReadonlySet<number>,
  place: (o: Offer) => number,
): MapFinding[] {
  const never = offers
    .filter((o) => !reachable.has(place(o)))
    .map((o) => ({
      code: 'never-exposed',
      text: `${o.what.name} can never be done: nothing exposes it`,
      about: [o.id],
      remedy: 'Correct on the map what it needs',
    }));
  const against = decided
    .filter((d) => d.asked === 'always' && document.unwanted.includes(d.offer.id))
    .map((d) => ({
      code: 'always-unwanted',
      text: `${d.offer.what.name} is not wanted, but the map asks for it on every plan that exposes it; it stays`,
      about: [d.offer.id],
      remedy: 'Take it out of the list, or change the map and say why',
    }));
  return [...never, ...against];
}
