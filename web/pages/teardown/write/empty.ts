import type { TeardownChoices } from '../../../api/teardown.ts';
import type { Table } from '../../../parts/write/json.ts';

/** What the address of a new job asks for. */
export interface AskedFor {
  readonly aircraft: string;
  readonly map: string;
  readonly part: string;
}
const only = <T>(list: readonly T[]): T | undefined => (list.length === 1 ? list[0] : undefined);

/** The map that is meant: named, or the only one that fits the aircraft, or the only one there is. */
function mapFor({ aircraft, map }: AskedFor, choices: TeardownChoices): string | undefined {
  if (choices.maps.some((m) => m.name === map)) return map;
  const fitting = choices.of && choices.of.id === aircraft ? choices.of.maps : null;
  return fitting ? only(fitting) : only(choices.maps)?.name;
}
/** A part of the map by its id, or by that of a part in the record of the aircraft. */
function partFor({ part }: AskedFor, map: string | undefined, choices: TeardownChoices): string | undefined {
  const has = choices.maps.find((m) => m.name === map)?.has;
  if (has?.parts.some((p) => p.id === part)) return part;
  return choices.of?.parts.find((p) => p.id === part)?.on.find((o) => o.map === map)?.part;
}

/** A new job, with what the address and the shop already tell. */
export function emptyJob(asked: AskedFor, choices: TeardownChoices): Table {
  const map = mapFor(asked, choices);
  const part = partFor(asked, map, choices);
  const floor = only(choices.floors)?.name;
  const aircraft = choices.aircraft.some((a) => a.id === asked.aircraft) ? asked.aircraft : undefined;
  return {
    sparwright: 'teardown/1',
    title: '',
    day: choices.day,
    ...(aircraft ? { aircraft } : {}),
    map: map === undefined ? {} : { kept: map },
    targets: [{ ...(part === undefined ? {} : { part }), work: 'replace' }],
    ...(floor ? { floor: { kept: floor } } : {}),
  };
}
