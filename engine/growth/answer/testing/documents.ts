import type { GrowthInput } from '../../document.ts';

/** Documents made up for tests. */
export const FROM = { source: 'Made up for tests', known: 'invented' } as const;

type Uses = Extract<GrowthInput['loading'], { as: 'usage' }>['usage'];
const gusts = (times: number) =>
  ({
    as: 'exponential',
    load: 'gust',
    measure: 'increment',
    per: 'hour',
    up: { times, scale: 0.22, to: 2.4 },
    down: { times, scale: 0.22, to: 2.4 },
    from: FROM,
  }) as const;

/** Two uses, the second met by gusts more often; 40 MPa at 1 g. */
export const usageDocument: Uses = {
  sparwright: 'usage/1',
  title: 'Uses for tests',
  aeroplane: { name: 'none', limit_up: 3.8, limit_down: -1.5, from: FROM },
  uses: [
    { use: 'private', flight_h: 1, loads: [gusts(60)] },
    { use: 'patrol', flight_h: 2.5, loads: [gusts(150)] },
  ],
  reference_use: 'private',
  place: { name: 'a hole', stress: { as: 'per_g', at_1g_MPa: 40, ground_at_1g_MPa: -12, from: FROM } },
  life: { curve: { library: '2024-t3-kt2' }, scatter_factor: { value: 8, from: FROM } },
};
export const unknownStress: Uses = {
  ...usageDocument,
  place: { name: 'a hole', stress: { as: 'unknown', ground_share: -0.3, from: FROM } },
};

/** One corner crack at a hole, one cycle twenty times an hour. */
export const constantDocument: GrowthInput = {
  sparwright: 'growth/1',
  title: 'A crack for tests',
  place: 'a hole',
  geometry: { shape: 'hole_corner', width_mm: 70, thickness_mm: 6, diameter_mm: 8, cracks: 1 },
  material: {
    name: 'made up',
    law: { law: 'walker', units: 'mm, MPa√m', c: 1.4e-8, n: 3.59, m: 0.68, from: FROM },
    yield_MPa: { value: 320, from: FROM },
    toughness: [{ thickness_mm: 6, k_MPa_sqrt_m: 90, from: FROM }],
  },
  loading: { as: 'constant', max_MPa: 90, min_MPa: 9, per_hour: 20, from: FROM },
  limit_stress: { stress_MPa: 150, from: FROM },
  first_flaw: { c_mm: 1.27, a_mm: 1.27, from: FROM },
  detectable: { c_mm: 2, a_mm: 2, method: 'eddy current', from: FROM },
  rule: { name: 'half', from: FROM },
};
export const mixedDocument: GrowthInput = {
  ...constantDocument,
  loading: {
    as: 'usage',
    usage: usageDocument,
    mix: [
      { use: 'private', share: 0.8 },
      { use: 'patrol', share: 0.2 },
    ],
  },
};

/** Every number of an answer, however deep. */
export function numbersOf(x: unknown): number[] {
  if (typeof x === 'number') return [x];
  if (x === null || typeof x !== 'object') return [];
  return Object.values(x).flatMap(numbersOf);
}
