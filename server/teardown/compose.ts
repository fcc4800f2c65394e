import { Refusal } from '../../engine/index.ts';
import { type AircraftRow, type BasisRow, basisSubject, type Shop, type WorkRow } from '../../store/index.ts';
import { standing } from '../basis/kept.ts';
import type { Desk } from '../desk.ts';
import { keptName, linksOf } from './links.ts';

/** A job with all that it rests on. */
export interface Composed {
  readonly shop: Shop;
  /** The kept job; null for one that is kept nowhere. */
  readonly job: BasisRow | null;
  readonly map: BasisRow | null;
  readonly floor: BasisRow | null;
  readonly aircraft: AircraftRow | null;
  readonly work: readonly WorkRow[];
  /** The last entry of the job or its work; 0 for one that is kept nowhere. */
  readonly last: number;
  /** Its floor as it was asked: a kept one, or the floor itself. */
  readonly place: unknown;
  /** The whole teardown document, not read yet. */
  readonly document: Readonly<Record<string, unknown>>;
}
export interface AskedJob {
  /** Name of a kept job; else the document. */
  readonly name?: string | undefined;
  readonly document?: unknown;
  /** Name of a kept job whose recorded work stands on the document too. */
  readonly workOf?: string | undefined;
  /** As known at this entry. */
  readonly upTo?: number | undefined;
}

export async function aircraftOf(desk: Desk, shop: string, id: string): Promise<AircraftRow> {
  const row = await desk.store.aircraft.get(shop, id);
  if (row) return row;
  throw new Refusal('server.not-found', {
    given: `aircraft "${id}"`,
    allowed: 'an aircraft of this shop',
    remedy: 'Choose one from the list, or leave the aircraft out',
  });
}
/** Subjects of the log that the answer of a kept job rests on. */
export const restsOn = ({ job, map, floor }: Composed): string[] =>
  [job, map, floor].flatMap((row) => (row ? [basisSubject(row.of, row.name)] : []));
const list = (x: unknown): readonly unknown[] => (Array.isArray(x) ? x : []);

/**
 * The whole document of a job: the map and the floor that it names as they stand, the registration of its aircraft in
 * its quote, and the work that was recorded on it after what it holds itself.
 * @throws Refusal `server.not-found` for a job, map, floor or aircraft that does not stand
 */
export async function compose(desk: Desk, shopId: string, asked: AskedJob): Promise<Composed> {
  const { name, upTo, workOf } = asked;
  const shop = await desk.store.shops.get(shopId);
  const job = name === undefined ? null : await standing(desk, shop.id, 'teardown', name, upTo);
  const { rest, ...links } = linksOf(job ? job.document : asked.document);
  const kept = async (of: 'structure' | 'floor', place: unknown) => {
    const named = keptName(place);
    return named === null ? null : standing(desk, shop.id, of, named, upTo);
  };
  const map = await kept('structure', links.map);
  const floor = await kept('floor', links.floor);
  const aircraft = links.aircraft === undefined ? null : await aircraftOf(desk, shop.id, links.aircraft);
  const worked = job?.name ?? workOf;
  const work = worked === undefined ? [] : await desk.store.work.list(shop.id, worked, upTo);
  const ownFloor = floor ? floor.document : links.floor;
  const quote = rest.quote as object | undefined;
  return {
    ...{ shop, job, map, floor, aircraft, work },
    place: links.floor,
    last: job ? await desk.store.work.last(shop.id, job.name, upTo) : 0,
    document: {
      ...rest,
      ...(shop.invented ? { invented: true } : {}),
      map: map ? map.document : links.map,
      ...(ownFloor === undefined ? {} : { floor: ownFloor }),
      ...(quote && aircraft ? { quote: { registration: aircraft.registration, ...quote } } : {}),
      ...(work.length ? { recorded: [...list(rest.recorded), ...work.map((w) => w.record)] } : {}),
    },
  };
}
