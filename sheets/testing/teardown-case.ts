import { type Day, teardown, type Worked } from '../../engine/index.ts';
import { teardownExample } from '../../examples/index.ts';
import type { TeardownSheetInput } from '../teardown/index.ts';

/** The invented job, read and answered once, to bend in tests and stories. */
export const document = teardown.readTeardown(teardownExample);
export const answered: Worked<teardown.TeardownAnswer> = teardown.answerOf({
  ...document,
  chance: { ...document.chance, runs: 100 },
});
export const DAY: Day = document.day;
export const input: TeardownSheetInput = { document, answer: answered, day: DAY };

/** The same answer with something else in it. */
export const bent = (more: Partial<teardown.TeardownAnswer>): TeardownSheetInput => ({
  ...input,
  answer: { ...answered, value: { ...answered.value, ...more } },
});
/** With the first so many operations done, each recorded. */
export function doneUpTo(n: number): TeardownSheetInput {
  const { plan } = answered.value;
  const operations = plan.operations.map((o, i) => ({ ...o, done: i < n }));
  const recorded = operations
    .filter((o) => o.done)
    .map((o): teardown.Recorded => ({ what: 'done', operation: o.id, on: DAY, by: 'M. Orne' }));
  return { ...bent({ plan: { ...plan, operations } }), document: { ...document, recorded } };
}
