import { createHash } from 'node:crypto';
import { canonicalJson, isRefusal, teardown } from '../../engine/index.ts';
import { calendarSheet, type Sheet } from '../../sheets/index.ts';
import { type Desk, dayOf } from '../desk.ts';
import { once } from '../work/once.ts';
import { isFinished, type JobSeen, jobsOf } from './jobs.ts';
import { keptName } from './links.ts';

type Read = JobSeen & { readonly state: Extract<JobSeen['state'], { is: 'read' }> };
const isRead = (j: JobSeen): j is Read => j.state.is === 'read';
const SEED = 1;
const MOST = 20;
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
/** Jobs by the floor they are done on: a kept one by its name, one inside a job by its text. */
function byFloor(jobs: readonly Read[]): Map<string, Read[]> {
  const groups = new Map<string, Read[]>();
  for (const j of jobs) {
    const { floor } = j.state.answers.document;
    if (!floor) continue;
    const key = keptName(j.head.outline.floor) ?? `in ${canonicalJson(floor)}`;
    groups.set(key, [...(groups.get(key) ?? []), j]);
  }
  return groups;
}
const leftOut = (j: JobSeen, because: string) => ({ name: j.head.name, title: j.title, because });

/**
 * Every kept job of the shop that is not finished, scheduled together on the floor they share, from today on. Of
 * several floors the one asked for, else the one with the most jobs.
 */
export async function calendarOf(
  desk: Desk,
  shopId: string,
  asked: { readonly day?: string | undefined; readonly floor?: string | undefined },
): Promise<Sheet> {
  const shop = await desk.store.shops.get(shopId);
  const day = dayOf(desk, asked.day);
  const jobs = (await jobsOf(desk, shop.id)).filter((j) => !isFinished(j));
  const read = jobs.filter(isRead);
  const groups = [...byFloor(read)].sort((a, b) => b[1].length - a[1].length);
  const [, together = []] = groups.find(([name]) => name === asked.floor) ?? groups[0] ?? [];
  const left = [
    ...jobs.flatMap((j) => (j.state.is === 'unread' ? [leftOut(j, j.state.because)] : [])),
    ...read
      .filter((j) => !together.includes(j))
      .map((j) => {
        const { floor } = j.state.answers.document;
        return leftOut(j, floor ? `it is done on another floor, ${floor.title}` : 'it names no floor');
      }),
  ];
  const floor = together[0]?.state.answers.document.floor ?? null;
  const others = othersOf(together);
  const base = { shop, day, others };
  const shown = together.map((j) => ({
    ...{ name: j.head.name, title: j.title, operations: j.state.plan.operations },
  }));
  if (!floor) return calendarSheet({ ...base, floor: null, schedule: null, jobs: [], left });
  const question: teardown.ScheduleQuestion = {
    ...{ floor, others, day, seed: SEED },
    jobs: together.map(({ head, state }) => {
      const { side, day: begins } = state.answers.document;
      return { name: head.name, operations: state.plan.operations, side, ...(begins > day ? { ready: begins } : {}) };
    }),
  };
  try {
    const schedule = await scheduled(desk, question);
    return calendarSheet({ ...base, floor, schedule, jobs: shown, left });
  } catch (e) {
    if (!isRefusal(e)) throw e;
    const refused = together.map((j) => leftOut(j, e.detail.given));
    return calendarSheet({ ...base, floor, schedule: null, jobs: [], left: [...left, ...refused] });
  }
}
function othersOf(jobs: readonly Read[]): teardown.TeardownDocument['others'] {
  const all = jobs.flatMap((j) => j.state.answers.document.others);
  return [...new Map(all.map((o) => [canonicalJson(o), o])).values()];
}
