/** A wing of three parts and two rows, quick to plan: a panel over a tank on a body that stays. */
const FROM = { source: 'Invented for a test', known: 'invented' } as const;
const t = (low_min: number, likely_min: number, high_min: number) => ({ low_min, likely_min, high_min });
const outline = [
  [0, 0],
  [500, 0],
  [500, 900],
] as [number, number][];
const part = (id: string, more: object = {}) => ({
  ...{ id, name: `The ${id}`, kind: 'other' as const, side: 'right' as const, outline },
  ...{ take_off: t(5, 10, 20), put_back: t(5, 10, 20) },
  ...more,
});
const row = (id: string, of: string, more: object = {}) => ({
  ...{ id, name: `Row of the ${of}`, side: 'right' as const, layers: [of, 'body'] },
  line: [
    [0, 0],
    [400, 0],
  ] as [number, number][],
  fasteners: { kind: 'screw' as const, count: 12, code: 'SC-1', diameter_mm: 4, grip_mm: 3 },
  ...more,
});
export const smallWing = {
  sparwright: 'structure/1' as const,
  title: 'Small wing',
  models: ['W4-T'],
  from: FROM,
  parts: [part('body', { stays: true }), part('panel'), part('tank', { needs: ['off:panel'] })],
  joins: [row('row-panel', 'panel'), row('row-tank', 'tank', { needs: ['off:panel'] })],
  looks: [
    {
      ...{
        id: 'look-bay',
        name: 'Bay behind the tank',
        at: 'tank',
        needs: ['off:tank' as const],
        minutes: t(5, 10, 15),
      },
      ...{ chance: 0.2, now_cents: 1000, later_cents: 900_000, always: true, from: FROM },
    },
  ],
  gates: [
    {
      ...{ id: 'signed', name: 'Signed', before: 'hand_over' as const, who: 'shop' as const },
      ...{ minutes: t(5, 10, 20), from: FROM },
    },
  ],
  each: { screw: { open: t(0.5, 1, 2), close: t(0.5, 1, 2) } },
};
export const smallFloor = {
  sparwright: 'floor/1' as const,
  title: 'Small floor',
  currency: 'crowns',
  crew: [
    { name: 'M. Orne', skills: ['licensed'] },
    { name: 'B. Aske', skills: ['helper'] },
  ],
  jigs: [],
  shifts: [{ weekdays: [1, 2, 3, 4, 5], from: '08:00', to: '16:00' }],
  hour_cents: 5000,
  jig_day_cents: 0,
  from: FROM,
};
export const smallJob = {
  sparwright: 'teardown/1' as const,
  title: 'Small job',
  day: '2026-11-23',
  map: { kept: 'small-wing' },
  floor: { kept: 'small-floor' },
  targets: [{ part: 'tank', work: 'repair' as const }],
  side: 'right' as const,
  chance: { seed: 3, runs: 100, common: 0.1 },
};
