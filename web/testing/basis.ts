import { growthExample } from '../../examples/scenario/growth.ts';
import { usageExample } from '../../examples/scenario/usage.ts';
import { crackPlaceScene } from '../../sheets/scenes/crack-place.ts';
import type { GrowthChoices } from '../api/growth.ts';
import type { UsageChoices } from '../api/usage.ts';
import { day } from './day.ts';

export const LONG =
  'Lower spar cap of the wing that came from another aircraft in the spring of 2015 and bears no stamp';
const UNBROKEN = 'Lowersparcapofthewingthatcamefromanotheraircraft'.repeat(3);
const from = { source: 'Invented for demonstration', known: 'invented' } as const;
const kept = {
  name: 'whimbrel-w4-lower-spar-cap',
  title: 'Whimbrel W4, lower spar cap',
  models: ['W4', 'W4-T'],
  uses: [
    { use: 'private', title: 'Private flying' },
    { use: 'tow', title: 'Glider towing' },
  ],
  entry: 613,
};
export const keptBases = [kept];
export const longBases = Array.from({ length: 12 }, (_, i) => ({
  ...kept,
  name: `${i}`,
  title: `${LONG}, ${i}`,
  uses: [{ use: 'private', title: LONG }],
}));

export const usageChoices: UsageChoices = {
  day: day('2026-11-25'),
  uses: ['private', 'tow'],
  models: ['W4', 'W4-T'],
  kept: keptBases,
  life_curves: [{ library: '2024-t3-kt5', name: '2024-T3 sheet, Kt 5', from }],
  turbulence: [{ name: '0 to 1000 ft', p1: 1, b1_m_per_s: 0.77, p2: 0.005, b2_m_per_s: 1.54, from }],
};
export const noUsageChoices: UsageChoices = {
  ...usageChoices,
  uses: [],
  models: [],
  kept: [],
  life_curves: [],
  turbulence: [],
};
export const growthChoices: GrowthChoices = {
  day: day('2026-11-25'),
  uses: ['private', 'tow'],
  models: ['W4', 'W4-T'],
  parts: ['inboard_spar', 'wing'],
  kept: keptBases,
  usage: keptBases,
  materials: [{ library: '2024-t3', name: '2024-T3 sheet, along the grain', laws: ['paris', 'walker'], known: 'read' }],
};
export const noGrowthChoices: GrowthChoices = {
  ...growthChoices,
  uses: [],
  models: [],
  parts: [],
  kept: [],
  usage: [],
  materials: [],
};

/** Documents as the form holds them. Invented. */
export const usageDocument = usageExample;
export const growthDocument = {
  ...growthExample,
  loading: {
    as: 'usage_basis',
    basis: kept.name,
    mix: [
      { use: 'private', share: 0.94 },
      { use: 'tow', share: 0.06 },
    ],
  },
  interaction: { as: 'willenborg', threshold_MPa_sqrt_m: 3, shut_off_ratio: 2.5, plane: 'stress', from },
};
export const growthPicture = crackPlaceScene(growthDocument, 'mm');

const source = { source: LONG, place: UNBROKEN, known: 'second-hand' };
export const longUsage = {
  title: UNBROKEN,
  models: [LONG, UNBROKEN],
  aeroplane: { name: UNBROKEN, from: source },
  uses: [
    {
      use: 'a_use_whose_word_is_as_long_as_it_may_be',
      title: LONG,
      loads: [
        {
          as: 'table',
          load: 'gust',
          measure: 'increment',
          per: 'nautical_mile',
          up: Array.from({ length: 60 }, (_, i) => ({ at: 0.1 * (i + 1), times: 1234567.891 / (i + 1) })),
          from: source,
        },
      ],
    },
  ],
  reference_use: 'private',
  place: { name: UNBROKEN, stress: { as: 'line', points: [], from: source } },
  life: { curve: { name: UNBROKEN, from: source }, scatter_factor: { value: 8, from: source } },
};
export const longGrowth = {
  title: UNBROKEN,
  place: UNBROKEN,
  geometry: { shape: 'own_table', width_in: 2.5, thickness_in: 0.2, points: [{ c_in: 0.1, beta: 2.1 }], from: source },
  factors: [{ name: UNBROKEN, value: 1.12, from: source }],
  material: {
    name: UNBROKEN,
    law: { law: 'closure', units: 'in, ksi√in', from: source },
    toughness: [{ from: source }],
  },
  loading: {
    as: 'spectrum',
    bands: Array.from({ length: 40 }, (_, i) => ({ max_ksi: i + 10, min_ksi: 1, per_hour: 40 - i })),
    from: source,
  },
  interaction: { as: 'none' },
  first_flaw: { c_in: 0.05, from: source },
  detectable: { c_in: 0.1, method: LONG, from: source },
  rule: { name: 'own', first: 0.5, repeat: 0.33, from: source },
  chance: { seed: 1, lives: 1000, growth_rate: {}, stress: {}, toughness: {}, detection: {} },
};
