import type { Day, teardown } from '../../engine/index.ts';
import { count, number } from '../display.ts';
import type { Units } from '../measure.ts';
import type { Scene, Shown } from '../model.ts';
import { planFrame, structurePlan } from '../scenes/structure-plan.ts';
import { factsOf, firstWords, shownOf } from './cards.ts';
import { namesOf } from './facts.ts';
import { statesOf } from './states.ts';
import { recordedOf } from './tables.ts';
import { STAGE_WORDS, WHO } from './words.ts';

/** The wing before a step: what is off by then, and what the step is. The last one has no step: all is done. */
export interface WingStep {
  /** 0 before the first step. */
  readonly number: number;
  /** Id of the operation that is next; null after the last. */
  readonly operation: string | null;
  readonly kind: teardown.OperationKind | null;
  readonly stage: string;
  readonly title: string;
  /** What must be off or done first. */
  readonly first: string;
  /** Fasteners, tools, hands, time. */
  readonly facts: readonly string[];
  readonly who: string;
  readonly gate: boolean;
  readonly done: boolean;
  /** Day and name, where it is recorded. */
  readonly recorded: string;
  /** Of a look its id, so that what was found can be recorded. */
  readonly look: string | null;
  /** Of a row its id, so that its holes can be recorded. */
  readonly join: string | null;
  /** State of the picture: what is off, open and clipped by then, and what is next. */
  readonly shown: Shown;
}
export interface WingSteps {
  readonly title: string;
  readonly day: Day;
  readonly invented: boolean;
  readonly scene: Scene;
  readonly steps: readonly WingStep[];
  /** Number of the first step that is not done. */
  readonly now: number;
}
/** Wide enough for a tablet held upright. */
const WIDTH = 720;

/** The wing step by step, for a slider: one picture, and a state of it for every step from none done to all done. */
export function stepsOf(
  document: teardown.TeardownDocument,
  plan: teardown.Plan,
  { units = 'mm' }: { units?: Units } = {},
): WingSteps {
  const { map, side } = document;
  const names = namesOf(map);
  const states = statesOf(map, plan.operations);
  const frame = planFrame(map, side, WIDTH);
  const recorded = recordedOf(document);
  const left = plan.operations.filter((o) => !o.done).length;
  const nothing: Shown = { seen: {}, labels: [], description: 'The wing as it is: nothing is off.' };
  const steps = states.map((state, i): WingStep => {
    const o = plan.operations[i];
    const shown = shownOf(map, frame, state, o ? [o] : []) ?? nothing;
    if (!o)
      return {
        number: i,
        operation: null,
        kind: null,
        stage: 'The end',
        title: left ? 'The end of the plan: all is back on' : 'All steps are done',
        first: left
          ? `${count(left, 'step')} of ${number(plan.operations.length)} ${left === 1 ? 'is' : 'are'} still to be done.`
          : '',
        facts: [],
        who: '',
        gate: false,
        done: true,
        recorded: '',
        look: null,
        join: null,
        shown,
      };
    return {
      number: i,
      operation: o.id,
      kind: o.kind,
      stage: STAGE_WORDS[o.stage],
      title: o.title,
      first: firstWords([o], state, map, names, plan.operations),
      facts: factsOf(o, names, units),
      who: WHO[o.who],
      gate: o.kind === 'gate',
      done: o.done,
      recorded: recorded(o),
      look: o.kind === 'look' || o.kind === 'closing_look' ? o.of : null,
      join: names.join.has(o.of) ? o.of : null,
      shown,
    };
  });
  const now = plan.operations.findIndex((o) => !o.done);
  return {
    title: document.title,
    day: document.day as Day,
    invented: document.invented || map.invented,
    scene: structurePlan(map, { side, width: WIDTH }),
    steps,
    now: now < 0 ? plan.operations.length : now,
  };
}
