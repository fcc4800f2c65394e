import type { TeardownDocument, TeardownInput } from '../../document.ts';
import { readTeardown } from '../../map/index.ts';
import type { StructureInput } from '../../structure-document.ts';

/** A small right wing for tests, every time a plain number: spar, nose, tank, skin, panel, fuselage. All made up. */
export const MADE_UP = { source: 'made up for a test', known: 'invented' } as const;
export const t = (low_min: number, likely_min = low_min, high_min = likely_min) => ({ low_min, likely_min, high_min });
type PartInput = StructureInput['parts'][number];
type JoinInput = StructureInput['joins'][number];

export const part = (id: string, kind: PartInput['kind'], rest: Partial<PartInput> = {}): PartInput => ({
  id,
  name: id,
  kind,
  side: 'right',
  outline: [
    [0, 100],
    [0, 200],
    [100, 200],
  ],
  take_off: t(10),
  put_back: t(20),
  ...rest,
});
export const row = (
  id: string,
  layers: readonly string[],
  rest: Partial<Omit<JoinInput, 'fasteners'>> & { fasteners?: Partial<JoinInput['fasteners']> } = {},
): JoinInput => ({
  id,
  name: id,
  side: 'right',
  layers: [...layers],
  line: [[0, 100]],
  ...rest,
  fasteners: {
    kind: 'solid_rivet',
    count: 10,
    code: 'MS20470AD4',
    diameter_mm: 3.175,
    grip_mm: 3.2,
    ...rest.fasteners,
  },
});

export const smallMap = (): StructureInput => ({
  sparwright: 'structure/1',
  title: 'small wing',
  invented: true,
  from: MADE_UP,
  parts: [
    part('body', 'other', { stays: true, side: 'both' }),
    part('spar', 'spar', {
      needs: ['off:nose', 'off:tank'],
      order: {
        code: 'S-1',
        price_low_cents: 100_000,
        price_high_cents: 140_000,
        lead_days: { low: 10, likely: 20, high: 60 },
      },
    }),
    part('nose', 'nose_section'),
    part('tank', 'tank', { holds_fuel: true }),
    part('skin', 'skin'),
    part('panel', 'panel'),
  ],
  joins: [
    row('web', ['skin', 'spar'], { jig_before_rivets: true, spoil_chance: 0.05 }),
    row('nose-row', ['nose', 'skin', 'spar'], {
      jig_before_rivets: true,
      closing_row: true,
      fasteners: { count: 20 },
    }),
    row('straps', ['tank', 'spar'], { fasteners: { kind: 'bolt', code: 'AN4', count: 4 } }),
    row('panel-screws', ['panel', 'skin'], { fasteners: { kind: 'screw', code: 'MS24694-S', count: 8 } }),
    row('hang', ['spar', 'body'], { attach: true, fasteners: { kind: 'bolt', code: 'NAS6608', count: 2 } }),
  ],
  supports: [
    { id: 'trestle', name: 'trestle', side: 'right', set_up: t(5) },
    { id: 'jig', name: 'jig', side: 'right', set_up: t(60), measure: t(30), jig: 'wing-jig' },
  ],
  looks: [
    {
      id: 'bay',
      name: 'the tank bay',
      at: 'spar',
      needs: ['off:tank'],
      minutes: t(15),
      chance: 0.25,
      now_cents: 20_000,
      later_cents: 90_000,
      finding_work: t(60, 120, 240),
      before_closing: true,
      from: MADE_UP,
    },
  ],
  each: {
    solid_rivet: { open: t(1), clip: t(0.25), drill: t(0.5), deburr: t(0.4), close: t(2) },
    bolt: { open: t(3), close: t(4) },
    screw: { open: t(0.5) },
  },
  coating: { clean_each_join: t(4), convert: t(30), prime: t(40), dry_h: 12, materials: [], from: MADE_UP },
});

export const smallJob = (change: Partial<TeardownInput> = {}): TeardownDocument =>
  readTeardown({
    sparwright: 'teardown/1',
    title: 'small job',
    invented: true,
    day: '2026-12-01',
    map: smallMap(),
    targets: [{ part: 'spar', work: 'replace' }],
    side: 'right',
    ...change,
  });

/** What taking the spar out opens, in a valid order. */
export const SPAR_OUT = {
  off: ['tank', 'nose', 'spar'],
  open: ['straps', 'nose-row', 'web', 'hang'],
  replaced: ['spar'],
  supports: ['trestle'],
} as const;
