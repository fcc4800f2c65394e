import type { Day } from '../../engine/index.ts';
import type { FleetAircraft } from '../../sheets/index.ts';
import type { AircraftRow, DeskState, Store } from '../../store/index.ts';
import { PROGRAM } from '../version.ts';
import { readSummary } from './summary.ts';

function known(row: AircraftRow, state: DeskState | undefined, kept: unknown): Kept {
  const { id, registration, type, model, serial, owner, base } = row;
  const of = { id, registration, type, model, serial, owner, base };
  const summary = readSummary(kept);
  if (!state || !summary) {
    const read = row.lastDay !== null && row.lastTotal_s !== null;
    const reading = read ? { day: row.lastDay!, total_s: row.lastTotal_s!, landings: row.lastLandings } : null;
    const reads = { meter: null, landings: true };
    return {
      aircraft: { ...of, reading, reads, lines: [], asOf: null, holds: false, notComputed: [] },
      changesOn: null,
    };
  }
  const { lines, reading, reads, notComputed, changesOn } = summary;
  return { aircraft: { ...of, reading, reads, lines, asOf: state.day, holds: !state.stale, notComputed }, changesOn };
}
/** What comes into force by the day of the page, and what only after today: nobody has computed that yet. */
function on({ aircraft, changesOn }: Kept, day: Day, today: Day): FleetAircraft {
  if (changesOn === null || changesOn > day) return aircraft;
  if (changesOn <= today) return { ...aircraft, holds: false };
  return { ...aircraft, notComputed: [...aircraft.notComputed, inForceLater(changesOn)] };
}
const inForceLater = (on: Day): string =>
  `What is recorded already changes its answers on ${on}: they are not computed for a later day.`;

interface Kept {
  readonly aircraft: FleetAircraft;
  readonly changesOn: Day | null;
}
interface Held extends Kept {
  /** What it was made of: as long as that is the same, so is it. */
  readonly of: string;
}
const held = new WeakMap<Store['desk'], Map<string, ReadonlyMap<string, Held>>>();
const lists = new WeakMap<ReadonlyMap<string, Held>, Map<string, FleetAircraft[]>>();

/** Every aircraft of a shop as the stored answers know it; nothing is computed here, and what has not changed is not read again. */
export async function fleetOf(store: Store, shop: string, day: Day, today: Day): Promise<FleetAircraft[]> {
  const shops = held.get(store.desk) ?? new Map<string, ReadonlyMap<string, Held>>();
  held.set(store.desk, shops);
  const before = shops.get(shop) ?? new Map<string, Held>();
  const [rows, states] = await Promise.all([store.aircraft.list(shop), store.desk.list(shop, { program: PROGRAM })]);
  const by = new Map(states.map((s) => [s.aircraft, s]));
  const list = rows.map((row) => ({ row, of: JSON.stringify([row, by.get(row.id)]) }));
  const changed = list.filter(({ row, of }) => before.get(row.id)?.of !== of);
  if (!changed.length && before.size === rows.length) return listOn(before, rows, day, today);
  const kept = await store.desk.summaries(
    shop,
    changed.map(({ row }) => row.id),
  );
  const now = new Map(rows.flatMap(({ id }) => (before.has(id) ? [[id, before.get(id)!] as const] : [])));
  for (const { row, of } of changed) now.set(row.id, { ...known(row, by.get(row.id), kept.get(row.id)), of });
  shops.set(shop, now);
  return listOn(now, rows, day, today);
}
/** The same list again as long as nothing in it has changed: what is made of it can be kept. */
function listOn(now: ReadonlyMap<string, Held>, rows: readonly AircraftRow[], day: Day, today: Day): FleetAircraft[] {
  const made = lists.get(now) ?? new Map<string, FleetAircraft[]>();
  lists.set(now, made);
  const key = `${day} ${today}`;
  const list = made.get(key) ?? rows.map((row) => on(now.get(row.id)!, day, today));
  if (made.size >= MOST_DAYS) made.clear();
  made.set(key, list);
  return list;
}
const MOST_DAYS = 4;
