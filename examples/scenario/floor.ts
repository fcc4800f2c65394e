import type { teardown } from '../../engine/index.ts';

/** The floor of the invented shop: five people, three jigs, one shift. Prices are made up. */
export const floorExample: teardown.FloorInput = {
  sparwright: 'floor/1',
  title: 'Ostrey Field floor',
  invented: true,
  currency: 'crowns',
  crew: [
    { name: 'M. Orne', skills: ['sheet-metal', 'jig', 'inspector', 'licensed'] },
    {
      name: 'T. Vale',
      skills: ['sheet-metal', 'jig'],
      off: [{ from: '2026-12-21', to: '2027-01-03', because: 'leave' }],
    },
    { name: 'K. Lindqvist-Ferreira', skills: ['sheet-metal', 'fuel'] },
    { name: 'B. Aske', skills: ['helper', 'fuel'] },
    {
      name: 'R. Tamm',
      skills: ['ndt', 'inspector', 'licensed'],
      off: [{ from: '2026-12-07', to: '2026-12-09', because: 'course' }],
    },
  ],
  jigs: [
    { id: 'jig-left', name: 'Wing jig 1, left hand', kind: 'wing-jig', hand: 'left', check_good_until: '2027-06-30' },
    {
      id: 'jig-right',
      name: 'Wing jig 2, right hand',
      kind: 'wing-jig',
      hand: 'right',
      check_good_until: '2027-03-31',
    },
    {
      id: 'jig-old',
      name: 'Wing jig 0, both hands',
      kind: 'wing-jig',
      hand: 'both',
      check_good_until: '2026-09-30',
      booked: [{ from: '2026-11-01', to: '2026-12-31', because: 'being checked' }],
    },
  ],
  shifts: [
    { weekdays: [1, 2, 3, 4], from: '07:30', to: '16:30', break: { from: '12:00', to: '12:45' } },
    { weekdays: [5], from: '07:30', to: '13:30' },
  ],
  closed: [
    { from: '2026-12-24', to: '2026-12-27', because: 'holiday' },
    { from: '2026-12-31', to: '2027-01-01', because: 'holiday' },
  ],
  hour_cents: 5_200,
  jig_day_cents: 9_000,
  storage_day_cents: 1_500,
  fasteners: [
    { code: 'MS20470AD4', each_cents: 9, spares_share: 0.15, length_step_mm: 1.5875 },
    { code: 'MS20426AD4', each_cents: 11, spares_share: 0.15, length_step_mm: 1.5875 },
    { code: 'MS20470AD5', each_cents: 16, spares_share: 0.2, length_step_mm: 1.5875 },
    { code: 'MS24694-S', each_cents: 38 },
    { code: 'AN3', each_cents: 210, spares_share: 0 },
    { code: 'NAS6608', each_cents: 3_900, spares_share: 0 },
    { code: 'AN924', each_cents: 420, spares_share: 0 },
  ],
  consumables: [
    { name: 'Conversion coating', unit: 'litre', each_cents: 3_400 },
    { name: 'Epoxy primer', unit: 'litre', each_cents: 5_600 },
    { name: 'Seal ring, fuel', unit: 'piece', each_cents: 180 },
  ],
  spares_share: 0.1,
  from: { source: 'Invented for demonstration', place: 'the whole floor', known: 'invented' },
};
