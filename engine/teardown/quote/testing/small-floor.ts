import type { FloorInput } from '../../floor-document.ts';
import { MADE_UP } from '../../passes/testing/small-wing.ts';

/** Two people, one jig, round prices. */
export const smallFloor = (change: Partial<FloorInput> = {}): FloorInput => ({
  sparwright: 'floor/1',
  title: 'small floor',
  invented: true,
  currency: 'crowns',
  crew: [
    { name: 'A', skills: ['sheet-metal'] },
    { name: 'B', skills: ['sheet-metal'] },
    { name: 'C', skills: ['sheet-metal'] },
  ],
  jigs: [{ id: 'jig-1', name: 'jig 1', kind: 'wing-jig', hand: 'both' }],
  shifts: [{ weekdays: [1, 2, 3, 4, 5, 6, 7], from: '08:00', to: '18:00' }],
  hour_cents: 6000,
  jig_day_cents: 1000,
  storage_day_cents: 100,
  fasteners: [
    { code: 'MS20470AD4', each_cents: 10, spares_share: 0.2 },
    { code: 'AN4', each_cents: 200 },
    { code: 'NAS6608', each_cents: 3000, spares_share: 0 },
  ],
  consumables: [{ name: 'Primer', unit: 'litre', each_cents: 4000 }],
  from: MADE_UP,
  ...change,
});
export const smallTerms = { valid_days: 30, stop_and_call_cents: 500_000 };
