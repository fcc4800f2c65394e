import type { Day } from '../../engine/index.ts';
import { nameOf } from '../basis/keep.ts';
import { type Desk, dayOf } from '../desk.ts';
import { type Answered, answered } from './answers.ts';
import type { Composed } from './compose.ts';
import { isFinished, type JobSeen, jobsOf } from './jobs.ts';
import { keptName } from './links.ts';
import { beside, floorOf, inOrder, inTurn, isRead, type ReadJob, type Turn, type Waiting } from './turns.ts';

/** Kept jobs that are not finished, by the floor they are done on, in the order in which they are planned. */
export async function waitingOn(desk: Desk, shop: string, jobs: readonly JobSeen[], upTo?: number) {
  const begun = await desk.store.bases.begun(shop, 'teardown', upTo);
  const groups = new Map<string, (Waiting & { readonly job: ReadJob })[]>();
  for (const job of jobs.filter((j) => !isFinished(j)).filter(isRead)) {
    const { document } = job.state.answers;
    const floor = floorOf(job.head.outline.floor, document);
    if (floor === null) continue;
    const { title, head, state } = job;
    const since = begun.get(head.name) ?? head.entry;
    groups.set(floor, [
      ...(groups.get(floor) ?? []),
      { job, title, document, since, name: head.name, plan: state.plan },
    ]);
  }
  return groups;
}

/** The answer of a job with what the jobs planned before it take of its floor. */
export interface OnFloor {
  readonly answers: Answered;
  /** Which jobs were taken into account, in a sentence; null where it names no floor, or nothing of it is left to do. */
  readonly said: string | null;
  /** The same for the owner, without the names of other jobs; null also where there are none. */
  readonly counted: string | null;
}

/**
 * A job as it is answered today: what is not done begins no earlier, and jigs and hands that the jobs before it take
 * on the calendar are left to them.
 */
export async function onFloor(desk: Desk, of: Composed, alone: Answered, upTo?: number): Promise<OnFloor> {
  const day = dayOf(desk, undefined);
  const { document } = alone;
  const { place } = of;
  const floor = floorOf(place, document);
  const plan = await alone.plan();
  if (floor === null || plan.operations.every((o) => o.done)) return { answers: alone, said: null, counted: null };
  const own = of.job?.name ?? nameOf(document.title);
  const jobs = await jobsOf(desk, of.shop.id, { upTo, floor: keptName(place), but: own });
  const group = (await waitingOn(desk, of.shop.id, jobs, upTo)).get(floor) ?? [];
  const begun = await desk.store.bases.begun(of.shop.id, 'teardown', upTo);
  const me: Waiting = {
    ...{ name: own, title: document.title, document, plan },
    since: begun.get(own) ?? Number.POSITIVE_INFINITY,
  };
  const order = inOrder([...group, me]);
  const { turns, taken } = await inTurn(desk, order.slice(0, order.indexOf(me)), day);
  const answers = answered(desk, beside(document, day, taken));
  return { answers, ...saidOf(turns) };
}
function saidOf(turns: readonly Turn[]): Pick<OnFloor, 'said' | 'counted'> {
  const on = turns.filter((t) => t.schedule);
  const lost = turns.filter((t) => !t.schedule).map((t) => ` ${t.title} could not be: ${t.because}.`);
  if (on.length === 0) {
    const none = 'No other job is planned before it on this floor.';
    return { said: [none, ...lost].join(''), counted: null };
  }
  const names = on.map((t) => t.title);
  const listed = names.length === 1 ? names[0] : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  const rest = 'jig days and hands that they take on the calendar are left to them.';
  const first = `Planned after ${listed}: ${names.length === 1 ? rest.replace('they take', 'it takes').replace('them', 'it') : rest}`;
  const jobs = names.length === 1 ? '1 job that is' : `${names.length} jobs that are`;
  return {
    said: [first, ...lost].join(''),
    counted: `Days take into account the jig days and hands of ${jobs} planned before it on the same floor.`,
  };
}

/** The answers of kept jobs that are not finished, each beside those planned before it; the same that their own pages show. */
export async function answersOnFloors(desk: Desk, shop: string, jobs: readonly JobSeen[], day: Day) {
  const groups = await waitingOn(desk, shop, jobs);
  const turns = await Promise.all([...groups.values()].map((group) => inTurn(desk, inOrder(group), day)));
  return new Map(turns.flatMap((t) => t.turns).map((t) => [t.name, answered(desk, t.document)]));
}
