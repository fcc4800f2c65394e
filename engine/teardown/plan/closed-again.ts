import type { TeardownDocument } from '../document.ts';
import { indexOf, isMet, listed, splitStep, stepTitle } from '../map/index.ts';
import type { MapFinding, Operation } from '../model.ts';
import { operation } from '../passes/index.ts';
import { inText } from '../words.ts';
import type { Chosen } from './chosen.ts';
import { stepsUnder } from './decide.ts';
import type { Question } from './question.ts';
import { doneSteps, type RecordedState } from './recorded.ts';

/** What was put back in the meantime and would have to come off again for what was found since. */
export interface ClosedAgain {
  readonly finding: MapFinding;
  /** A gate that the steps behind it wait for: they cannot be done as the wing is now. */
  readonly gate: Operation;
  /** Steps of the plan that rest on what is back in its place. */
  readonly holds: ReadonlySet<string>;
}

export function closedAgain(
  document: TeardownDocument,
  { graph, targets }: Question,
  chosen: Chosen,
  state: RecordedState,
): ClosedAgain[] {
  const backAgain = new Set(doneSteps(state).filter((s) => !isMet(s, state)));
  if (backAgain.size === 0) return [];
  const added = targets.filter(({ target, node }) => target && chosen.set.has(node) && state.added.includes(target));
  return added.flatMap(({ target, node }): ClosedAgain[] => {
    const under = stepsUnder(graph, chosen, node);
    const again = under.filter((s) => backAgain.has(s));
    if (again.length === 0) return [];
    const id = target!.part;
    const name = indexOf(document.map).part.get(id)!.name;
    const what = listed(again.map((s) => inText(stepTitle(document.map, s))));
    const holds = under.filter(
      (s) => !backAgain.has(s) && stepsUnder(graph, chosen, graph.index(s)).some((on) => backAgain.has(on)),
    );
    return [
      {
        finding: {
          code: 'closed-again',
          text: `${name}: what was found asks for ${what} once more, and that is back in its place already; this plan does not take it off a second time, and stops before what lies behind it`,
          about: [id, ...again.map((s) => splitStep(s)[1])],
          remedy: 'Plan it as a job of its own that begins with the wing as it is now',
        },
        gate: operation('gate', `again-${id}`, 'take_down', `Stop: plan anew for ${inText(name)}`, {
          because: `What was found asks for ${what} once more, and that is back in its place already`,
        }),
        holds: new Set(holds),
      },
    ];
  });
}

/** The steps that are left, each behind the gates that stop it. */
export const stopped = (again: readonly ClosedAgain[], ahead: readonly Operation[]): Operation[] => [
  ...new Map(again.map((a) => [a.gate.id, a.gate])).values(),
  ...ahead.map((o) => {
    const gates = again.filter((a) => a.holds.has(o.id)).map((a) => a.gate.id);
    return gates.length > 0 ? { ...o, after: [...new Set([...o.after, ...gates])] } : o;
  }),
];
