import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../foundation/refusal.ts';
import { answerGrowth } from '../answer/index.ts';
import type { GrowthDocument, GrowthInput } from '../document.ts';
import { zGrowthDocument } from '../document.ts';
import { grow } from '../integrate/adaptive.ts';
import { materialOf } from '../material/index.ts';
import { carried, residualAt } from '../residual/index.ts';
import { crackForm } from '../stress-intensity/index.ts';
import { chanceFrom } from './chance.ts';
import { hourlyCycles } from './hourly-cycles.ts';
import { livesOf } from './lives.ts';
import { prepareChance } from './prepare.ts';
import { strengthAtAny } from './strength.ts';
import { chanceOf, FROM } from './testing/problems.ts';
import { withChance } from './with-chance.ts';

const WHEELER = { as: 'wheeler', exponent: 1.4, plane: 'stress', from: FROM } as const;
const INPUT = {
  sparwright: 'growth/1',
  title: 'A hole',
  place: 'a hole',
  geometry: { shape: 'hole_corner', width_mm: 64, thickness_mm: 6, diameter_mm: 8, cracks: 1 },
  material: { library: '2024-t3', law: 'closure' },
  loading: {
    as: 'spectrum',
    bands: [
      { max_MPa: 80, min_MPa: -10, per_hour: 1.5 },
      { max_MPa: 60, min_MPa: 30, per_hour: 20 },
      { max_MPa: 0, min_MPa: -40, per_hour: 3 },
    ],
    from: FROM,
  },
  limit_stress: { stress_MPa: 170, from: FROM },
  first_flaw: { c_mm: 1.27, a_mm: 1.27, from: FROM },
  detectable: { c_mm: 2, a_mm: 2, method: 'eddy current', from: FROM },
  rule: { name: 'half', from: FROM },
  chance: chanceOf({ lives: 200 }),
} satisfies GrowthInput;
const document: GrowthDocument = zGrowthDocument.parse(INPUT);
const noStress = {
  as: 'usage',
  usage: { place: { stress: { as: 'unknown' } } },
  mix: [],
} as unknown as GrowthDocument['loading'];
const programme = { first_h: 20_000, repeat_h: 10_000 };
const prepare = (over: Partial<GrowthDocument> = {}) =>
  prepareChance({ document: { ...document, ...over }, programme, critical_c_mm: 15 });

describe('a growth document', () => {
  it('without scatter every life is the one that the adaptive integration gives', () => {
    const still = { sd_ln: 0, from: FROM };
    const chance = chanceOf({ growth_rate: still, stress: still, toughness: still });
    for (const law of ['closure', 'walker'] as const) {
      const material = materialOf({ library: '2024-t3', law });
      const form = crackForm(document.geometry);
      const strength = { yield_MPa: material.yield_MPa, toughness_MPa_sqrt_m: material.toughnessAt(6).value };
      const middle = grow(form, material.law, hourlyCycles(document), document.first_flaw, {
        margin: (_, size) => carried(residualAt(form, size, strength)) / 170 - 1,
      });
      expect(middle.ended).toBe('critical');
      const { hours } = livesOf(prepare({ chance, material: { library: '2024-t3', law } }), { from: 0, to: 3 });
      for (const h of hours) expect(Math.abs(h / middle.hours - 1)).toBeLessThan(1e-4);
    }
  });

  it('answers with every figure finite, its fan beginning at the first flaw', () => {
    const prepared = prepare();
    const answer = chanceFrom(prepared, [livesOf(prepared, { from: 0, to: 200 })]);
    JSON.stringify(answer, (_, v) => {
      if (typeof v === 'number') expect(Number.isFinite(v)).toBe(true);
      return v;
    });
    expect(answer.fan[2]!.points[0]).toEqual({ hours: 0, c_mm: 1.27 });
    expect(answer.fan[2]!.points.length).toBeGreaterThan(20);
    expect(answer.passed.length).toBeGreaterThan(1);
  });

  it('what a part holds beside the figures: every scatter with its source, and that it counts without retardation', () => {
    const prepared = prepare();
    const chance = chanceFrom(prepared, [livesOf(prepared, { from: 0, to: 200 })]);
    const plain = answerGrowth({ ...document, interaction: { as: 'none' } });
    const made = withChance(plain, { ...document, interaction: WHEELER }, chance);
    expect(made.value.chance).toBe(chance);
    expect(made.value.sources.map((s) => s.what)).toEqual(
      expect.arrayContaining([
        'scatter of growth per cycle',
        'scatter of stress',
        'scatter of toughness',
        'chance of detection',
      ]),
    );
    expect(made.warnings.join(' ')).toMatch(/without the slowing/);
    expect(withChance(plain, document, chance).warnings.join(' ')).not.toMatch(/without the slowing/);
    expect(made.working.slice(plain.working.length).map((s) => s.symbol)).toEqual(
      expect.arrayContaining(['s_rate', 's_stress', 's_Kc', 'n', 'h_50', 'p_1']),
    );
  });

  it('a first flaw as deep as the part is thick begins as a through crack', () => {
    const from = { c_mm: 3, from: FROM };
    const deep = prepare({ first_flaw: { ...from, a_mm: 6 } });
    expect(deep.problem.form.tips).toBe(1);
    expect([...livesOf(deep, { from: 0, to: 5 }).hours]).toEqual([
      ...livesOf(prepare({ first_flaw: from }), { from: 0, to: 5 }).hours,
    ]);
  });

  it('a sequence counts as its cycles, in whatever order', () => {
    const cycles = [
      [80, -10],
      [60, 30],
      [80, -10],
      [60, 30],
      [60, 30],
    ] as [number, number][];
    const tallied = hourlyCycles({ loading: { as: 'sequence', cycles_MPa: cycles, hours: 4, from: FROM } });
    expect(tallied).toEqual([
      { max_MPa: 80, min_MPa: -10, perHour: 0.5 },
      { max_MPa: 60, min_MPa: 30, perHour: 0.75 },
    ]);
    expect(
      hourlyCycles({ loading: { as: 'sequence', cycles_MPa: [...cycles].reverse(), hours: 4, from: FROM } }),
    ).toEqual(expect.arrayContaining(tallied));
  });

  it.each([
    ['scatter', { chance: undefined }],
    ['limit load', { limit_stress: undefined }],
    ['per g', { loading: noStress }],
  ])('is refused without %s', (word, over) => {
    let met: unknown;
    try {
      prepare(over as Partial<GrowthDocument>);
    } catch (e) {
      met = e;
    }
    expect(isRefusal(met) && met.code).toBe('growth.chance-incomplete');
    expect(isRefusal(met) && met.detail.given).toContain(word);
  });
});

describe('strength at any toughness', () => {
  it.each([
    [
      'a corner crack at a hole',
      {
        shape: 'hole_corner',
        width_mm: 64,
        thickness_mm: 6,
        diameter_mm: 8,
        cracks: 1,
        bearing_ratio: 0,
        bending_ratio: 0,
      },
    ],
    ['a crack in the middle of a sheet', { shape: 'centre_through', width_mm: 300, thickness_mm: 1.6 }],
  ] as const)('is the residual strength with its tangent: %s', (_, geometry) => {
    const form = crackForm(geometry as GrowthDocument['geometry']);
    const middle = { yield_MPa: 300, toughness_MPa_sqrt_m: 90 };
    const made = strengthAtAny(form, middle);
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        fc.double({ min: 0.01, max: 0.95, noNaN: true }),
        (factor, share) => {
          const sizes = [
            { c_mm: share * form.longest_c_mm },
            ...(form.tips === 2 ? [{ c_mm: 1 + 4 * share, a_mm: 1 + 4 * share }] : []),
          ];
          for (const size of sizes) {
            const through = size.a_mm === undefined ? (form.through ?? form) : form;
            if (through.outside(size) !== null) continue;
            const want = carried(residualAt(form, size, { yield_MPa: 300, toughness_MPa_sqrt_m: 90 * factor }));
            expect(Math.abs(made(factor)(size) / want - 1)).toBeLessThan(1e-4);
          }
        },
      ),
      { numRuns: 150 },
    );
  });
});
