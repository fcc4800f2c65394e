import { type Day, later } from '../../foundation/day.ts';
import type { TeardownDocument } from '../document.ts';
import type { Operation } from '../model.ts';
import type { ScheduleQuestion } from './ask.ts';

/** The day from which on what is not done is planned: no earlier than the first day of work, the day asked, the last record. */
export const planFrom = ({ day, as_of, recorded }: Pick<TeardownDocument, 'day' | 'as_of' | 'recorded'>): Day =>
  recorded.reduce((last, r) => later(last, r.on as Day), later(day as Day, (as_of ?? day) as Day));

/** What a document asks of its floor, chance left out; null where it names none. A job goes by its title. */
export function scheduleQuestion(
  document: TeardownDocument,
  operations: readonly Operation[],
): ScheduleQuestion | null {
  const { floor, title, side, others, engaged, chance } = document;
  if (!floor) return null;
  return {
    ...{ floor, others, seed: chance.seed, day: planFrom(document) },
    jobs: [{ name: title, operations, side }],
    ...(engaged ? { engaged } : {}),
  };
}
