import type { TeardownDocument } from '../document.ts';
import { costOf, type Graph, meanOf, needMet, type WingState } from '../map/index.ts';
import type { Extra } from '../model.ts';
import type { StepName } from '../structure-document.ts';
import { sumInWords } from '../words.ts';
import { type Chosen, stepsOf } from './chosen.ts';
import { nodeOf, type Offer } from './question.ts';

export type Asked = Extra['asked'];
/** An offer with what was decided. */
export interface Decided {
  readonly offer: Offer;
  readonly chosen: boolean;
  readonly asked: Asked;
  /** Least access beyond the plan, cents; of an offer that is not chosen. */
  readonly access: number;
  readonly more: readonly string[];
}

const hours = (min: number) => `${(min / 60).toFixed(1)} h`;

/** What is off, open and set up once a chosen set is done. */
export function stateOf(graph: Graph, chosen: Chosen): WingState {
  const pick = (kind: string) =>
    new Set(
      stepsOf(graph, chosen)
        .map((i) => graph.steps[i]!)
        .filter((s) => s.startsWith(`${kind}:`))
        .map((s) => s.slice(kind.length + 1)),
    );
  return { off: pick('off'), open: pick('open'), support: pick('support') };
}
export const isExposed = (offer: Offer, state: WingState): boolean =>
  offer.what.needs.every((need) => needMet(need, state));

/** Steps of the plan on which a thing rests, all the way down. */
export function under(chosen: Chosen, node: number): Set<number> {
  const found = new Set<number>();
  const rest = [node];
  for (let i = rest.pop(); i !== undefined; i = rest.pop())
    for (const k of chosen.rests.get(i) ?? [])
      if (!found.has(k)) {
        found.add(k);
        rest.push(k);
      }
  return found;
}

/**
 * What the chosen looks and jobs make the teardown cost more, shared among them: each step that is on the plan beyond the
 * least teardown counts in equal parts for those that need it, and the whole, less what the least teardown would have had
 * in their place, is shared in proportion.
 */
function sharesOf(graph: Graph, chosen: Chosen, least: ReadonlySet<string>, decided: readonly Decided[]) {
  const paying = decided.filter((d) => d.chosen);
  const all = stepsOf(graph, chosen);
  const more = all.filter((i) => !least.has(graph.steps[i]!));
  const inPlan = new Set(all.map((i) => graph.steps[i]!));
  const sum = (places: readonly number[]) => places.reduce((s, i) => s + graph.cost[i]!, 0);
  const spared = sum([...least].filter((s) => !inPlan.has(s)).map((s) => graph.index(s)));
  const whole = Math.max(0, sum(more) - spared);
  const needs = new Map(paying.map((d) => [d.offer.id, under(chosen, graph.index(nodeOf(d.offer)))]));
  const weight = new Map<string, number>();
  const steps = new Map<string, string[]>();
  for (const i of more) {
    const users = paying.filter((d) => needs.get(d.offer.id)!.has(i));
    for (const { offer } of users) {
      weight.set(offer.id, (weight.get(offer.id) ?? 0) + graph.cost[i]! / users.length);
      steps.set(offer.id, [...(steps.get(offer.id) ?? []), graph.steps[i]!]);
    }
  }
  const weights = [...weight.values()].reduce((a, b) => a + b, 0);
  const share = (id: string) => (weights > 0 ? (whole * (weight.get(id) ?? 0)) / weights : 0);
  return { share, steps };
}

/** Every look and job that was on offer, chosen or not, each with the sums that decide it. */
export function extrasOf(
  document: TeardownDocument,
  graph: Graph,
  chosen: Chosen,
  least: ReadonlySet<string>,
  decided: readonly Decided[],
): Extra[] {
  const { share, steps } = sharesOf(graph, chosen, least, decided);
  return decided.map((d): Extra => {
    const { offer, asked } = d;
    const access = d.chosen ? share(offer.id) : d.access;
    const more = d.chosen ? (steps.get(offer.id) ?? []) : d.more;
    const minutes = meanOf(offer.what.minutes) * offer.what.persons;
    const accessMin = more.reduce((sum, s) => sum + costOf(document.map, s, document.floor).hands_min, 0);
    return {
      id: offer.id,
      is: offer.is,
      name: offer.what.name,
      chosen: d.chosen,
      now_cents: Math.round(offer.cost + access),
      minutes,
      saves_cents: offer.saves,
      opensMore: more as StepName[],
      asked,
      because: sayWhy(document, d, access, minutes, accessMin),
    };
  });
}

function sayWhy(document: TeardownDocument, d: Decided, access: number, minutes: number, accessMin: number): string {
  const { offer, asked } = d;
  const say = (cents: number) => sumInWords(cents, document.floor?.currency ?? '');
  const expected =
    offer.is === 'look'
      ? `a ${percent(offer.what.chance)} chance of a finding is expected to save ${say(offer.saves)}`
      : `saves ${say(offer.saves)} that it would cost on its own, ${percent(offer.what.chance)} sure`;
  const own = document.floor ? `${hours(minutes)} of work, ${say(offer.cost)}` : `${hours(minutes)} of work`;
  const opens =
    access > 0
      ? ` and ${say(access)} of access that it alone, or it and others, open (${hours(accessMin)} together)`
      : ', access open anyway';
  const balance = offer.saves - offer.cost - access;
  const sums = `${expected[0]!.toUpperCase()}${expected.slice(1)}; it takes ${own}${opens}: ${balance >= 0 ? `${say(balance)} to the good` : `${say(-balance)} short`}`;
  if (asked === 'always') return `The map asks for it on every plan that exposes it. ${sums}`;
  if (asked === 'wanted') return `The shop wants it. ${sums}`;
  if (asked === 'unwanted') return `The shop does not want it. ${sums}`;
  return d.chosen ? `Pays. ${sums}` : `Does not pay. ${sums}`;
}
const percent = (p: number) => `${Math.round(p * 100)} %`;
