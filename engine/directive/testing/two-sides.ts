import { modelOf, type RecordModel, readRecord } from '../../record/index.ts';
import { entry } from './rule.ts';

/** An aircraft with a left and a right spar: 1 000 h and 1 500 landings in 2020, 1 400 h and 2 000 landings in 2022. */
const base = (built: string) => [
  entry('aircraft', 'ac', built, {
    registration: 'T',
    type: 'T',
    model: 'M',
    serial: '0100',
    built,
  }),
  ...(['left', 'right'] as const).flatMap((hand) => [
    entry('part', `sp-${hand}`, built, {
      part: 'spar',
      hand,
      built,
      stamp: hand === 'left' ? 'L-710' : 'R-720',
    }),
    entry('fitment', `sp-${hand}`, built, { into: 'ac', place: `${hand}_spar` }, { order: 1 }),
  ]),
  entry('use', 'ac', built, { from: built, use: 'private' }),
  entry('reading', 'ac', '2020-01-01', { total_h: 1000, landings: 1500 }),
  entry('reading', 'ac', '2022-01-01', { total_h: 1400, landings: 2000 }),
];
export const recordOf = (more: readonly object[] = [], day = '2022-01-01', built = '2010-01-01'): RecordModel =>
  modelOf(readRecord({ sparwright: 'record/1', day, entries: [...base(built), ...more] }));

export const done = (subject: string, day: string, body: object = {}, more: object = {}) =>
  entry('accomplished', subject, day, { directive: 'T-1', issue: 1, action: 'look', finding: 'none', ...body }, more);
export const onLine = (row: number, title = 'Book 1') => ({ paper: { title, page: '12', row } });
