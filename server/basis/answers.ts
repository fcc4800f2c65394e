import { createHash } from 'node:crypto';
import { growth, usage } from '../../engine/index.ts';
import { kernel } from '../cycle-kernel.ts';
import type { Desk } from '../desk.ts';
import { once } from '../work/once.ts';

export type UsageAnswered = ReturnType<typeof usage.answerUsage>;
export type GrowthAnswered = ReturnType<typeof growth.answerGrowth>;

/** The same document has the same answer, in every version of the program that runs: each is computed once. */
const MOST = 60;
class Kept<T> {
  readonly #all = new Map<string, Promise<T>>();
  get(document: unknown, make: () => Promise<T>): Promise<T> {
    const key = createHash('sha256').update(JSON.stringify(document)).digest('base64');
    const before = this.#all.get(key);
    this.#all.delete(key);
    const made = before ?? make();
    this.#all.set(key, made);
    made.catch(() => this.#all.delete(key));
    for (const oldest of this.#all.keys()) {
      if (this.#all.size <= MOST) break;
      this.#all.delete(oldest);
    }
    return made;
  }
}
const usages = new Kept<UsageAnswered>();
const growths = new Kept<GrowthAnswered>();

/** A sequence that is drawn and counted takes a while; the rest of a usage answer does not. */
export const answerUsage = (
  document: usage.UsageDocument,
  { hands }: Pick<Desk, 'hands'> = {},
): Promise<UsageAnswered> =>
  usages.get(document, async () =>
    hands && document.sequence ? once(hands, 'usage answer', document) : usage.answerUsage(document),
  );
export const answerGrowth = (
  document: growth.GrowthDocument,
  { hands }: Pick<Desk, 'hands'> = {},
): Promise<GrowthAnswered> =>
  growths.get(document, async () =>
    hands ? once(hands, 'growth answer', document) : growth.answerGrowth(document, { kernel }),
  );
