import { isRefusal, type teardown } from '../../engine/index.ts';
import type { BasisHead } from '../../store/index.ts';
import type { Desk } from '../desk.ts';
import { type Answered, answered } from './answers.ts';
import { type Composed, compose } from './compose.ts';
import { keptName } from './links.ts';

/** One kept job as lists and the calendar see it. */
export interface JobSeen {
  readonly head: BasisHead;
  readonly title: string;
  /** Id of the aircraft it is of. */
  readonly aircraft: string | null;
  readonly state:
    | {
        readonly is: 'read';
        readonly of: Composed;
        readonly answers: Answered;
        readonly plan: teardown.Plan;
        readonly done: number;
        readonly steps: number;
        /** The first step that is not done; null where all are. */
        readonly next: teardown.Operation | null;
      }
    /** Its map, its floor or its work does not answer, in words. */
    | { readonly is: 'unread'; readonly because: string; readonly remedy: string };
}

async function stateOf(desk: Desk, shop: string, name: string, upTo: number | undefined): Promise<JobSeen['state']> {
  try {
    const of = await compose(desk, shop, { name, upTo });
    const answers = answered(desk, of.document);
    const plan = await answers.plan('beside');
    const open = plan.operations.filter((o) => !o.done);
    const steps = plan.operations.length;
    return { is: 'read', of, answers, plan, done: steps - open.length, steps, next: open[0] ?? null };
  } catch (e) {
    if (!isRefusal(e)) throw e;
    return { is: 'unread', because: e.detail.given, remedy: e.detail.remedy };
  }
}
const text = (x: unknown): string | null => (typeof x === 'string' && x !== '' ? x : null);

/** Every kept job with where it stands. */
export async function jobsOf(
  desk: Desk,
  shop: string,
  asked: {
    readonly upTo?: number | undefined;
    /** Only those on the kept floor of this name; null: on a floor of their own. */
    readonly floor?: string | null;
    /** All but this one. */
    readonly but?: string;
  } = {},
): Promise<readonly JobSeen[]> {
  const heads = await desk.store.bases.list(shop, 'teardown', asked.upTo);
  const mine = heads.filter(
    (h) => h.name !== asked.but && (asked.floor === undefined || keptName(h.outline.floor) === asked.floor),
  );
  return Promise.all(
    mine.map(async (head) => ({
      head,
      title: text(head.outline.title) ?? head.name,
      aircraft: text(head.outline.aircraft),
      state: await stateOf(desk, shop, head.name, asked.upTo),
    })),
  );
}
export const isFinished = (j: JobSeen): boolean => j.state.is === 'read' && j.state.next === null;
