import { createHash } from 'node:crypto';
import { canonicalJson, type Day, isRefusal, teardown } from '../../engine/index.ts';
import type { Desk } from '../desk.ts';
import { once } from '../work/once.ts';
import type { JobSeen } from './jobs.ts';
import { keptName } from './links.ts';

type Document = teardown.TeardownDocument;
export type ReadJob = JobSeen & { readonly state: Extract<JobSeen['state'], { is: 'read' }> };
export const isRead = (j: JobSeen): j is ReadJob => j.state.is === 'read';

/** A job in its turn. */
export interface Turn {
  readonly name: string;
  readonly title: string;
  /** As it is scheduled beside those before it. */
  readonly document: Document;
  /** Null where it cannot be scheduled. */
  readonly schedule: teardown.Schedule | null;
  readonly because: string | null;
}
/** A job to be planned among others. */
export interface Waiting {
  readonly name: string;
  readonly title: string;
  readonly document: Document;
  readonly plan: teardown.Plan;
  /** The entry with which it was kept first; Infinity for one that is not kept. */
  readonly since: number;
}

const MOST = 500;
const kept = new Map<string, Promise<teardown.Schedule>>();

/** The same question has the same schedule: it is computed once. */
function scheduled({ hands }: Pick<Desk, 'hands'>, question: teardown.ScheduleQuestion): Promise<teardown.Schedule> {
  const key = createHash('sha256').update(JSON.stringify(question)).digest('base64');
  const before = kept.get(key);
  if (before) return before;
  const made = (async () => (hands ? once(hands, 'teardown calendar', question) : teardown.scheduleOf(question)))();
  if (kept.size >= MOST) kept.clear();
  kept.set(key, made);
  made.catch(() => kept.delete(key));
  return made;
}

/** Which floor a job is done on: a kept one by its name, one inside a job by its text; null where it names none. */
export const floorOf = (place: unknown, { floor }: Document): string | null =>
  floor ? (keptName(place) ?? `in ${canonicalJson(floor)}`) : null;

/** Those that stand in a jig first, then by their first entry. */
export function inOrder(jobs: readonly Waiting[]): Waiting[] {
  const stands = new Map(
    jobs.map((j) => {
      const question = teardown.scheduleQuestion(j.document, j.plan.operations);
      return [j, question !== null && teardown.standsInJig(question)];
    }),
  );
  return [...jobs].sort(
    (a, b) => Number(stands.get(b)) - Number(stands.get(a)) || (a.since < b.since ? -1 : a.since > b.since ? 1 : 0),
  );
}
const NOTHING: teardown.Taken = { others: [], engaged: [] };
/** A document as it is scheduled on a day beside what others take. */
export const beside = (document: Document, day: Day, { others, engaged }: teardown.Taken): Document => ({
  ...document,
  as_of: day,
  others: [...document.others, ...others],
  engaged: [...(document.engaged ?? []), ...engaged],
});

/** Each job planned after what those before it take of the jigs and the hands of one floor, in the order given. */
export async function inTurn(desk: Pick<Desk, 'hands'>, jobs: readonly Waiting[], day: Day) {
  const turns: Turn[] = [];
  let taken = NOTHING;
  for (const { name, title, plan, ...job } of jobs) {
    const document = beside(job.document, day, taken);
    const question = teardown.scheduleQuestion(document, plan.operations)!;
    try {
      const schedule = await scheduled(desk, question);
      turns.push({ name, title, document, schedule, because: null });
      const more = teardown.takenBy(schedule, title);
      taken = { others: [...taken.others, ...more.others], engaged: [...taken.engaged, ...more.engaged] };
    } catch (e) {
      if (!isRefusal(e)) throw e;
      turns.push({ name, title, document, schedule: null, because: e.detail.given });
    }
  }
  return { turns, taken };
}
