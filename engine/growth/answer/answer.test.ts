import { describe, expect, it } from 'vitest';
import { growthExample } from '../../../examples/scenario/growth.ts';
import type { GrowthInput } from '../document.ts';
import type { KernelInput } from '../integrate/index.ts';
import { inch, ksi, ksiRootInch, off } from '../testing/inch.ts';
import { answerGrowth } from './answer.ts';
import { readGrowth } from './read.ts';
import { constantDocument, FROM, mixedDocument, numbersOf, unknownStress, usageDocument } from './testing/documents.ts';

const value = (d: GrowthInput, options = {}) => answerGrowth(d, options).value;
const warned = (d: GrowthInput) => answerGrowth(d).warnings.join('\n');

/**
 * The whole chain of the collected check values (fatigue reference, section 4.4, computed): 50 237.8 cycles until the
 * crack comes through, 93 450.4 until K is 60 ksi√in. With the yielded zone and the tangent critical comes a little earlier.
 */
describe('one corner crack at a hole of 0.25 in under 15 and 1.5 ksi', () => {
  const inches = {
    ...constantDocument,
    geometry: { shape: 'hole_corner', width_in: 3, thickness_in: 0.25, diameter_in: 0.25, cracks: 1 },
    material: {
      name: '2024-T3',
      law: { law: 'walker', units: 'in, ksi√in', c: 7.85e-10, n: 3.59, m: 0.68, from: FROM },
      yield_MPa: { value: ksi(45), from: FROM },
      toughness: [{ thickness_in: 0.25, k_ksi_sqrt_in: 60, from: FROM }],
    },
    loading: { as: 'constant', max_ksi: 15, min_ksi: 1.5, per_hour: 10, from: FROM },
    limit_stress: { stress_ksi: 15, from: FROM },
    first_flaw: { c_in: 0.05, a_in: 0.05, from: FROM },
    detectable: { c_in: 0.5, method: 'by eye', from: FROM },
  };
  const { value: a, working } = answerGrowth(inches);
  it('comes through and becomes critical where it should', () => {
    expect(off(a.curve!.through!.cycles, 50_237.8)).toBeLessThan(1e-5);
    expect(off(a.curve!.through!.c_mm, inch(0.201521))).toBeLessThan(1e-5);
    expect(a.firstToCritical_h! * 10).toBeLessThan(93_450.4);
    expect(off(a.firstToCritical_h! * 10, 93_450.4)).toBeLessThan(0.03);
    expect(a.critical!.size.c_mm).toBeLessThan(inch(1.29072));
    expect(a.critical!.toughness_MPa_sqrt_m).toBeCloseTo(ksiRootInch(60), 9);
  });
  it('a size without depth is a through crack: less is left from there', () => {
    expect(a.detectableToCritical_h! * 10).toBeLessThan(43_212.6);
    expect(a.detectable).toEqual({ c_mm: inch(0.5) });
  });
  it('the working follows it: K before and after it comes through, hours, looks', () => {
    const of = (symbol: string) => working.find((s) => s.symbol === symbol)!.value as number;
    expect(off(of('K after'), ksiRootInch(13.4237))).toBeLessThan(1e-5);
    expect(of('T1')).toBe(a.firstToCritical_h! / 2);
    expect(of('H2')).toBe(a.detectableToCritical_h);
    expect(working.every((s) => s.source || s.provenance || s.formula)).toBe(true);
  });
  it('reading it again changes nothing', () => {
    const read = readGrowth(inches);
    expect(readGrowth(read)).toEqual(read);
    expect(answerGrowth(read).value).toEqual(a);
  });
});

describe('the looks', () => {
  it('half, a third, shares of one’s own', () => {
    const half = value(constantDocument);
    const hours = [half.firstToCritical_h!, half.detectableToCritical_h!] as const;
    expect(hours[1]).toBeLessThan(hours[0]);
    const of = (rule: GrowthInput['rule']) => {
      const p = value({ ...constantDocument, rule }).programme!;
      return [p.first_h / hours[0], p.repeat_h / hours[1]];
    };
    expect(of({ name: 'half', from: FROM })).toEqual([1 / 2, 1 / 2]);
    expect(of({ name: 'third', from: FROM })[1]).toBeCloseTo(1 / 3, 12);
    const [first, repeat] = of({ name: 'own', first: 0.5, repeat: 0.25, from: FROM });
    expect([first, repeat]).toEqual([0.5, 0.25]);
  });
  it('a directive caps what is longer, and is named', () => {
    const plain = value(constantDocument).programme!;
    const capped = (in_force: GrowthInput['in_force']) => value({ ...constantDocument, in_force }).programme!;
    const short = capped([
      { name: 'A', first_at_h: plain.first_h - 10, reference: 'A' },
      { name: 'B', first_at_h: plain.first_h - 20, repeat_h: plain.repeat_h + 5, reference: 'B' },
    ]);
    expect(short).toEqual({
      first_h: plain.first_h - 20,
      repeat_h: plain.repeat_h,
      computed: plain.computed,
      capped: { first: 'B', repeat: null },
    });
    expect(capped([{ name: 'A', repeat_h: 1, reference: 'A' }]).capped).toEqual({ first: null, repeat: 'A' });
  });
  it('hours flown are taken off as hours of the mix to come, the worse end first', () => {
    const d: GrowthInput = { ...mixedDocument, flown: [{ use: 'patrol', low_h: 100, high_h: 250 }] };
    const a = value(d);
    const ratio = (use: string) => a.byUse.find((u) => u.use === use)!.ratio;
    const mix = 0.8 * ratio('private') + 0.2 * ratio('patrol');
    expect(ratio('patrol')).toBeGreaterThan(1.5);
    expect(a.left_h!.low).toBeCloseTo(a.programme!.first_h - (250 * ratio('patrol')) / mix, 4);
    expect(a.left_h!.high).toBeCloseTo(a.programme!.first_h - (100 * ratio('patrol')) / mix, 4);
    const capped = value({ ...d, in_force: [{ name: 'A', left_h: -3, reference: 'A' }] });
    expect(capped.left_h).toEqual({ low: -3, high: -3 });
    const unknown: GrowthInput = { ...d, flown: [{ use: 'racing', low_h: 0, high_h: 250 }] };
    expect(value(unknown).left_h!.low).toBeCloseTo(a.left_h!.low, 4);
    expect(warned(unknown)).toContain('racing');
    const total = value({
      ...d,
      flown: [
        { use: 'private', low_h: 0, high_h: 400 },
        { use: 'patrol', low_h: 0, high_h: 400 },
      ],
      flown_total: { low_h: 400, high_h: 400 },
    });
    expect(total.left_h!.low).toBeCloseTo(total.programme!.first_h - (400 * ratio('patrol')) / mix, 4);
    const plain = value({ ...constantDocument, flown: [{ use: 'private', low_h: 100, high_h: 120 }] });
    expect(plain.left_h).toEqual({ low: plain.programme!.first_h - 120, high: plain.programme!.first_h - 100 });
    expect([plain.flown_h, total.flown_h]).toEqual([
      { low: 100, high: 120 },
      { low: 400, high: 400 },
    ]);
  });
});

describe('uses', () => {
  it('one use alone: ratio, hours and looks under the limits of that use', () => {
    const a = value({
      ...mixedDocument,
      in_force: [{ name: 'A', first_at_h: 900, by_use: [{ use: 'patrol', first_at_h: 300 }], reference: 'A' }],
    });
    const [own, patrol] = a.byUse;
    expect([a.reference, own!.use, own!.ratio]).toEqual(['private', 'private', 1]);
    expect(own!.firstToCritical_h! / patrol!.firstToCritical_h! / patrol!.ratio).toBeCloseTo(1, 4);
    expect(patrol!.ratioAcross.low).toBeLessThanOrEqual(patrol!.ratio);
    expect(patrol!.ratioAcross.high).toBeGreaterThanOrEqual(patrol!.ratio);
    expect([own!.programme!.first_h, patrol!.programme!.first_h]).toEqual([900, 300]);
    expect(a.firstToCritical_h!).toBeLessThan(own!.firstToCritical_h!);
    expect(a.firstToCritical_h!).toBeGreaterThan(patrol!.firstToCritical_h!);
  });
  it('a mix of one use alone is that use', () => {
    const of = (use: string) =>
      value({
        ...mixedDocument,
        loading: { ...mixedDocument.loading, mix: [{ use, share: 1 }] } as GrowthInput['loading'],
      });
    for (const use of ['private', 'patrol']) {
      const a = of(use);
      const row = a.byUse.find((u) => u.use === use)!;
      expect(off(row.firstToCritical_h!, a.firstToCritical_h!)).toBeLessThan(1e-4);
      expect(off(row.detectableToCritical_h!, a.detectableToCritical_h!)).toBeLessThan(1e-4);
    }
  });
  it('without a stress: ratios alone, and no hour anywhere', () => {
    const { limit_stress: _, ...rest } = mixedDocument;
    const d: GrowthInput = {
      ...rest,
      loading: { ...mixedDocument.loading, usage: unknownStress } as GrowthInput['loading'],
      in_force: [{ name: 'A', first_at_h: 900, reference: 'A' }],
    };
    const { value: a, working, warnings } = answerGrowth(d);
    expect([a.gives, a.curve, a.critical, a.programme, a.firstToCritical_h]).toEqual([
      'ratios',
      null,
      null,
      null,
      null,
    ]);
    expect(a.byUse.map((u) => u.use)).toEqual(['private', 'patrol']);
    expect(a.byUse[1]!.ratio).toBeGreaterThan(1.5);
    expect(a.byUse.every((u) => u.programme === null && u.firstToCritical_h === null)).toBe(true);
    expect(working.filter((s) => s.unit === 'h')).toEqual([]);
    expect(warnings.join()).toContain('no hours are given');
    const forman = {
      ...constantDocument.material,
      law: { law: 'forman', units: 'mm, MPa√m', c: 5e-6, n: 2.9, kc: 80, from: FROM },
    } as GrowthInput['material'];
    expect(answerGrowth({ ...d, material: forman }).warnings.join()).toContain('needs the stress');
  });
  it('under another law the ratio is that of the hours', () => {
    const forman = {
      ...constantDocument.material,
      law: { law: 'forman', units: 'mm, MPa√m', c: 5e-6, n: 2.9, kc: 95, from: FROM },
    } as GrowthInput['material'];
    const a = value({ ...mixedDocument, material: forman });
    expect(a.byUse[1]!.ratio).toBe(a.byUse[0]!.firstToCritical_h! / a.byUse[1]!.firstToCritical_h!);
  });
});

describe('interaction', () => {
  const wheeler = { as: 'wheeler', exponent: 1.4, plane: 'strain', from: FROM } as const;
  it('stands beside, and no look rests on it', () => {
    const cycles = Array.from({ length: 4000 }, (_, i): [number, number] =>
      i % 1000 === 500 ? [140, 0] : [85, 5 + (i % 7)],
    );
    const loading = { as: 'sequence', cycles_MPa: cycles, hours: 200, from: FROM } as const;
    const plain = value({ ...constantDocument, loading });
    const { value: a, warnings } = answerGrowth({ ...constantDocument, loading, interaction: wheeler });
    expect(plain.curve!.by).toBe('blocks');
    expect(a.programme).toEqual(plain.programme);
    expect([a.firstToCritical_h, a.interaction.withoutIt_h]).toEqual([
      plain.firstToCritical_h,
      plain.firstToCritical_h,
    ]);
    expect(a.interaction.withIt_h!).toBeGreaterThan(1.02 * plain.firstToCritical_h!);
    expect([a.interaction.as, a.interaction.withItEnded, a.interaction.curve!.by]).toEqual([
      'wheeler',
      'critical',
      'cycle by cycle',
    ]);
    expect(warnings.join()).toContain('for information');
  });
  it('of drawn flights: the shorter of the two counts without it governs', () => {
    const loading = {
      ...mixedDocument.loading,
      usage: {
        ...usageDocument,
        place: { ...usageDocument.place, stress: { ...usageDocument.place.stress, at_1g_MPa: 65 } },
        sequence: { seed: 5, flights: 60 },
      },
    } as GrowthInput['loading'];
    const spread = value({ ...mixedDocument, loading });
    const a = value({ ...mixedDocument, loading, interaction: wheeler });
    expect(a.firstToCritical_h!).toBeLessThanOrEqual(spread.firstToCritical_h! * (1 + 1e-9));
    expect(a.firstToCritical_h! / spread.firstToCritical_h!).toBeGreaterThan(0.7);
    expect(a.interaction.withIt_h!).toBeGreaterThanOrEqual(a.firstToCritical_h! * 0.999);
    expect(value({ ...mixedDocument, loading, interaction: wheeler })).toEqual(a);
  });
  it('a count that is stopped lasts at least as long as the life without', () => {
    const slow: GrowthInput = {
      ...constantDocument,
      loading: {
        as: 'sequence',
        cycles_MPa: [
          [60, 40],
          [62, 40],
        ],
        hours: 0.01,
        from: FROM,
      },
      interaction: wheeler,
    };
    const kernel = ({ from, until }: KernelInput) => ({ ...from, cycles: until.cycles });
    const { value: a, warnings } = answerGrowth(slow, { kernel });
    expect(a.interaction.withItEnded).not.toBe('critical');
    expect(a.interaction.withIt_h!).toBeGreaterThanOrEqual(a.firstToCritical_h!);
    expect(warnings.join()).toContain('for information');
  });
  it('under constant amplitude changes nothing', () => {
    const a = value({ ...constantDocument, interaction: wheeler });
    expect(off(a.interaction.withIt_h!, a.firstToCritical_h!)).toBeLessThan(1e-3);
  });
  it('a kernel is handed the figures of the place and the law', () => {
    const seen: unknown[] = [];
    const kernel = (input: { geometry: unknown; law: unknown; from: unknown }) => {
      seen.push(input);
      return input.from;
    };
    const a = value({ ...constantDocument, interaction: wheeler }, { kernel });
    expect(seen[0]).toMatchObject({
      geometry: { shape: 'hole_corner', width_mm: 70, thickness_mm: 6, diameter_mm: 8, cracks: 1 },
      law: { c: 1.4e-8, n: 3.59, m: expect.closeTo(0.68, 12) },
    });
    expect(a.interaction.withIt_h).toBe(value({ ...constantDocument, interaction: wheeler }).interaction.withIt_h);
    seen.length = 0;
    value(
      {
        ...constantDocument,
        geometry: { ...constantDocument.geometry, bending_ratio: 0.2 } as GrowthInput['geometry'],
        interaction: wheeler,
      },
      { kernel },
    );
    expect(seen).toEqual([]);
  });
});

describe('what a reader must know', () => {
  it('no growth computed is said, and is no programme', () => {
    const d: GrowthInput = {
      ...constantDocument,
      loading: { as: 'constant', max_MPa: -5, min_MPa: -90, per_hour: 20, from: FROM },
    };
    const a = value(d);
    expect([a.curve!.ended, a.firstToCritical_h, a.programme, a.critical]).toEqual(['no growth', null, null, null]);
    expect(warned(d)).toContain('no endless life');
    expect(a.sensitivity).toEqual([]);
  });
  it('a first flaw below the threshold: the looks are taken from what a look can find', () => {
    const law = {
      law: 'closure',
      units: 'mm, MPa√m',
      c: 3e-7,
      n: 3,
      p: 0.5,
      q: 1,
      dk0: 12,
      alpha: 1.5,
      s: 0.3,
      kc: 95,
      from: FROM,
    } as const;
    const d: GrowthInput = {
      ...constantDocument,
      material: { ...constantDocument.material, law } as GrowthInput['material'],
      detectable: { ...constantDocument.detectable, c_mm: 5, a_mm: 5 },
    };
    const a = value(d);
    expect(a.firstToCritical_h).toBeNull();
    expect(a.programme!.first_h).toBe(a.detectableToCritical_h! / 2);
    expect(warned(d)).toContain('does not grow; the first look is taken');
  });
  it('critical at once: no hours, and it is said', () => {
    const d: GrowthInput = { ...constantDocument, limit_stress: { stress_MPa: 400, from: FROM } };
    const a = value(d);
    expect([a.firstToCritical_h, a.curve!.ended, a.programme!.first_h, a.programme!.repeat_h]).toEqual([
      0,
      'critical',
      0,
      0,
    ]);
    expect(a.critical!.size).toEqual({ c_mm: 1.27, a_mm: 1.27 });
    expect(warned(d)).toContain('already critical');
  });
  it('a method that finds only what is critical gives no repeat', () => {
    const d: GrowthInput = { ...constantDocument, detectable: { c_mm: 28, method: 'by eye', from: FROM } };
    expect(value(d).programme!.repeat_h).toBe(0);
    expect(warned(d)).toContain('no repeat can rest');
  });
  it('a life beyond anything that flew is no promise', () => {
    const loading = { as: 'constant', max_MPa: 12, min_MPa: 9, per_hour: 20, from: FROM } as const;
    expect(value({ ...constantDocument, loading }).firstToCritical_h!).toBeGreaterThan(1e6);
    expect(warned({ ...constantDocument, loading })).toContain('promises nothing');
  });
  it('a loading above limit load: critical at that stress', () => {
    const d: GrowthInput = { ...constantDocument, limit_stress: { stress_MPa: 60, from: FROM } };
    expect(value(d).critical!.limit_MPa).toBe(90);
    expect(warned(d)).toContain('above the stress at limit load');
  });
  it('where the solution ends the hours end, and why is said', () => {
    const d: GrowthInput = {
      ...constantDocument,
      limit_stress: { stress_MPa: 90, from: FROM },
      geometry: { shape: 'plate_surface', width_mm: 30, thickness_mm: 12 },
      first_flaw: { c_mm: 5, a_mm: 1, from: FROM },
      detectable: { c_mm: 6, a_mm: 2, method: 'dye', from: FROM },
    };
    const a = value(d);
    expect([a.curve!.ended, a.critical!.by]).toEqual(['ligament', 'ligament']);
    expect(warned(d)).toMatch(/reaches no further than .* Beyond: /);
  });
  it('what comes from memory, and what is made up', () => {
    const memory: GrowthInput = {
      ...constantDocument,
      limit_stress: { stress_MPa: 150, from: { source: 'remembered', known: 'memory' } },
    };
    expect(warned(memory)).toContain('stress at limit load');
    expect(value(constantDocument).invented).toBe(true);
    expect(value(constantDocument).known).toBe('invented');
  });
});

describe('the example', () => {
  const { value: a, working, warnings } = answerGrowth(growthExample);
  it('is whole: finite figures, every source, falling strength, widest first', () => {
    for (const n of [...numbersOf(a), ...numbersOf(working)]) expect(Number.isFinite(n)).toBe(true);
    expect(a.sources.length).toBeGreaterThan(8);
    expect(a.curve!.errorBound).toBeLessThan(1e-3);
    const widths = a.sensitivity.map((s) => s.high_h - s.low_h);
    expect(widths).toEqual([...widths].sort((x, y) => y - x));
    expect(a.sensitivity.map((s) => s.input)).toEqual(
      expect.arrayContaining([
        'stress',
        'growth per cycle',
        'first flaw',
        'what a look can find',
        'toughness',
        'width',
      ]),
    );
    for (const s of a.sensitivity) {
      const base = s.hoursFrom === 'detectable' ? a.detectableToCritical_h! : a.firstToCritical_h!;
      expect(s.low_h).toBeLessThanOrEqual(base * 1.0001);
      expect(s.high_h).toBeGreaterThanOrEqual(base * 0.9999);
    }
    const strength = a.residual.filter((r) => r.a_mm === null).map((r) => Math.min(r.fracture_MPa, r.net_section_MPa));
    expect(strength).toEqual([...strength].sort((x, y) => y - x));
    expect(warnings.some((w) => w.includes('made up'))).toBe(true);
  });
  it('growth per cycle over 1.5 is hours times 1.5', () => {
    const s = a.sensitivity.find((x) => x.input === 'growth per cycle')!;
    expect(s.high_h / s.low_h).toBeCloseTo(2.25, 3);
  });
});

it('a sequence in ksi is the same one in MPa', () => {
  const ksi = [
    [14, -1],
    [9, 2],
    [11, 0.5],
  ];
  const of = (loading: object) =>
    value({ ...constantDocument, loading: { as: 'sequence', hours: 0.2, from: FROM, ...loading } } as GrowthInput);
  const [a, b] = [of({ cycles_ksi: ksi }), of({ cycles_MPa: ksi.map((c) => c.map((s) => s * 6.894757293168361)) })];
  expect(a.firstToCritical_h! / b.firstToCritical_h!).toBeCloseTo(1, 9);
});

it('a sequence of many cycles, none like another, is answered as one of few, by law of each kind', () => {
  const n = 200_000;
  const cycles = Array.from({ length: n }, (_, i): [number, number] => [100 + i / n, 10 - ((i * 7919) % n) / n]);
  const loading = (all: [number, number][]): GrowthInput['loading'] => ({
    as: 'sequence',
    cycles_MPa: all,
    hours: all.length / 20,
    from: FROM,
  });
  for (const law of ['walker', 'closure'] as const) {
    const d: GrowthInput = { ...constantDocument, material: { library: '2024-t3', law } };
    const [least, many, most] = [[[100, 10]], cycles, [[101, 9]]].map(
      (all) => value({ ...d, loading: loading(all as [number, number][]) }).firstToCritical_h!,
    );
    expect(many).toBeLessThan(least!);
    expect(many).toBeGreaterThan(most!);
  }
});
