import { type Day, daysBetween, type record } from '../engine/index.ts';
import { count, day as dayWords } from './display.ts';

/** When the authority's list was last checked for an aircraft, by whom, and whether that is long ago by the shop's rule. */
export interface ListChecked {
  readonly on: Day | null;
  readonly by: string;
  readonly authority: string;
  readonly entry: string | null;
  readonly late: boolean;
  readonly words: string;
}
export function listChecked(model: record.RecordModel, aircraft: string, today: Day): ListChecked {
  const last = model.entries
    .filter((e): e is record.EntryOf<'list_checked'> => e.kind === 'list_checked' && e.subject === aircraft)
    .at(-1);
  const within = model.policy.list_checked_within_days;
  if (!last)
    return {
      on: null,
      by: '',
      authority: '',
      entry: null,
      late: true,
      words:
        'No check of the authority’s list is recorded for this aircraft: a directive that this shop has not adopted may ask for more.',
    };
  const late = daysBetween(last.day, today) > within;
  const { by, authority } = last.body;
  const said = `Authority’s list (${authority}) last checked ${dayWords(last.day)} by ${by}`;
  return {
    on: last.day,
    by,
    authority,
    entry: last.id,
    late,
    words: late
      ? `${said}: longer ago than the ${count(within, 'day')} that this shop allows. What was issued since is not among these answers.`
      : `${said}.`,
  };
}
