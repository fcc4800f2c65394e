import type { Bounds, Provenance, usage, Worked } from '../../engine/index.ts';

/** A usage answer written by hand, to bend in tests and stories. */
const source = (what: string, known: Provenance['known'] = 'invented'): Provenance => ({
  source: 'Invented for tests',
  place: what,
  known,
});
const between = (low: number, high = low): Bounds => ({ low, high });
const curve = (
  use: string,
  load: usage.LoadSource,
  times: number,
  scale: number,
  to: number,
): usage.UsageAnswer['curves'][number] => ({
  use,
  load,
  ground: load === 'taxi' || load === 'landing',
  points: Array.from({ length: 41 }, (_, i) => {
    const level = (to * (i - 20)) / 20;
    return { load_factor: 1 + level, perHour: times * Math.exp(-Math.abs(level) / scale) };
  }),
});
const harmOf = (
  use: string,
  title: string,
  ratio: number,
  shares: readonly number[],
  more: Partial<usage.UseDamage> = {},
): usage.UseDamage => ({
  use,
  title,
  flight_h: 0.9,
  perHour: 6.4e-6 * ratio,
  shares: (['gust', 'manoeuvre', 'taxi', 'landing', 'ground_air_ground'] as const).map((load, i) => ({
    load,
    share: shares[i] ?? 0,
  })),
  ratio,
  ratioAcross: between(ratio * 0.7, ratio * 1.6),
  sequencePerHour: null,
  meanLife_h: 156_000 / ratio,
  safeLife_h: 19_500 / ratio,
  cyclesPerHour: 310,
  known: 'invented',
  ...more,
});

export const usageAnswer: usage.UsageAnswer = {
  title: 'Four-seater, lower spar cap',
  subject: 'Left spar of ZQ-AAA',
  invented: true,
  gives: 'lives',
  reference: 'private',
  uses: [
    harmOf('private', 'Private flying', 1, [0.31, 0.22, 0.01, 0.02, 0.44], {
      ratioAcross: between(1),
      sequencePerHour: 6.1e-6,
    }),
    harmOf('instruction', 'Instruction', 1.34, [0.18, 0.4, 0.02, 0.05, 0.35]),
    harmOf('tow', 'Glider towing', 3.2, [0.12, 0.18, 0.01, 0.01, 0.68], { sequencePerHour: 2.9e-5 }),
  ],
  hardest: 'tow',
  sensitivity: [
    {
      tried: 'stress a tenth lower',
      ratios: [
        { use: 'private', ratio: 1 },
        { use: 'instruction', ratio: 1.31 },
        { use: 'tow', ratio: 3.5 },
      ],
    },
    {
      tried: 'slope 4',
      ratios: [
        { use: 'private', ratio: 1 },
        { use: 'instruction', ratio: null },
        { use: 'tow', ratio: 2.6 },
      ],
    },
  ],
  curves: [['private', 1] as const, ['instruction', 1.7] as const, ['tow', 2.2] as const].flatMap(([use, k]) => [
    curve(use, 'gust', 130 * k, 0.17, 2),
    curve(use, 'manoeuvre', 12 * k, 0.24 * Math.sqrt(k), 2.8),
    curve(use, 'taxi', 60 * k, 0.06, 0.6),
    curve(use, 'landing', k, 0.25, 1.5),
  ]),
  equivalent: {
    flown_h: between(4048.6),
    equivalent_h: between(4616, 5378),
    byUse: [
      { use: 'private', flown_h: between(3444.3, 3790.6), ratio: 1, assumed: false },
      { use: 'tow', flown_h: between(258, 604.3), ratio: 3.2, assumed: false },
      { use: 'survey', flown_h: between(0, 12), ratio: 3.2, assumed: true },
    ],
    used: between(0.237, 0.276),
  },
  curve: {
    name: '2024-T3 sheet, Kt 5',
    from: { source: 'MIL-HDBK-5J', place: 'figure 3.2.3.1.8(i)', known: 'memory' },
  },
  scatterFactor: { value: 8, from: source('scatter') },
  stressFrom: source('stress per g'),
  known: 'invented',
};
export const workedUsage = (more: Partial<usage.UsageAnswer> = {}): Worked<usage.UsageAnswer> => ({
  value: { ...usageAnswer, ...more },
  working: [
    { symbol: 'D', meaning: 'damage of an hour of private flying', formula: 'Σ n / N', value: 6.4e-6, unit: '1/h' },
    {
      symbol: 'S1',
      meaning: 'stress in level flight',
      formula: 'read',
      value: 46,
      unit: 'MPa',
      provenance: source('stress report'),
    },
  ],
  warnings: ['The fit of this curve ends near ten million cycles.'],
});
export const equivalentLifeOf = (part: string): usage.EquivalentLife => ({
  part,
  points: Array.from({ length: 22 }, (_, i) => {
    const unsure = Math.max(0, Math.min(2, i - 5)) * 170;
    return {
      day: `${2004 + i}-06-01`,
      flown_h: between(i * 190),
      equivalent_h: between(i * 205, i * 205 + 2.2 * unsure),
    };
  }),
  byUse: usageAnswer.equivalent!.byUse,
});
