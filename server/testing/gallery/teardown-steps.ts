import { type Day, teardown } from '../../../engine/index.ts';

const from = { source: 'Made up for this refusal', known: 'invented' } as const;
const none = { low_min: 0, likely_min: 0, high_min: 0 };
const square: [number, number][] = [
  [0, 0],
  [100, 0],
  [100, 100],
];
type Part = teardown.StructureInput['parts'][number];
type Join = teardown.StructureInput['joins'][number];
const part = (id: string, more: Partial<Part> = {}): Part => ({
  id,
  name: id,
  kind: 'other',
  side: 'left',
  outline: square,
  take_off: none,
  put_back: none,
  ...more,
});
const row = (id: string, layers: string[], more: Partial<Join> = {}): Join => ({
  id,
  name: id,
  side: 'left',
  layers,
  line: [[50, 50]],
  fasteners: { kind: 'screw', count: 4, code: 'NAS0000', diameter_mm: 4, grip_mm: 3 },
  ...more,
});
/** A tank on a wing, held by one row of screws. */
const job = (more: Partial<teardown.TeardownInput> = {}, tank: Partial<Part> = {}, screws: Partial<Join> = {}) =>
  teardown.planOf(
    teardown.readTeardown({
      sparwright: 'teardown/1',
      title: 'A job to be refused (invented)',
      invented: true,
      day: '2026-01-15',
      side: 'left',
      targets: [{ part: 'tank', work: 'repair' }],
      map: {
        sparwright: 'structure/1',
        title: 'A wing (invented)',
        invented: true,
        from,
        parts: [part('wing', { stays: true }), part('tank', tank)],
        joins: [row('screws', ['tank', 'wing'], screws)],
        each: {},
      },
      ...more,
    }),
  );
const done = (...operations: string[]) =>
  operations.map((operation) => ({ what: 'done' as const, operation, on: '2026-01-15', by: 'A. Mechanic' }));

/** Steps of the room teardown. */
export const TEARDOWN_STEPS = {
  'a target that is not on the map': () => job({ targets: [{ part: 'pump', work: 'reach' }] }),
  'two parts of one name': () => job({}, { id: 'wing' }),
  'a row of four with five holes': () => job({}, {}, { holes: { final: 4, elongated: 1 } }),
  'the body to be replaced': () => job({ targets: [{ part: 'wing', work: 'replace' }] }),
  'a tank taken off twice': () => job({ recorded: done('open:screws', 'off:tank', 'off:tank') }),
  'a tank off before its screws are out': () => job({ recorded: done('off:tank') }),
  'a step that no plan has': () => job({ recorded: done('polish:tank') }),
  'a row that nobody can open': () =>
    teardown.scheduleOf({
      floor: teardown.readFloor({
        sparwright: 'floor/1',
        title: 'A floor (invented)',
        invented: true,
        currency: 'crowns',
        crew: [{ name: 'A. Mechanic', skills: ['sheet-metal'] }],
        shifts: [{ weekdays: [1, 2, 3, 4, 5], from: '08:00', to: '16:00' }],
        hour_cents: 0,
        jig_day_cents: 0,
        from,
      }),
      jobs: [{ name: 'A job', operations: job({}, {}, { skill: 'ndt' }).operations }],
      others: [],
      day: '2026-01-15' as Day,
      seed: 1,
    }),
};
