import { isRefusal, type teardown } from '../../engine/index.ts';
import type { Desk } from '../desk.ts';
import { answered } from './answers.ts';

type Recorded = teardown.Recorded;
export type RecordWords = (r: Recorded) => string;

/**
 * "Take off: fuel tank" as done, a finding at "Walkway doubler", as a refusal says it: by the titles of the job's plan and
 * the names of its map; what is not on them, and all of a job that cannot be planned, by its id.
 */
export async function recordWords(desk: Desk, document: Readonly<Record<string, unknown>>): Promise<RecordWords> {
  const { title, look, join } = await namesOf(desk, document);
  const said = (names: ReadonlyMap<string, string>, id: string) => `"${names.get(id) ?? id}"`;
  return (r) => {
    if (r.what === 'done') return `${said(title, r.operation)} as done`;
    if (r.what === 'found')
      return `${r.finding === 'finding' ? 'a finding' : 'nothing found'} at ${said(look, r.look)}`;
    return `the holes of ${said(join, r.join)}`;
  };
}

async function namesOf(desk: Desk, document: Readonly<Record<string, unknown>>) {
  const byId = (list: readonly { id: string; name: string }[]) => new Map(list.map((x) => [x.id, x.name]));
  try {
    const made = answered(desk, document);
    const { map } = made.document;
    const { operations } = await made.plan();
    return { title: new Map(operations.map((o) => [o.id, o.title])), look: byId(map.looks), join: byId(map.joins) };
  } catch (e) {
    if (!isRefusal(e)) throw e;
    return { title: byId([]), look: byId([]), join: byId([]) };
  }
}
