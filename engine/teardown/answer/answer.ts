import { type Worked, worked } from '../../foundation/working.ts';
import type { TeardownDocument } from '../document.ts';
import type { LeastOptions } from '../least/index.ts';
import { readTeardown } from '../map/index.ts';
import type { Operation, Schedule, TeardownAnswer } from '../model.ts';
import { planOf } from '../plan/index.ts';
import { quoted, shoppingOf } from '../quote/index.ts';
import { scheduleOf, scheduleQuestion } from '../schedule/index.ts';
import { warningsOf } from './warnings.ts';
import { workingOf } from './working.ts';

export interface TeardownOptions extends LeastOptions {
  /** Lists that the search for a schedule may try. */
  readonly effort_lists?: number;
  /** Leaves P50 and P80 of the finish out: they are drawn by planning anew in every run. */
  readonly without_chance?: boolean;
}

/**
 * What has to come off, in what order, how long does it take, and what does it cost?
 *
 * What: plan, schedule where a floor is given, shopping list, quote where its terms are given too; with the steps behind
 * cost, hours, bound, finish and contingency, and all that is not proven, assumed, made up or not measured.
 * Not valid for: more than the map says. It approves nothing.
 * @param input a document `teardown/1`, whole, in any unit of its fields
 * @param options how hard the least teardown is looked for, counted, never timed
 * @returns minutes, hours, whole cents, days
 * @throws Refusal as `readTeardown`, `planOf`, `scheduleOf`
 */
export function answerTeardown(input: unknown, options: TeardownOptions = {}): Worked<TeardownAnswer> {
  return answerOf(readTeardown(input), options);
}

/** The same of a document that was read. */
export function answerOf(document: TeardownDocument, options: TeardownOptions = {}): Worked<TeardownAnswer> {
  const plan = planOf(document, options);
  const schedule = scheduled(document, plan.operations, options);
  const shopping = shoppingOf(document, plan);
  const { floor, quote: terms } = document;
  const priced = floor && terms ? quoted({ ...document, floor, quote: terms }, plan, schedule, shopping) : null;
  const value: TeardownAnswer = { plan, schedule, shopping, quote: priced?.quote ?? null };
  return worked(value, workingOf(document, value, priced), warningsOf(document, value, priced));
}

function scheduled(
  document: TeardownDocument,
  operations: readonly Operation[],
  options: TeardownOptions,
): Schedule | null {
  const question = scheduleQuestion(document, operations);
  if (!question) return null;
  return scheduleOf({
    ...question,
    ...(options.effort_lists === undefined ? {} : { effort: options.effort_lists }),
    ...(options.without_chance ? {} : { chance: document.chance }),
  });
}
