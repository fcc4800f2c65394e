import { createHash } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import { isRefusal, teardown, type Worked } from '../../engine/index.ts';
import type { Desk } from '../desk.ts';
import { once } from '../work/once.ts';

type Whole = Worked<teardown.TeardownAnswer>;
/** What one whole teardown document answers; each part is computed once, when it is asked for. */
export interface Answered {
  readonly document: teardown.TeardownDocument;
  /** Of a shop's wing it is made at once, of a larger map, or where nobody waits for it, beside the requests. */
  plan(beside?: 'beside'): Promise<teardown.Plan>;
  /** Plan, schedule, shopping list and quote, with their working. */
  whole(): Promise<Whole>;
}
export interface Soon {
  readonly answer: Whole;
  /** Schedule and quote are still being computed. */
  readonly computing: boolean;
}

/** Parts and joins up to which a plan takes no time that anybody would notice. */
const SMALL = 400;
/** How long a page waits for what is computed beside it. */
const PATIENCE_ms = 60;
const MOST = 120;
const kept = new Map<string, Answered>();

/** Made once; what failed is made again. */
const lazily = <T, A extends unknown[]>(make: (...of: A) => Promise<T>): ((...of: A) => Promise<T>) => {
  let made: Promise<T> | null = null;
  return (...of) => {
    made ??= make(...of).catch((e) => {
      made = null;
      throw e;
    });
    return made;
  };
};

/**
 * The answers of a document, which is read once. The same document is answered the same, so that its own text says
 * whether map, floor, job or work changed.
 * @throws Refusal as `readTeardown`
 */
export function answered(desk: Pick<Desk, 'hands'>, document: unknown): Answered {
  const key = createHash('sha256').update(JSON.stringify(document)).digest('base64');
  const before = kept.get(key);
  kept.delete(key);
  const made = before ?? answering(desk, teardown.readTeardown(document));
  kept.set(key, made);
  for (const oldest of kept.keys()) {
    if (kept.size <= MOST) break;
    kept.delete(oldest);
  }
  return made;
}
function answering({ hands }: Pick<Desk, 'hands'>, document: teardown.TeardownDocument): Answered {
  const large = document.map.parts.length + document.map.joins.length > SMALL;
  const plan = lazily(async (beside?: 'beside') =>
    hands && (large || beside) ? once(hands, 'teardown plan', document) : teardown.planOf(document),
  );
  const whole = lazily(async () => (hands ? once(hands, 'teardown answer', document) : teardown.answerOf(document)));
  return { document, plan, whole };
}

/** An answer as soon as it is there, or else its plan without the schedule and the quote. */
export async function soon(
  desk: Pick<Desk, 'hands'>,
  { document, plan }: Answered,
  made: Promise<Whole>,
): Promise<Soon> {
  const all = settled(made);
  all.catch(() => {});
  const first = desk.hands ? await plan() : null;
  const ready = await (desk.hands ? Promise.race([all, sleep(PATIENCE_ms, null)]) : all);
  if (ready && 'value' in ready) return { answer: ready, computing: false };
  return { answer: bare(document, first ?? (await plan()), ready), computing: ready === null };
}
type Refused = { readonly refused: string };
/** A schedule that cannot be made takes no plan away: it is told why. */
const settled = (whole: Promise<Whole>): Promise<Whole | Refused> =>
  whole.catch((e): Refused => {
    if (!isRefusal(e)) throw e;
    return { refused: `No schedule and no quote: ${e.detail.given}; ${e.detail.allowed}. ${e.detail.remedy}.` };
  });
function bare(document: teardown.TeardownDocument, plan: teardown.Plan, refused: Refused | null): Whole {
  const shopping = teardown.shoppingOf(document, plan);
  return {
    value: { plan, schedule: null, shopping, quote: null },
    working: [],
    warnings: refused ? [refused.refused] : [],
  };
}
