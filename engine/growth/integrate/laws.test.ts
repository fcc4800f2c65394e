import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectiveCycle } from '../interaction/index.ts';
import { lawOf } from '../material/index.ts';
import type { CrackForm, CrackSize, GrowthLaw } from '../model.ts';
import { crackForm } from '../stress-intensity/index.ts';
import { grow } from './adaptive.ts';
import { growByBlocks } from './blocks.ts';
import { growCycleByCycle } from './cycle-by-cycle.ts';
import { hourlyGrowth } from './hourly.ts';
import type { KernelInput } from './model.ts';
import { run } from './run.ts';
import { type Stepped, step } from './step.ts';
import { hidden, ownTips, powerLaw, sequenceOf, throughForm } from './testing/forms.ts';

const from = { source: 'Made up for tests', known: 'invented' } as const;
const one = throughForm(() => 1);
const cycle = (max_MPa: number, min_MPa: number, perHour = 1) => [{ max_MPa, min_MPa, perHour }];
const real = (lo: number, hi: number) => fc.double({ min: lo, max: hi, noNaN: true });
/** K = σ √(πc), da/dN = C K^n, n ≠ 2. */
const closed = (a: number, b: number, stress: number, c: number, n: number) => {
  const p = (x: number) => Math.exp((1 - n / 2) * Math.log(x));
  return (p(a) - p(b)) / ((n / 2 - 1) * c * Math.exp(n * Math.log(stress * Math.sqrt(Math.PI / 1000))));
};

/** y' = y along all three: the coefficients, from memory, have to make an error that falls with the fifth power of the step. */
it('the step is of order five, its estimate of order four', () => {
  const slope = (at: readonly [number, number, number]) => at;
  const off = (over: number) => {
    const made = step([1, 2, 3], [1, 2, 3], over, slope) as Stepped;
    return [Math.abs(made.to[0] - Math.exp(over)), Math.abs(made.error[0])] as const;
  };
  const [wide, narrow] = [off(0.4), off(0.2)];
  expect(wide[0] / narrow[0]).toBeGreaterThan(50);
  expect(wide[1] / narrow[1]).toBeGreaterThan(25);
  expect(wide[1]).toBeGreaterThan(wide[0]);
});

describe('the closed integral', () => {
  it('is met within the bound that is reported, whatever exponent and span', () => {
    fc.assert(
      fc.property(real(2.2, 7), real(0.05, 5), real(1.2, 200), real(30, 300), (n, start, span, stress) => {
        const made = grow(one, powerLaw(1e-10, n), cycle(stress, 0, 30), { c_mm: start }, { c_mm: start * span });
        const want = closed(start, start * span, stress, 1e-10, n);
        expect(made.ended).toBe('asked size');
        expect(Math.abs(made.cycles / want - 1)).toBeLessThan(made.errorBound);
        expect(made.errorBound).toBeLessThan(1e-4);
        expect((made.hours * 30) / made.cycles).toBeCloseTo(1, 12);
        expect(made.points.at(-1)!.c_mm / (start * span)).toBeCloseTo(1, 9);
      }),
    );
  });
  it('holds at every point of the curve, also between the steps', () => {
    const made = grow(one, powerLaw(1e-10, 3.6), cycle(100, 0), { c_mm: 1 }, { c_mm: 60 });
    expect(made.points.length).toBeGreaterThan(39);
    for (const p of made.points.slice(1)) expect(p.hours / closed(1, p.c_mm, 100, 1e-10, 3.6)).toBeCloseTo(1, 3);
  });
  it('two tips that know nothing of each other come through when the depth alone says so', () => {
    const tips = ownTips(1, 1.3, 6, one);
    const made = grow(tips, powerLaw(1e-10, 3.6), cycle(100, 0), { c_mm: 1, a_mm: 1.5 }, { c_mm: 40 });
    expect(made.through!.cycles / closed(1.5, 6, 130, 1e-10, 3.6)).toBeCloseTo(1, 5);
    expect(made.cycles / closed(1, 40, 100, 1e-10, 3.6)).toBeCloseTo(1, 5);
    const across = made.points.filter((p) => p.cycles === made.through!.cycles);
    expect(across.map((p) => p.c_mm)).toEqual([made.through!.c_mm, made.through!.c_mm]);
    expect(across.map((p) => p.a_mm)).toEqual([6, null]);
  });
});

/** Real places, so that kinks of their equations are met. */
const places: readonly (readonly [string, CrackForm, CrackSize, number])[] = [
  [
    'corner at a hole',
    crackForm({ shape: 'hole_corner', width_mm: 80, thickness_mm: 6, diameter_mm: 8, cracks: 1, bending_ratio: 0.2 }),
    { c_mm: 1, a_mm: 1.6 },
    20,
  ],
  [
    'surface crack',
    crackForm({ shape: 'plate_surface', width_mm: 100, thickness_mm: 5, bending_ratio: 0 }),
    { c_mm: 3, a_mm: 1 },
    30,
  ],
  [
    'corner by table',
    crackForm({
      shape: 'plate_corner_table',
      width_mm: 50,
      thickness_mm: 6,
      in_plane_bending_ratio: 0,
      out_of_plane_bending_ratio: 0,
    }),
    { c_mm: 1, a_mm: 0.8 },
    25,
  ],
  [
    'hole, loaded by its pin',
    crackForm({ shape: 'hole_through', width_mm: 60, thickness_mm: 3, diameter_mm: 6, cracks: 2, bearing_ratio: 1.5 }),
    { c_mm: 0.6 },
    18,
  ],
];
const walker = powerLaw(2e-7, 3.59, 0.68);
const forman = lawOf({ law: 'forman', units: 'mm, MPa√m', c: 5e-6, n: 2.9, kc: 80, from });
const closure = lawOf({
  law: 'closure',
  units: 'in, ksi√in',
  c: 8e-9,
  n: 3.28,
  p: 0.5,
  q: 1,
  dk0: 2.9,
  alpha: 1.5,
  s: 0.3,
  kc: 80,
  from,
});
const spectrum = [
  { max_MPa: 90, min_MPa: 10, perHour: 12 },
  { max_MPa: 70, min_MPa: -20, perHour: 40 },
  { max_MPa: 50, min_MPa: 30, perHour: 200 },
];

describe.each(places)('%s', (_, form, start, end) => {
  it.each([
    ['walker', walker],
    ['forman', forman],
    ['closure', closure],
  ])('%s: a run a thousand times finer is within the bound', (_, law) => {
    const made = grow(form, law, spectrum, start, { c_mm: end });
    const fine = grow(form, law, spectrum, start, { c_mm: end }, { tolerance: 1e-10 });
    expect(made.ended).toBe(fine.ended);
    expect(Math.abs(made.hours / fine.hours - 1)).toBeLessThan(made.errorBound);
    expect(made.errorBound).toBeLessThan(2e-3);
    expect(made.evaluations).toBeLessThan(20_000);
  });
  it('cycle by cycle, adaptive and in blocks agree within 0.1 %', () => {
    const [max, min] = form.tips === 1 ? [50, 5] : [110, 11];
    const sequence = sequenceOf([[max, min]]);
    const by = growCycleByCycle(form, walker, sequence, start, { c_mm: end });
    const made = grow(form, walker, cycle(max, min), start, { c_mm: end });
    const blocks = growByBlocks(form, walker, sequence, start, { c_mm: end })!;
    expect([made.ended, blocks.ended]).toEqual([by.ended, by.ended]);
    expect(Math.abs(made.cycles / by.cycles - 1)).toBeLessThan(1e-3);
    expect(Math.abs(blocks.cycles / by.cycles - 1)).toBeLessThan(blocks.errorBound);
    expect(blocks.errorBound).toBeLessThan(1e-3);
  });
  it('hours add up: to a middle length and on from the size reached there', () => {
    const middle = start.c_mm * 1.7;
    const whole = grow(form, walker, spectrum, start, { c_mm: end });
    const first = grow(form, walker, spectrum, start, { c_mm: middle });
    const at = first.points.at(-1)!;
    const on = at.a_mm === null ? (form.through ?? form) : form;
    const rest = grow(on, walker, spectrum, { c_mm: at.c_mm, a_mm: at.a_mm ?? undefined }, { c_mm: end });
    expect(Math.abs((first.hours + rest.hours) / whole.hours - 1)).toBeLessThan(whole.errorBound + rest.errorBound);
  });
  it('every harsher input shortens it', () => {
    const law = (c = 2e-7, n = 3.59) => powerLaw(c, n, 0.68);
    const life = (l: GrowthLaw, s: typeof spectrum, at: CrackSize) =>
      grow(form, l, s, at, { c_mm: end }, { points: 0 }).hours;
    fc.assert(
      fc.property(real(1.01, 1.5), fc.integer({ min: 0, max: 2 }), (f, which) => {
        const plain = life(law(), spectrum, start);
        const worse = (change: (s: (typeof spectrum)[number]) => (typeof spectrum)[number]) =>
          spectrum.map((s, i) => (i === which ? change(s) : s));
        const larger = { c_mm: start.c_mm * f, ...(start.a_mm ? { a_mm: start.a_mm * f } : {}) };
        for (const harsher of [
          life(
            law(),
            worse((s) => ({ ...s, max_MPa: s.max_MPa * f })),
            start,
          ),
          life(
            law(),
            worse((s) => ({ ...s, perHour: s.perHour * f })),
            start,
          ),
          life(law(2e-7 * f), spectrum, start),
          life(law(), spectrum, larger),
        ])
          expect(harsher).toBeLessThan(plain * (1 - 1e-7));
      }),
      { numRuns: 12 },
    );
  });
});

describe('sequences', () => {
  const centre = crackForm({ shape: 'centre_through', width_mm: 120, thickness_mm: 4 });
  const stresses = fc.array(fc.tuple(real(40, 160), real(-0.5, 0.9)), { minLength: 1, maxLength: 40 });
  it('without interaction blocks count the cycles that cycle by cycle counts', () => {
    fc.assert(
      fc.property(stresses, real(1, 4), (drawn, start) => {
        const sequence = sequenceOf(drawn.map(([s, r]) => [s, s * r]));
        const law = powerLaw(4e-8, 3.59, 0.68);
        const until = { c_mm: start * 2 };
        const by = growCycleByCycle(centre, law, sequence, { c_mm: start }, until, { most: 400_000 });
        fc.pre(by.ended === 'asked size');
        const made = growByBlocks(centre, law, sequence, { c_mm: start }, until)!;
        expect(Math.abs(made.cycles / by.cycles - 1)).toBeLessThanOrEqual(made.errorBound);
        expect(Math.abs(made.cycles - by.cycles)).toBeLessThanOrEqual(2 + 2e-6 * by.cycles);
        const back = growByBlocks(centre, law, sequence, { c_mm: start }, { cycles: by.cycles })!;
        expect(Math.abs(back.points.at(-1)!.c_mm / by.points.at(-1)!.c_mm - 1)).toBeLessThan(1e-5 + made.errorBound);
      }),
      { numRuns: 25 },
    );
  });
  it('constant amplitude does not know its order', () => {
    const cycles: [number, number][] = [...Array(60).fill([100, 10]), ...Array(40).fill([80, 20])];
    const law = powerLaw(4e-8, 3.59, 0.68);
    const life = (c: [number, number][]) =>
      growCycleByCycle(centre, law, sequenceOf(c), { c_mm: 2 }, { c_mm: 6 }).cycles;
    expect(Math.abs(life(cycles) - life([...cycles].reverse()))).toBeLessThanOrEqual(100);
    expect(
      Math.abs(
        life([...cycles].reverse()) / growByBlocks(centre, law, sequenceOf(cycles), { c_mm: 2 }, { c_mm: 6 })!.cycles -
          1,
      ),
    ).toBeLessThan(1e-3);
  });
  it('interaction never shortens a life, and under constant amplitude changes nothing', () => {
    const law = powerLaw(1e-8, 3.59, 0.68);
    const models = fc.oneof(
      fc.record({
        as: fc.constant('wheeler' as const),
        exponent: real(0, 4),
        plane: fc.constantFrom('stress' as const, 'strain' as const),
        from: fc.constant(from),
      }),
      fc.record({
        as: fc.constant('willenborg' as const),
        threshold_MPa_sqrt_m: real(0, 3),
        shut_off_ratio: real(1.5, 4),
        plane: fc.constantFrom('stress' as const, 'strain' as const),
        from: fc.constant(from),
      }),
    );
    fc.assert(
      fc.property(stresses, models, (drawn, interaction) => {
        const sequence = sequenceOf(drawn.map(([s, r]) => [s, s * r]));
        const cycles = 4000;
        const end = (s: typeof sequence, o = {}) =>
          growCycleByCycle(centre, law, s, { c_mm: 3 }, { cycles }, o).points.at(-1)!.c_mm;
        const options = { interaction, yield_MPa: 330 };
        expect(end(sequence, options)).toBeLessThanOrEqual(end(sequence) * (1 + 1e-9));
        const same = sequenceOf([[100, 10]]);
        expect(end(same, options)).toBeCloseTo(end(same), 9);
      }),
      { numRuns: 20 },
    );
  });
  it('each tip remembers its own overload', () => {
    const sequence = sequenceOf([...Array(40).fill([90, 10]), [150, 0], ...Array(160).fill([90, 10])]);
    const law = powerLaw(2e-8, 3.59, 0.68);
    const options = { interaction: { as: 'wheeler', exponent: 2, plane: 'stress', from }, yield_MPa: 330 } as const;
    const until = { cycles: 3000 };
    const both = growCycleByCycle(ownTips(1, 1.4, 50, null), law, sequence, { c_mm: 2, a_mm: 4 }, until, options);
    const alone = (beta: number, c_mm: number) =>
      growCycleByCycle(
        throughForm(() => beta),
        law,
        sequence,
        { c_mm },
        until,
        options,
      ).points.at(-1)!.c_mm;
    expect(both.points.at(-1)!.c_mm).toBeCloseTo(alone(1, 2), 9);
    expect(both.points.at(-1)!.a_mm!).toBeCloseTo(alone(1.4, 4), 9);
  });
  it('very many unlike cycles put together grow no slower than one by one, and little faster', () => {
    const rate = (kMax: number, kMin: number) => 1e-8 * (kMax - Math.max(0, kMin)) ** 3 * (1 + kMax / 100);
    const law = { ...powerLaw(1e-8, 3, 1), rate, power: null };
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.double({ min: 0.01, max: 1, noNaN: true }), (seed, k) => {
        let state = seed;
        const next = () => {
          state = (state * 48_271) % 2_147_483_647;
          return state / 2_147_483_647;
        };
        const cycles = Array.from({ length: 8000 }, () => {
          const max_MPa = 20 + 120 * next();
          return { max_MPa, min_MPa: max_MPa * (1.9 * next() - 1), perHour: next() };
        });
        const exact = cycles.reduce((t, s) => t + s.perHour * rate(s.max_MPa * k, s.min_MPa * k), 0);
        const put = hourlyGrowth(law, cycles)(k);
        expect(put).toBeGreaterThan(exact);
        expect(put).toBeLessThan(1.02 * exact);
      }),
      { numRuns: 10 },
    );
  });
  it('a sequence of a million cycles', () => {
    const n = 1_000_000;
    const sequence = {
      max_MPa: Float64Array.from({ length: n }, (_, i) => 60 + (i % 97)),
      min_MPa: Float64Array.from({ length: n }, (_, i) => (i % 13) - 6),
      hours: 5000,
    };
    const law = powerLaw(1e-8, 3.59, 0.68);
    const blocks = growByBlocks(centre, law, sequence, { c_mm: 2 }, { c_mm: 6 })!;
    expect(blocks.ended).toBe('asked size');
    expect(blocks.hours).toBeCloseTo((blocks.cycles / n) * 5000, 6);
    const by = growCycleByCycle(centre, law, sequence, { c_mm: 2 }, { c_mm: 6 });
    expect(Math.abs(blocks.cycles / by.cycles - 1)).toBeLessThan(1e-6);
  });
});

/** A doer of the cycles made of the readable parts, that stops early now and then. */
describe('a faster doer', () => {
  const geometry = { shape: 'hole_corner', width_mm: 80, thickness_mm: 6, diameter_mm: 8, cracks: 1 } as const;
  const form = crackForm({ ...geometry, bending_ratio: 0 });
  const law = powerLaw(2e-8, 3.59, 0.68);
  const wheeler = { as: 'wheeler', exponent: 1.2, plane: 'strain', from } as const;
  const calls: KernelInput[] = [];
  const kernel = (input: KernelInput) => {
    calls.push(input);
    const crack = { ...input.from };
    const felt = effectiveCycle(wheeler, 330);
    const cycles = Math.min(input.until.cycles, crack.cycles + 777);
    run(form, law, felt, { ...input, hours: 1 }, crack, { ...input.until, cycles });
    return crack;
  };
  it('gives what the readable form gives, through the thickness and to the end', () => {
    const sequence = sequenceOf([...Array(30).fill([110, 11]), [170, 0], ...Array(30).fill([90, 0])]);
    const margin = (_: CrackForm, { c_mm }: CrackSize) => 1 - c_mm / 12;
    const options = { interaction: wheeler, yield_MPa: 330 };
    const start = { c_mm: 1, a_mm: 2 };
    const plain = growCycleByCycle(form, law, sequence, start, { margin }, options);
    const fast = growCycleByCycle(
      form,
      law,
      sequence,
      start,
      { margin },
      { ...options, kernel: { run: kernel, geometry, law: { c: 2e-8, n: 3.59, m: 0.68 } } },
    );
    expect(calls.length).toBeGreaterThan(10);
    expect(calls[0]!.interaction).toEqual({
      as: 'wheeler',
      exponent: 1.2,
      zone: expect.closeTo(1000 / (6 * Math.PI * 330 * 330), 12),
    });
    expect(plain.through).not.toBeNull();
    expect([fast.cycles, fast.ended, fast.through!.cycles]).toEqual([plain.cycles, 'critical', plain.through!.cycles]);
    expect(fast.points.at(-1)).toEqual(plain.points.at(-1));
  });
});

describe('ends', () => {
  const law = powerLaw(1e-9, 3.6);
  it('a law that is no power is summed, to the same life', () => {
    const power = grow(one, law, spectrum, { c_mm: 1 }, { c_mm: 20 });
    expect(grow(one, hidden(law), spectrum, { c_mm: 1 }, { c_mm: 20 }).hours / power.hours).toBeCloseTo(1, 6);
    expect(growByBlocks(one, hidden(law), sequenceOf([[90, 0]]), { c_mm: 1 }, { c_mm: 20 })).toBeNull();
  });
  it('compression alone grows nothing; nor does a range below the threshold', () => {
    const pressed = grow(one, law, cycle(-10, -100), { c_mm: 1 }, { c_mm: 2 });
    expect([pressed.ended, pressed.hours, pressed.points.length]).toEqual(['no growth', 0, 1]);
    expect(grow(one, closure, cycle(5, 0), { c_mm: 0.1 }, { c_mm: 2 }).ended).toBe('no growth');
    const sequence = sequenceOf([[-10, -100]]);
    expect(growCycleByCycle(one, law, sequence, { c_mm: 1 }, { c_mm: 2 }).ended).toBe('no growth');
    expect(growByBlocks(one, law, sequence, { c_mm: 1 }, { c_mm: 2 })!.ended).toBe('no growth');
  });
  it('a crack that outgrows its stress arrests: K falls below the threshold', () => {
    const falling = throughForm((c) => 1 / (c * c));
    const made = grow(falling, closure, cycle(120, 0, 100), { c_mm: 1 }, { c_mm: 50 });
    expect(made.ended).toBe('no growth');
    expect(made.points.at(-1)!.c_mm).toBeGreaterThan(1);
    expect(Number.isFinite(made.hours)).toBe(true);
  });
  it('the ligament ends what nothing else ends', () => {
    const short = throughForm(() => 1, 9);
    for (const made of [
      grow(short, law, cycle(100, 0), { c_mm: 1 }, {}),
      growCycleByCycle(short, powerLaw(1e-7, 3.6), sequenceOf([[100, 0]]), { c_mm: 1 }, {}),
    ]) {
      expect(made.ended).toBe('ligament');
      expect(made.points.at(-1)!.c_mm).toBeCloseTo(9, 2);
    }
  });
  it('critical at once has no hours', () => {
    const margin = () => -0.1;
    for (const made of [
      grow(one, law, cycle(100, 0), { c_mm: 1 }, { margin }),
      growCycleByCycle(one, law, sequenceOf([[100, 0]]), { c_mm: 1 }, { margin }),
      growByBlocks(one, law, sequenceOf([[100, 0]]), { c_mm: 1 }, { margin })!,
    ])
      expect([made.ended, made.hours]).toEqual(['critical', 0]);
  });
  it("the law's own toughness is an end", () => {
    const made = grow(one, forman, cycle(200, 0), { c_mm: 5 }, {});
    expect(made.ended).toBe('critical');
    expect(made.points.at(-1)!.kc_MPa_sqrt_m).toBeCloseTo(80, 2);
  });
  it('a count that is stopped says so', () => {
    const made = growCycleByCycle(one, law, sequenceOf([[100, 0]]), { c_mm: 1 }, { c_mm: 20 }, { most: 5000 });
    expect([made.ended, made.cycles]).toEqual(['asked cycles', 5000]);
  });
});

const code = (f: () => unknown) => {
  try {
    f();
    return null;
  } catch (e) {
    return (e as { code?: string }).code;
  }
};
describe('refusals', () => {
  const law = powerLaw(1e-9, 3.6);
  const until = { c_mm: 20 };
  it.each([
    [90, 90],
    [90, 91],
    [-5, -5],
    [90, Number.NaN],
    [Number.NaN, 0],
  ])('blocks find the one cycle in 1,501 that does not fall: %s, %s', (max, min) => {
    const sequence = sequenceOf([...Array(1500).fill([100, 0]), [max, min]]);
    expect(code(() => growByBlocks(one, law, sequence, { c_mm: 1 }, until))).toBe('growth.stress-ratio');
  });
  it.each([
    ['growth.no-cycles', () => grow(one, law, [], { c_mm: 1 }, until)],
    ['growth.no-cycles', () => grow(one, law, cycle(100, 0, 0), { c_mm: 1 }, until)],
    ['growth.no-cycles', () => growCycleByCycle(one, law, sequenceOf([]), { c_mm: 1 }, until)],
    ['growth.no-cycles', () => growByBlocks(one, law, sequenceOf([]), { c_mm: 1 }, until)],
    ['growth.stress-ratio', () => grow(one, law, cycle(100, 100), { c_mm: 1 }, until)],
    [
      'growth.stress-ratio',
      () =>
        growCycleByCycle(
          one,
          law,
          sequenceOf([
            [100, 0],
            [50, 60],
          ]),
          { c_mm: 1 },
          until,
        ),
    ],
    [
      'growth.outside-solution',
      () =>
        grow(
          throughForm(() => 1, 9),
          law,
          cycle(100, 0),
          { c_mm: 12 },
          until,
        ),
    ],
    ['growth.outside-solution', () => grow(places[1]![1], law, cycle(100, 0), { c_mm: 1, a_mm: 3 }, until)],
  ])('%s', (want, f) => expect(code(f)).toBe(want));
});
