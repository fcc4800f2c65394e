import type { Day } from '../../foundation/day.ts';
import { type EntryInput, lifeOf, modelOf, type RecordModel, readRecord } from '../index.ts';

/** Small invented records for tests. */
let count = 0;
type Kind = EntryInput['kind'];
export function entry<K extends Kind>(
  kind: K,
  subject: string,
  day: string,
  body: Extract<EntryInput, { kind: K }>['body'],
  more: Partial<EntryInput> = {},
): EntryInput {
  return { id: `e${++count}`, kind, subject, day, evidence: 'copy', body, ...more } as EntryInput;
}
export const A = 'aircraft:1';
export const aircraft = (built = '2000-01-01', id = A) =>
  entry('aircraft', id, built, { registration: `ZZ-${id.at(-1)}`, type: 'T', model: 'M', serial: '1', built });
export const reading = (day: string, total_h: number, landings?: number, id = A) =>
  entry('reading', id, day, landings === undefined ? { total_h } : { total_h, landings }, { order: 9 });
export const use = (from: string, to: string | undefined, what: string, id = A) =>
  entry('use', id, from, to === undefined ? { from, use: what } : { from, to, use: what });
export const model = (entries: readonly EntryInput[], day = '2020-01-01', more: object = {}): RecordModel =>
  modelOf(readRecord({ sparwright: 'record/1', day, entries, ...more }));
export const figures = (
  m: RecordModel,
  subject: string,
  facts: readonly string[],
  day = m.day,
  cuts: readonly Day[] = [],
) => {
  const life = lifeOf(m, subject, { until: day as Day, cuts });
  return facts.map((f) => life.figure(f, day as Day).value);
};
export const hours = (m: RecordModel, subject = A, day: string = m.day) =>
  figures(m, subject, ['hours.total'], day as Day)[0]!;
