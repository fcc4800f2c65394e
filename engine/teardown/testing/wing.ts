import type { TeardownInput } from '../document.ts';
import type { StepName, StructureInput } from '../structure-document.ts';

/** A small wing for tests, built as the trade knows it; all of it invented. */
const from = { source: 'Made up for tests', known: 'invented' } as const;
type Part = StructureInput['parts'][number];
type Join = StructureInput['joins'][number];
export const minutes = (likely: number, spread = 0.4) => ({
  low_min: likely * (1 - spread),
  likely_min: likely,
  high_min: likely * (1 + spread),
});
export const part = (id: string, likely: number, more: Partial<Part> = {}): Part => ({
  id,
  name: id.replaceAll('-', ' '),
  kind: 'other',
  side: 'right',
  outline: [
    [0, 0],
    [1000, 0],
    [1000, 1000],
  ],
  take_off: minutes(likely),
  put_back: minutes(likely * 1.5),
  ...more,
});
export const rivets = (id: string, layers: string[], count: number, more: Partial<Join> = {}): Join => ({
  id,
  name: id.replaceAll('-', ' '),
  side: 'right',
  layers,
  line: [[100, 100]],
  fasteners: { kind: 'solid_rivet', count, code: 'MS20470AD4', diameter_mm: 3.175, grip_mm: 3 },
  tools: ['drill'],
  ...more,
});
export const screws = (id: string, layers: string[], count: number, more: Partial<Join> = {}): Join => ({
  ...rivets(id, layers, count),
  fasteners: { kind: 'screw', count, code: 'NAS0000', diameter_mm: 4, grip_mm: 3 },
  tools: ['screwdriver'],
  ...more,
});
const off = (id: string): StepName => `off:${id}`;

/**
 * An inboard spar behind tank and nose sections, spliced to the outboard spar where the two overlap, with twice the
 * rivets; under the walkway a doubler that is bare once the spar is out. No order of steps is stated.
 */
export const wing = (more: Partial<StructureInput> = {}): StructureInput => ({
  sparwright: 'structure/1',
  title: 'A right wing (invented)',
  invented: true,
  from,
  parts: [
    part('fuselage', 0, { stays: true, side: 'both' }),
    part('tank', 40, { kind: 'tank' }),
    part('nose-inboard', 20, { kind: 'nose_section', persons: 2 }),
    part('nose-outboard', 25, { kind: 'nose_section', persons: 2 }),
    part('spar-inboard', 30, { kind: 'spar', persons: 2 }),
    part('spar-outboard', 40, { kind: 'spar', persons: 2 }),
    part('skin-aft', 30, { kind: 'skin' }),
    part('skin-lower', 30, { kind: 'skin' }),
    part('rib-root', 10, { kind: 'rib' }),
    part('rib-tip', 10, { kind: 'rib' }),
    part('doubler', 10, { kind: 'doubler' }),
    part('panel', 2, { kind: 'panel' }),
  ],
  joins: [
    screws('tank-screws', ['tank', 'spar-inboard'], 40, { face: 'upper' }),
    rivets('nose-inboard-row', ['nose-inboard', 'skin-aft', 'spar-inboard'], 80, {
      face: 'upper',
      jig_before_rivets: true,
      closing_row: true,
    }),
    rivets('nose-outboard-row', ['nose-outboard', 'spar-outboard'], 90, { jig_before_rivets: true, closing_row: true }),
    rivets('splice', ['spar-inboard', 'spar-outboard'], 64, {
      persons: 2,
      spoil_chance: 0.05,
      needs: [
        off('nose-inboard'),
        off('nose-outboard'),
        'support:trestles',
        { any: [off('panel'), off('skin-lower')] },
      ],
      close_needs: [{ any: [off('panel'), off('skin-lower')] }],
      jig_before_rivets: true,
    }),
    rivets('skin-lower-row', ['skin-lower', 'spar-inboard'], 70, { face: 'lower', needs: [off('tank')] }),
    rivets('skin-lower-ribs', ['skin-lower', 'rib-root'], 90, { face: 'lower', needs: [off('tank')] }),
    rivets('rib-root-spar', ['rib-root', 'spar-inboard'], 12, { needs: [off('nose-inboard'), off('tank')] }),
    rivets('rib-tip-spar', ['rib-tip', 'spar-outboard'], 12, { needs: [off('nose-outboard')] }),
    rivets('skin-aft-ribs', ['skin-aft', 'rib-root'], 120, { face: 'upper', needs: [off('tank')] }),
    rivets('doubler-row', ['skin-aft', 'doubler'], 60, { needs: [off('spar-inboard')] }),
    screws('panel-screws', ['panel', 'skin-lower'], 16, { face: 'lower' }),
    {
      ...screws('attach-bolts', ['spar-inboard', 'fuselage'], 4, { needs: ['support:trestles'] }),
      fasteners: { kind: 'bolt', count: 4, code: 'NAS0001', diameter_mm: 12, grip_mm: 40 },
      attach: true,
      tools: ['wrenches'],
    },
  ],
  supports: [
    { id: 'trestles', name: 'trestles', side: 'right', set_up: minutes(30), persons: 2 },
    { id: 'jig', name: 'wing jig', side: 'right', set_up: minutes(60), jig: 'wing-jig', persons: 2 },
  ],
  looks: [
    {
      id: 'doubler-bare',
      name: 'doubler under the walkway',
      at: 'doubler',
      needs: [off('spar-inboard')],
      minutes: minutes(30),
      chance: 0.2,
      now_cents: 60_000,
      later_cents: 400_000,
      always: true,
      finding_targets: [{ part: 'doubler', work: 'replace' }],
      finding_work: minutes(300),
      from,
    },
  ],
  each: {
    solid_rivet: {
      open: minutes(1.2),
      clip: minutes(0.3),
      drill: minutes(0.6),
      deburr: minutes(0.3),
      close: minutes(1.5),
    },
    screw: { open: minutes(0.5) },
    bolt: { open: minutes(10) },
  },
  ...more,
});

export const job = (more: Partial<TeardownInput> = {}): TeardownInput => ({
  sparwright: 'teardown/1',
  title: 'A job (invented)',
  invented: true,
  day: '2026-03-02',
  map: wing(),
  targets: [{ part: 'spar-inboard', work: 'replace' }],
  side: 'right',
  ...more,
});
export const done = (...operations: string[]) =>
  operations.map((operation) => ({ what: 'done' as const, operation, on: '2026-03-03', by: 'A. Mechanic' }));
