import type { Day, teardown } from '../../engine/index.ts';
import {
  aircraftTeardownSheet,
  type FloorListed,
  type JobListed,
  type MapListed,
  type Sheet,
  targetWords,
  teardownListSheet,
} from '../../sheets/index.ts';
import type { BasisHead, Shop } from '../../store/index.ts';
import { lived } from '../basis/aircraft.ts';
import { fits, modelsOf } from '../basis/kept.ts';
import { type Desk, dayOf } from '../desk.ts';
import { type Answered, soon } from './answers.ts';
import { type JobSeen, jobsOf } from './jobs.ts';
import { answersOnFloors } from './traffic.ts';

const listed = (h: BasisHead, shop: Shop, finding: string) => ({
  name: h.name,
  title: String(h.outline.title ?? h.name),
  ...{ on: h.on, by: h.by, entry: h.entry, finding },
  invented: shop.invented || h.outline.invented === true,
});
const counted = (h: BasisHead, list: string): number =>
  Number((h.outline.counts as Readonly<Record<string, number>> | undefined)?.[list] ?? 0);
const mapListed = (h: BasisHead, shop: Shop): MapListed => ({
  ...listed(h, shop, ''),
  models: modelsOf(h),
  parts: counted(h, 'parts'),
  joins: counted(h, 'joins'),
});
const floorListed = (h: BasisHead, shop: Shop): FloorListed => ({
  ...listed(h, shop, ''),
  crew: counted(h, 'crew'),
  jigs: counted(h, 'jigs'),
});
/** When it ends: from day to day where a part on order is waited for, as its plan and its quote say. */
function endOf({ schedule, quote }: teardown.TeardownAnswer): Pick<JobListed, 'ends' | 'latest'> {
  if (quote?.outrun && quote.finish) return { ends: quote.finish.early, latest: quote.finish.late };
  return { ends: schedule?.finish?.p80 ?? schedule?.ends[0]?.day ?? null, latest: null };
}

interface Among {
  readonly shop: Shop;
  readonly registrations: ReadonlyMap<string, string>;
  /** Answers beside the jobs that are planned before each. */
  readonly floors: Promise<ReadonlyMap<string, Answered>>;
}
async function jobListed(desk: Desk, { head, aircraft, state }: JobSeen, { shop, registrations, floors }: Among) {
  const of = aircraft === null ? null : { id: aircraft, registration: registrations.get(aircraft) ?? aircraft };
  if (state.is === 'unread') {
    const finding = `${state.because}. ${state.remedy}.`;
    return {
      computing: false,
      row: {
        ...listed(head, shop, finding),
        ...{ aircraft: of, targets: '', side: '', steps: 0, done: 0, begins: null, ends: null, latest: null },
      } satisfies JobListed,
    };
  }
  const { document } = state.answers;
  const whole = async () => ((await floors).get(head.name) ?? state.answers).whole();
  const { answer, computing } = await soon(desk, state.answers, whole());
  const row: JobListed = {
    ...listed(head, shop, ''),
    aircraft: of,
    targets: targetWords(document),
    side: document.side,
    steps: state.steps,
    done: state.done,
    begins: document.day,
    ...endOf(answer.value),
  };
  return { computing, row };
}
/** Jobs as lists show them; how many of their ends are still being computed. */
async function jobRows(desk: Desk, shop: Shop, day: Day, aircraft?: string) {
  const registrations = new Map((await desk.store.aircraft.list(shop.id)).map((a) => [a.id, a.registration]));
  const seen = await jobsOf(desk, shop.id);
  const among = { shop, registrations, floors: answersOnFloors(desk, shop.id, seen, day) };
  const mine = seen.filter((j) => aircraft === undefined || j.aircraft === aircraft);
  const rows = await Promise.all(mine.map((j) => jobListed(desk, j, among)));
  const computing = rows.filter((r) => r.computing).length;
  return {
    jobs: rows.map((r) => r.row),
    said: computing ? { computing: `The end of ${computing} of ${rows.length} jobs is being computed.` } : {},
  };
}

/** The list of the room: jobs with where they stand, structure maps, floors. */
export async function teardownList(desk: Desk, shopId: string, day: Day): Promise<Sheet> {
  const shop = await desk.store.shops.get(shopId);
  const { jobs, said } = await jobRows(desk, shop, day);
  const maps = await desk.store.bases.list(shop.id, 'structure');
  const floors = await desk.store.bases.list(shop.id, 'floor');
  const sheet = teardownListSheet({
    shop,
    day,
    jobs,
    maps: maps.map((h) => mapListed(h, shop)),
    floors: floors.map((h) => floorListed(h, shop)),
  });
  return { ...sheet, ...said };
}

/** The page of one aircraft: its jobs, the maps that fit its model, and where a new job of it begins. */
export async function aircraftTeardown(desk: Desk, shopId: string, id: string, asked?: string): Promise<Sheet> {
  const day = dayOf(desk, asked);
  const { shop, thing, parts, lives } = await lived(desk, shopId, id, { day });
  const { jobs, said } = await jobRows(desk, shop, day, id);
  const model = thing.attributes.model?.value;
  const maps = (await desk.store.bases.list(shop.id, 'structure')).filter((h) => fits(h, model));
  const sheet = aircraftTeardownSheet({
    ...{ shop, thing, parts, day, jobs, life: lives.get(id) },
    maps: maps.map((h) => mapListed(h, shop)),
  });
  const href = `/${encodeURIComponent(shop.id)}/teardown/new?${new URLSearchParams({ aircraft: id })}`;
  return { ...sheet, see: { text: 'Plan a new job of this aircraft', href }, ...said };
}
