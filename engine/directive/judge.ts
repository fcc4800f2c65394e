import { secondsFromHours } from '../foundation/convert.ts';
import type { LinearForm } from '../foundation/region/index.ts';
import type { Standing } from './document.ts';
import { extremes, oneEnd, rounded, valueIn } from './expression/index.ts';
import { flownOut } from './flown-out.ts';
import { countedAt, notBefore, scaled, steepest, type Tree, treeOf } from './limit.ts';
import { landingsAhead } from './mix.ts';
import type { EndOfAnswer } from './model.ts';
import { formsOf, type Situation } from './situation.ts';
import { type Due, dueOf, type Held, hold, type Nearness, worseOf } from './standing.ts';

export interface Judged {
  readonly tree: Tree;
  readonly worst: EndOfAnswer;
  readonly best: EndOfAnswer;
  readonly held: { readonly worst: readonly Held[]; readonly best: readonly Held[] };
  readonly counted: { readonly low: number; readonly high: number } | null;
}

/** The limit in force: the first one, or the repeat once it has been done. Null: nothing has started its clock. */
export function treeInForce(s: Situation, warn: (text: string) => void): Tree | null {
  const limit = s.done ? s.action.repeat : (s.action.first ?? { before_further_flight: true as const });
  if (!limit) return null;
  const tree = treeOf(limit, s, warn);
  if (!tree) return null;
  return s.day < s.directive.effective ? notBefore(tree, s.directive.effective, s) : tree;
}

/** A limit's standing in the words of the action: done and repeating only while the next look is not yet soon. */
export const standingOf = (n: Nearness, done: boolean): Standing =>
  n === 'not yet due' && done ? 'done and repeating' : n;

const carrierOf = (s: Situation, history: readonly number[]) => {
  const facts = s.facts('now', 'aircraft') ?? s.facts('now', 'part') ?? {};
  const value = (f: LinearForm | undefined) =>
    f ? f.terms.reduce((t, [v, c]) => t + c * (history[v] ?? 0), f.constant) : null;
  const hours = value(facts['hours.total']);
  return { total_s: hours === null ? null : secondsFromHours(hours), landings: value(facts['landings.total']) };
};

/** Both ends of a tree over all possible histories; each end is run again by the plain evaluator on its witness. */
export function judge(
  s: Situation,
  tree: Tree,
  only?: (form: LinearForm, name: string, facts: Readonly<Record<string, LinearForm>>) => LinearForm,
): Judged {
  const forms = formsOf(s, only);
  const steep = steepest(tree);
  const counting = countedAt(s, 'now');
  // The margin is scaled so that 1 is soon: a thousandth of 50 h is 0.05 h.
  const both = (t: Tree) => extremes(scaled(t), forms, s.region, { tolerance: 0.001 });
  const found = both(tree);
  const low = steep === tree ? found.low : both(steep).low;
  const dueIn = (held: readonly Held[], history: readonly number[]): Due =>
    dueOf(flownOut(s, held, forms, history), carrierOf(s, history), landingsAhead(s.mix));
  // Of a "whichever comes first" another history may bring another of its limits forward: each has a worst of its own.
  const sooner = (by: Tree): Due[] =>
    firstsOf(by).map((t) => {
      const { witness } = oneEnd(scaled(t), forms, s.region, 'low', { tolerance: 0.001 });
      return dueIn(hold(t, forms, witness), witness);
    });
  const end = (e: typeof found.low, by: Tree): [EndOfAnswer, readonly Held[]] => {
    const held = hold(by, forms, e.witness);
    const shown = dueIn(held, e.witness);
    const { dueAt, left } = e === low ? soonest(shown, sooner(by)) : shown;
    const plain = standingOf(held[0]!.nearness, s.done !== null);
    // An end that is only enclosed may lie past what its witness shows: the bound speaks, never the softer witness.
    const v = rounded(e.value);
    const beyond: Nearness = v < 0 ? 'overdue' : v === 0 ? 'due' : v <= 1 ? 'soon due' : 'not yet due';
    const standing =
      e === low && (e.proven === 'enclosure' || held[0]!.scaled - e.value > SOLVER)
        ? worseOf(standingOf(beyond, s.done !== null), plain)
        : plain;
    return [
      {
        standing,
        dueAt,
        left,
        counted: counting ? rounded(valueIn(counting, forms, e.witness)) : null,
        witness: e.witness,
        proven: e.proven,
      },
      held,
    ];
  };
  const [worst, heldWorst] = end(low, steep);
  const [best, heldBest] = end(found.high, tree);
  const ends = counting ? extremes(counting, forms, s.region) : null;
  return {
    tree,
    worst,
    best,
    held: { worst: heldWorst, best: heldBest },
    counted: ends ? { low: rounded(ends.low.value), high: rounded(ends.high.value) } : null,
  };
}

/** The limits of a "whichever comes first", each for itself; none where there is only one. */
function firstsOf(t: Tree): readonly Tree[] {
  const flat = (x: Tree): readonly Tree[] => (x.kind === 'first' ? x.of.flatMap(flat) : [x]);
  return t.kind === 'first' ? flat(t) : [];
}
/** The soonest reading and the soonest date that any of them gives; what governs stays what is said of it. */
function soonest(shown: Due, others: readonly Due[]): Due {
  if (others.length === 0 || shown.dueAt.now) return shown;
  const all = [shown, ...others];
  const flying = all.filter((d) => d.hours !== null && !d.dueAt.now).sort((a, b) => a.hours! - b.hours!)[0] ?? shown;
  const days = all.flatMap((d) => d.dueAt.day ?? []).sort();
  const { total_s, landings } = flying.dueAt;
  return {
    ...flying,
    dueAt: { ...shown.dueAt, total_s, landings, day: days[0] ?? null },
    left: { ...shown.left, hours_s: flying.left.hours_s, landings: flying.left.landings },
  };
}

/** A witness that shows more left than its end by more than the solver's own slack does not speak for it. */
const SOLVER = 1e-4;
