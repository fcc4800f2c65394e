import { canonicalJson, teardown } from '../../engine/index.ts';
import { calendarSheet, type Sheet } from '../../sheets/index.ts';
import { type Desk, dayOf } from '../desk.ts';
import { once } from '../work/once.ts';
import { isFinished, type JobSeen, jobsOf } from './jobs.ts';
import { waitingOn } from './traffic.ts';
import { inOrder, inTurn, type Waiting } from './turns.ts';

const SEED = 1;
const leftOut = (j: JobSeen, because: string) => ({ name: j.head.name, title: j.title, because });

/** What no schedule of all of them together ends before, computed beside the requests. */
const least = async ({ hands }: Pick<Desk, 'hands'>, question: teardown.ScheduleQuestion): Promise<number> =>
  hands ? once(hands, 'teardown bound', question) : teardown.leastEnd(question);

/**
 * Every kept job of the shop that is not finished, planned in turn on the floor they share, from today on: those that
 * stand in a jig first, then by their first entry. Of several floors the one asked for, else the one with the most jobs.
 */
export async function calendarOf(
  desk: Desk,
  shopId: string,
  asked: { readonly day?: string | undefined; readonly floor?: string | undefined },
): Promise<Sheet> {
  const shop = await desk.store.shops.get(shopId);
  const day = dayOf(desk, asked.day);
  const jobs = (await jobsOf(desk, shop.id)).filter((j) => !isFinished(j));
  const groups = [...(await waitingOn(desk, shop.id, jobs))].sort((a, b) => b[1].length - a[1].length);
  const [, group = []] = groups.find(([name]) => name === asked.floor) ?? groups[0] ?? [];
  const order = inOrder(group);
  const here = new Set(order.map((w) => w.name));
  const left = jobs.flatMap((j) => {
    if (j.state.is === 'unread') return [leftOut(j, j.state.because)];
    if (here.has(j.head.name)) return [];
    const { floor } = j.state.answers.document;
    return [leftOut(j, floor ? `it is done on another floor, ${floor.title}` : 'it names no floor')];
  });
  const floor = order[0]?.document.floor ?? null;
  const others = othersOf(order);
  const base = { shop, day, others };
  const none = (more: typeof left) => calendarSheet({ ...base, floor, schedule: null, jobs: [], left: more });
  if (!floor) return none(left);
  const { turns } = await inTurn(desk, order, day);
  const planned = turns.flatMap(({ name, schedule }) => (schedule ? [{ job: name, schedule }] : []));
  const refused = turns.flatMap(({ name, title, because }) => (because === null ? [] : [{ name, title, because }]));
  if (planned.length === 0) return none([...left, ...refused]);
  const shown = order.filter((w) => planned.some((p) => p.job === w.name));
  const bound = await least(desk, {
    ...{ floor, others, day, seed: SEED },
    jobs: shown.map(({ name, document, plan: { operations } }) => ({
      ...{ name, operations, side: document.side, ready: teardown.planFrom({ ...document, as_of: day }) },
    })),
  });
  const sheet = calendarSheet({
    ...{ ...base, floor, schedule: teardown.together(day, planned, bound), left: [...left, ...refused] },
    jobs: shown.map(({ name, title, plan: { operations } }) => ({ name, title, operations })),
  });
  return planned.length > 1 ? { ...sheet, because: [sheet.because, TURNS].filter(Boolean).join(' ') } : sheet;
}
const TURNS =
  'Each job is planned after what those before it take of jigs and hands: those that stand in a jig first, then in the order in which they were kept.';
function othersOf(jobs: readonly Waiting[]): teardown.TeardownDocument['others'] {
  const all = jobs.flatMap((w) => w.document.others);
  return [...new Map(all.map((o) => [canonicalJson(o), o])).values()];
}
