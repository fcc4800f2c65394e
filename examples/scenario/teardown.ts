import type { teardown } from '../../engine/index.ts';
import { floorExample } from './floor.ts';
import { structureExample } from './wing.ts';

/** The right inboard spar of the aircraft of the first call is to be replaced. Terms and sums are made up. */
export const teardownExample: teardown.TeardownInput = {
  sparwright: 'teardown/1',
  title: 'ZQ-LMB, right inboard spar',
  invented: true,
  day: '2026-12-01',
  map: structureExample,
  targets: [{ part: 'right-inboard-spar', work: 'replace' }],
  side: 'right',
  floor: floorExample,
  edge_distances: [
    {
      join: 'right-row-splice-lower',
      part: 'right-inboard-spar',
      least_mm: 8.4,
      from: { source: 'Invented for demonstration', place: 'new cap laid over the old holes', known: 'invented' },
    },
    {
      join: 'right-row-nose-inboard-lower',
      part: 'right-inboard-spar',
      least_mm: 7.1,
      from: { source: 'Invented for demonstration', place: 'new cap laid over the old holes', known: 'invented' },
    },
  ],
  quote: {
    owner: 'the owner of ZQ-LMB (invented)',
    registration: 'ZQ-LMB',
    valid_days: 45,
    stop_and_call_cents: 3_400_000,
    freight_cents: { low: 42_000, high: 68_000 },
    paint_cents: { low: 90_000, high: 140_000 },
    excluded: [
      'Corrosion in places that stay closed',
      'Damage to the fuselage attach points',
      'Import duty on the spar, if any',
    ],
  },
  chance: { seed: 7, runs: 2000, common: 0.15 },
};
