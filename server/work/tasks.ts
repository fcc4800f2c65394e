import { growth, teardown, usage } from '../../engine/index.ts';
import { kernel } from '../cycle-kernel.ts';

/** Long work that can be cut into parts: each part depends on the input and on its own items alone. */
export interface Kind<Prepared, Part> {
  readonly prepare: (input: unknown) => Prepared;
  /** Items `from` up to, not with, `to`. @throws Refusal */
  readonly part: (prepared: Prepared, from: number, to: number) => Part;
}
const kind = <Prepared, Part>(k: Kind<Prepared, Part>): Kind<Prepared, Part> => k;

export const KINDS = {
  'growth chance': kind({
    prepare: (input) => growth.prepareChance(input as growth.ChanceTask),
    part: (prepared, from, to) => growth.livesOf(prepared, { from, to }),
  }),
  /** One document, answered beside the requests: there is one item. */
  'usage answer': kind({
    prepare: (input) => input as usage.UsageDocument,
    part: (document) => usage.answerUsage(document),
  }),
  'growth answer': kind({
    prepare: (input) => input as growth.GrowthDocument,
    part: (document) => growth.answerGrowth(document, { kernel }),
  }),
  'teardown plan': kind({
    prepare: (input) => input as teardown.TeardownDocument,
    part: (document) => teardown.planOf(document),
  }),
  'teardown answer': kind({
    prepare: (input) => input as teardown.TeardownDocument,
    part: (document) => teardown.answerOf(document),
  }),
  /** One job in its turn on a floor. */
  'teardown calendar': kind({
    prepare: (input) => input as teardown.ScheduleQuestion,
    part: (question) => teardown.scheduleOf(question),
  }),
  /** What no schedule of several jobs ends before. */
  'teardown bound': kind({
    prepare: (input) => input as teardown.ScheduleQuestion,
    part: (question) => teardown.leastEnd(question),
  }),
};
export type KindName = keyof typeof KINDS;
export type PartOf<K extends KindName> = ReturnType<(typeof KINDS)[K]['part']>;
