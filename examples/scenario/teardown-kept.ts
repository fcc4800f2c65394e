import type { teardown } from '../../engine/index.ts';
import { floorExample } from './floor.ts';
import { teardownExample } from './teardown.ts';
import { structureExample } from './wing.ts';

/** What the invented shop keeps for this room: its map, its floor, and two jobs that share the right-hand jig. */
export const structureKept = { name: 'whimbrel-w4-wing', document: structureExample } as const;
export const floorKept = { name: 'ostrey-field-floor', document: floorExample } as const;

const { map: _map, floor: _floor, ...question } = teardownExample;
const { registration: _registration, owner: _owner, ...terms } = teardownExample.quote!;
const { edge_distances: _measured, ...unmeasured } = question;
const onTheShelf = { map: { kept: structureKept.name }, floor: { kept: floorKept.name } };

/** The wing of the first call is in work since Monday; the tug that once gave its left wing away comes after it. */
export const teardownsKept = [
  {
    name: 'zq-lmb-right-inboard-spar',
    document: { ...question, day: '2026-11-23', aircraft: 'aircraft:0612', ...onTheShelf },
  },
  {
    name: 'zq-hrn-right-inboard-spar',
    document: {
      ...unmeasured,
      title: 'ZQ-HRN, right inboard spar',
      day: '2026-12-07',
      aircraft: 'aircraft:0447',
      ...onTheShelf,
      quote: { ...terms, owner: 'the gliding club of ZQ-HRN (invented)' },
      chance: { seed: 11, runs: 2000, common: 0.15 },
    },
  },
] as const;

const done = (on: string, by: string, ...operations: readonly string[]) =>
  operations.map((operation): RecordedInput => ({ what: 'done', operation, on, by }));
type RecordedInput = NonNullable<teardown.TeardownInput['recorded']>[number];
/** The first steps of the first job, as they were recorded. */
export const workKept: { readonly job: string; readonly records: readonly RecordedInput[] } = {
  job: teardownsKept[0].name,
  records: [
    ...done('2026-11-23', 'M. Orne', 'gate:receiving'),
    ...done('2026-11-23', 'B. Aske', 'gate:defuel', 'gate:defuel-wait'),
    ...done('2026-11-24', 'M. Orne', 'gate:survey'),
    ...done('2026-11-24', 'T. Vale', 'gate:supports', 'gate:shims', 'gate:bolts', 'support:right-trestles'),
    ...done('2026-11-24', 'B. Aske', 'open:right-row-root-fairing', 'off:right-root-fairing'),
  ],
};
