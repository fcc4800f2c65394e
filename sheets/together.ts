import type { record } from '../engine/index.ts';
import { plain } from './display.ts';
import { type Assessment, partInSentence } from './standing.ts';

/** One thing to say: an answer, or the same answer on the left and the right. */
export interface Said {
  readonly a: Assessment;
  readonly name: string;
  readonly plural: boolean;
}
const alike = (a: Assessment): string =>
  JSON.stringify([
    a.directive,
    a.action.id,
    a.standing,
    a.notComputed,
    [a.treatAs, a.couldBecome].map((e) => [e.dueAt, e.left]),
  ]);

/** The answers in their order; left and right of one kind with the same answer are said once. */
export function together(all: readonly Assessment[], things: ReadonlyMap<string, record.Thing>): Said[] {
  const out: Said[] = [];
  const said = new Set<Assessment>();
  for (const a of all) {
    if (said.has(a)) continue;
    const thing = things.get(a.subject);
    const same = all.filter((b) => alike(b) === alike(a) && things.get(b.subject)?.what === thing?.what);
    const hands = new Set(same.map((b) => things.get(b.subject)?.hand));
    const pair = thing?.kind === 'part' && same.length === 2 && hands.has('left') && hands.has('right');
    for (const b of pair ? same : [a]) said.add(b);
    out.push({
      a,
      name: pair ? `both ${plain(thing.what)}s` : partInSentence(thing, a.subject),
      plural: pair,
    });
  }
  return out;
}
