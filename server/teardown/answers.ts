import { createHash } from 'node:crypto';
import type { teardown, Worked } from '../../engine/index.ts';
import type { Desk } from '../desk.ts';
import { once } from '../work/once.ts';
import { answerTeardown, planOf, readTeardown } from './engine.ts';

/** What one whole teardown document answers; each part is computed once, when it is asked for. */
export interface Answered {
  readonly document: teardown.TeardownDocument;
  /** Of a document with no more than a shop's wing it is made at once, of a larger one beside the requests. */
  plan(): Promise<teardown.Plan>;
  /** Plan, schedule, shopping and quote, with their working. */
  whole(): Promise<Worked<teardown.TeardownAnswer>>;
}

/** Parts and joins up to which a plan takes no time that anybody would notice. */
const SMALL = 300;
const MOST = 40;
const kept = new Map<string, Answered>();

const lazily = <T>(make: () => Promise<T>): (() => Promise<T>) => {
  let made: Promise<T> | null = null;
  return () => {
    made ??= make().catch((e) => {
      made = null;
      throw e;
    });
    return made;
  };
};

/**
 * The answers of a document, read once: what is the same is answered the same, so entries of the log need not be
 * asked for what changed.
 * @throws Refusal as `readTeardown`
 */
export function answered(desk: Pick<Desk, 'hands'>, document: unknown): Answered {
  const key = createHash('sha256').update(JSON.stringify(document)).digest('base64');
  const before = kept.get(key);
  kept.delete(key);
  const made = before ?? answering(desk, readTeardown(document));
  kept.set(key, made);
  for (const oldest of kept.keys()) {
    if (kept.size <= MOST) break;
    kept.delete(oldest);
  }
  return made;
}
function answering({ hands }: Pick<Desk, 'hands'>, document: teardown.TeardownDocument): Answered {
  const { parts, joins } = document.map;
  const large = parts.length + joins.length > SMALL;
  return {
    document,
    plan: lazily(async () => (hands && large ? once(hands, 'teardown plan', document) : planOf(document))),
    whole: lazily(async () => (hands ? once(hands, 'teardown answer', document) : answerTeardown(document))),
  };
}
