import type { growth } from '../../engine/index.ts';
import { usageExample } from './usage.ts';

/** A crack at that hole: its size and its growth are estimates, the stresses and the flown hours are made up. */
const madeUp = (place: string) => ({ source: 'Invented for demonstration', place, known: 'invented' }) as const;
const HANDBOOK = 'Damage Tolerant Design Handbook, AFRL-VA-WP-TR-2003-3002';

export const growthExample: growth.GrowthInput = {
  sparwright: 'growth/1',
  title: 'Whimbrel W4, crack at a spar cap hole',
  subject: 'Left inboard spar of ZQ-LMB (invented)',
  day: '2026-11-25',
  invented: true,
  models: ['W4', 'W4-T'],
  place: usageExample.place.name,
  geometry: { shape: 'hole_corner', width_mm: 64, thickness_mm: 6, diameter_mm: 8, cracks: 1 },
  material: { library: '2024-t3', law: 'walker' },
  loading: {
    as: 'usage',
    usage: usageExample,
    mix: [
      { use: 'private', share: 0.94 },
      { use: 'tow', share: 0.06 },
    ],
  },
  limit_stress: { stress_MPa: 157.8, from: madeUp('limit load factor 3.8') },
  first_flaw: {
    c_mm: 1.27,
    a_mm: 1.27,
    from: {
      source: HANDBOOK,
      place: 'section 1.3.4.1: 0.05 in corner crack at a hole in stock above 0.05 in',
      known: 'read',
    },
  },
  detectable: {
    c_mm: 2.5,
    a_mm: 2.5,
    method: 'eddy current in the bolt hole, bolt out',
    from: madeUp('size found nine times in ten in service, by the shop’s own hands on a part with known cracks'),
  },
  rule: {
    name: 'half',
    from: { source: HANDBOOK, place: 'table 1.3.6: half of the growth time', known: 'read' },
  },
  flown: usageExample.hours!.by_use,
  flown_total: usageExample.hours!.total,
  in_force: [
    {
      name: 'W-14',
      first_at_h: 7087,
      repeat_h: 1181,
      left_h: 114,
      reference: 'W-14 issue 2 (invented): 9 000 counted landings, then every 1 500, at 1.27 counted landings an hour',
    },
  ],
  chance: {
    seed: 4,
    lives: 2000,
    growth_rate: { sd_ln: 0.25, from: madeUp('scatter of growth rates') },
    stress: { sd_ln: 0.08, from: madeUp('scatter of stresses') },
    toughness: { sd_ln: 0.07, from: madeUp('scatter of toughness') },
    detection: {
      a50_mm: 1.2,
      a90_mm: 2.5,
      most: 0.95,
      of: 'c',
      from: madeUp('sizes found every other time and nine times in ten in service, by the shop’s own hands'),
    },
  },
};
