import type { Day } from '../../engine/index.ts';
import type { FleetAircraft } from '../../sheets/index.ts';
import type { AircraftRow, DeskState, Store } from '../../store/index.ts';
import { PROGRAM } from '../version.ts';
import { readSummary } from './summary.ts';

function known(row: AircraftRow, state: DeskState | undefined, day: Day, today: Day): FleetAircraft {
  const { id, registration, type, model, serial, owner, base } = row;
  const of = { id, registration, type, model, serial, owner, base };
  const summary = readSummary(state?.summary);
  if (!state || !summary) {
    const read = row.lastDay !== null && row.lastTotal_s !== null;
    const reading = read ? { day: row.lastDay!, total_s: row.lastTotal_s!, landings: row.lastLandings } : null;
    return {
      ...of,
      reading,
      reads: { meter: null, landings: true },
      lines: [],
      asOf: null,
      holds: false,
      notComputed: [],
    };
  }
  const { lines, reading, reads, notComputed, changesOn } = summary;
  const changed = changesOn !== null && changesOn <= today;
  const later = changesOn !== null && changesOn <= day && !changed ? [inForceLater(changesOn)] : [];
  const holds = !state.stale && !changed;
  return { ...of, reading, reads, lines, asOf: state.day, holds, notComputed: [...notComputed, ...later] };
}

const inForceLater = (on: Day): string =>
  `What is recorded already changes its answers on ${on}: they are not computed for a later day.`;

/** Every aircraft of a shop as the stored answers know it; nothing is computed here. */
export async function fleetOf(store: Store, shop: string, day: Day, today: Day): Promise<FleetAircraft[]> {
  const [rows, states] = await Promise.all([store.aircraft.list(shop), store.desk.list(shop, { program: PROGRAM })]);
  const by = new Map(states.map((s) => [s.aircraft, s]));
  return rows.map((row) => known(row, by.get(row.id), day, today));
}
