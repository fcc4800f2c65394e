import type { Bounds, growth, Provenance, Worked } from '../../engine/index.ts';

/** A growth answer written by hand, to bend in tests and stories. */
const source = (what: string, known: Provenance['known'] = 'invented'): Provenance => ({
  source: 'Invented for tests',
  place: what,
  known,
});
const between = (low: number, high = low): Bounds => ({ low, high });
const LIFE = 20_400;
const CRITICAL = 21.6;
const THROUGH = 0.62;

function curveOf(life_h: number, from = 1.27): growth.GrowthCurve {
  const points = Array.from({ length: 81 }, (_, i): growth.GrowthPoint => {
    const s = i / 80;
    const c_mm = from * Math.exp(Math.log(CRITICAL / from) * (0.55 * s + 0.45 * s * s * s));
    return {
      hours: life_h * s,
      cycles: Math.round(310 * life_h * s),
      c_mm,
      a_mm: s < THROUGH ? Math.min(6, c_mm * 0.9) : null,
      kc_MPa_sqrt_m: 8 + 20 * s,
      ka_MPa_sqrt_m: s < THROUGH ? 9 + 15 * s : null,
    };
  });
  return {
    points,
    ended: 'critical',
    hours: life_h,
    cycles: Math.round(310 * life_h),
    errorBound: 0.0004,
    evaluations: 412,
    by: 'adaptive',
    through: points.find((p) => p.a_mm === null) ?? null,
  };
}
export const programmeOf = (
  first_h: number,
  repeat_h: number,
  inForce: growth.GrowthAnswer['inForce'],
): growth.Programme => {
  const limit = (of: 'first_at_h' | 'repeat_h', own: number) =>
    inForce.reduce(
      (best, i) => (i[of] !== null && i[of] <= best.hours ? { hours: i[of], by: i.name as string | null } : best),
      { hours: own, by: null as string | null },
    );
  const [first, repeat] = [limit('first_at_h', first_h), limit('repeat_h', repeat_h)];
  return {
    first_h: first.hours,
    repeat_h: repeat.hours,
    computed: { first_h, repeat_h },
    capped: { first: first.by, repeat: repeat.by },
  };
};
const W14 = {
  name: 'W-14',
  first_at_h: 7087,
  repeat_h: 1181,
  left_h: 114,
  reference: 'W-14 issue 2: 9 000 counted landings',
};

const hoursOf = (share: number) => LIFE * Math.exp(0.34 * (share - 0.5) * 3.2);
export const chanceAnswer: growth.ChanceAnswer = {
  lives: 2000,
  seed: 4,
  percentiles: [0.05, 0.25, 0.5, 0.75, 0.95].map((share) => ({
    share,
    hours: hoursOf(share),
    sampling: between(hoursOf(share) * 0.97, hoursOf(share) * 1.03),
  })),
  fan: [0.05, 0.25, 0.5, 0.75, 0.95].map((share) => ({
    share,
    points: curveOf(hoursOf(share)).points.map(({ hours, c_mm }) => ({ hours, c_mm })),
  })),
  passed: [7087, 8268, 9449, 10_630].map((hours, i) => ({
    look: i + 1,
    hours,
    chance: i < 2 ? 0 : 0.0005 * i,
    sampling: between(0, 0.0018 + 0.001 * i),
  })),
  detection: { a50_mm: 0.4, a90_mm: 0.76, most: 0.95 },
  unfinished: 12,
};
export const growthAnswer: growth.GrowthAnswer = {
  title: 'Four-seater, crack at a spar cap hole',
  subject: 'Left spar of ZQ-AAA',
  place: 'Lower spar cap, first fastener hole outboard of the root',
  invented: true,
  known: 'invented',
  gives: 'hours',
  material: { name: '2024-T3', law: 'walker', yield_MPa: 289.6, toughness_MPa_sqrt_m: 153 },
  first: { c_mm: 1.27, a_mm: 1.27 },
  detectable: { c_mm: 2.5, a_mm: 2.5 },
  method: 'eddy current in the bolt hole, bolt out',
  critical: { size: { c_mm: CRITICAL }, by: 'net section yield', limit_MPa: 169.2, toughness_MPa_sqrt_m: 153 },
  curve: curveOf(LIFE),
  firstToCritical_h: LIFE,
  detectableToCritical_h: 13_100,
  rule: { name: 'half', first: 0.5, repeat: 0.5, from: source('table 1.3.6', 'read') },
  programme: programmeOf(10_200, 6550, [W14]),
  left_h: between(2900, 3500),
  byUse: [
    {
      use: 'private',
      ratio: 1,
      ratioAcross: between(1),
      firstToCritical_h: 21_500,
      detectableToCritical_h: 13_900,
      programme: programmeOf(10_750, 6950, [W14]),
    },
    {
      use: 'tow',
      ratio: 2.3,
      ratioAcross: between(1.9, 2.9),
      firstToCritical_h: 9350,
      detectableToCritical_h: 6000,
      programme: programmeOf(4675, 3000, [W14]),
    },
  ],
  reference: 'private',
  residual: Array.from({ length: 40 }, (_, i) => {
    const c_mm = 0.7 * (i + 1);
    const [fracture_MPa, net_section_MPa] = [
      153 / Math.sqrt((Math.PI * c_mm) / 1000) / 1.1,
      (289.6 * (56 - c_mm)) / 64,
    ];
    return {
      c_mm,
      a_mm: null,
      fracture_MPa,
      net_section_MPa,
      governs: fracture_MPa < net_section_MPa ? 'fracture' : 'net section yield',
    } as const;
  }),
  sensitivity: [
    { input: 'stress', changed: 'a tenth more and less', hoursFrom: 'first flaw', low_h: 14_500, high_h: 29_800 },
    { input: 'first flaw', changed: 'half and twice', hoursFrom: 'first flaw', low_h: 15_800, high_h: 26_900 },
    { input: 'growth rate', changed: 'a fifth more and less', hoursFrom: 'first flaw', low_h: 17_000, high_h: 25_500 },
    { input: 'what a look can find', changed: 'half and twice', hoursFrom: 'detectable', low_h: 9600, high_h: 17_100 },
    { input: 'toughness', changed: 'a tenth more and less', hoursFrom: 'first flaw', low_h: 20_300, high_h: 20_450 },
  ],
  interaction: {
    as: 'willenborg',
    withoutIt_h: LIFE,
    withIt_h: 31_000,
    withItEnded: 'critical',
    curve: curveOf(31_000),
  },
  inForce: [W14],
  chance: chanceAnswer,
  sources: [
    { what: 'Growth law', from: { source: 'Textbook of growth constants', place: 'table', known: 'memory' } },
    { what: 'First flaw', from: source('section 1.3.4.1', 'read') },
    { what: 'Stress', from: source('stress report') },
  ],
};
export const workedGrowth = (more: Partial<growth.GrowthAnswer> = {}): Worked<growth.GrowthAnswer> => ({
  value: { ...growthAnswer, ...more },
  working: [
    {
      symbol: 'C',
      meaning: 'growth constant',
      formula: 'read',
      value: 1.42e-8,
      unit: 'mm/cycle',
      provenance: source('table', 'memory'),
    },
    { symbol: 'T', meaning: 'hours from first flaw to critical', formula: '∫ da / (da/dh)', value: LIFE, unit: 'h' },
    { symbol: 'Kc', meaning: 'toughness at 6 mm', formula: 'between two thicknesses', value: 153, unit: 'MPa√m' },
  ],
  warnings: [],
});
