import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerUsage } from './answer.ts';
import { damagePerHour, sequenceDamage } from './damage.ts';
import type { UsageInput } from './document.ts';
import { byPowerLaw } from './power-law.ts';
import { readUsage } from './read.ts';
import { sequenceShapeOf } from './sequence.ts';
import { shapeOf } from './spectrum.ts';
import { MADE_UP, SYNTHETIC_1 } from './testing/documents.ts';

const gust = (times: number, at = 1): UsageInput['uses'][number]['loads'][number] => ({
  as: 'exponential',
  load: 'gust',
  measure: 'share_of_limit',
  per: 'hour',
  up: { times, scale: 0.08 * at, to: 0.9 * Math.min(1, at) },
  down: { times, scale: 0.08 * at, to: 0.9 * Math.min(1, at) },
  from: MADE_UP,
});
const use = (name: string, loads = [gust(30)], more: object = {}) => ({ use: name, flight_h: 0.75, loads, ...more });
const asked = (over: Partial<Record<keyof UsageInput, unknown>> = {}): UsageInput =>
  ({ ...SYNTHETIC_1, uses: [use('private'), use('rough', [gust(30, 1.3)])], ...over }) as UsageInput;
const stress = (at_1g_MPa: number) => ({
  name: 'p',
  stress: { as: 'per_g', at_1g_MPa, ground_at_1g_MPa: -at_1g_MPa / 3, from: MADE_UP },
});
const unknown = { name: 'p', stress: { as: 'unknown', ground_share: -1 / 3, from: MADE_UP } };
const run = (over: Parameters<typeof asked>[0] = {}) => answerUsage(asked(over));

describe('U8 the whole answer', () => {
  it('SYNTHETIC-1 with its own bands: mean and safe life near those of the nine coarse ones', () => {
    const { value } = answerUsage(SYNTHETIC_1);
    const [u] = value.uses;
    // Nine bands, the last open, print 1 218 362 h; the finer ones count less beyond the last level.
    expect(u!.meanLife_h! / 1_218_362).toBeGreaterThan(1);
    expect(u!.meanLife_h! / 1_218_362).toBeLessThan(1.08);
    expect(u!.safeLife_h).toBe(u!.meanLife_h! / 8);
    expect(u!.ratio).toBe(1);
    expect(u!.ratioAcross).toEqual({ low: 1, high: 1 });
    expect(value.gives).toBe('lives');
  });
  it('U16 the harder use, its ratio, and the range over slopes and stress levels', () => {
    const { value } = run();
    expect(value.hardest).toBe('rough');
    const rough = value.uses[1]!;
    expect(rough.ratio).toBeCloseTo(rough.perHour! / value.uses[0]!.perHour!, 12);
    expect(value.sensitivity.map((s) => s.tried)).toEqual([
      'slope 3',
      'slope 4',
      'slope 5',
      'slope 6',
      'stress −20 %',
      'stress −10 %',
      'stress +10 %',
      'stress +20 %',
    ]);
    for (const s of value.sensitivity) {
      expect(s.ratios[0]!.ratio).toBe(1);
      expect(s.ratios[1]!.ratio).toBeGreaterThanOrEqual(rough.ratioAcross.low);
      expect(s.ratios[1]!.ratio).toBeLessThanOrEqual(rough.ratioAcross.high);
    }
  });
  it('a drawn sequence stands beside the bands; the harsher of the two gives the life', () => {
    const { value } = run({ sequence: { seed: 3, flights: 2000 } });
    for (const u of value.uses) {
      expect(u.sequencePerHour).toBeGreaterThan(0);
      expect(u.meanLife_h).toBe(1 / Math.max(u.perHour!, u.sequencePerHour!));
    }
    expect(value.sensitivity.slice(-2).map((s) => s.tried)).toEqual(['tables one by one', 'counted flight by flight']);
    // Lives and ratios say the same.
    const [a, b] = value.uses;
    expect(b!.ratio).toBeCloseTo(a!.meanLife_h! / b!.meanLife_h!, 12);
    expect(value.sensitivity.at(-2)!.ratios[1]!.ratio).toBeCloseTo(b!.perHour! / a!.perHour!, 12);
  });
  it('curves to draw: rising in load factor, falling away from 1 g', () => {
    const [c] = run().value.curves;
    const factors = c!.points.map((p) => p.load_factor);
    expect([...factors].sort((a, b) => a - b)).toEqual(factors);
    expect(factors[0]).toBeCloseTo(1 - 0.9 * 2.8, 9);
    expect(factors.at(-1)).toBeCloseTo(1 + 0.9 * 2.8, 9);
    expect(Math.max(...c!.points.map((p) => p.perHour))).toBe(30);
  });
  it('how well it is known is the weakest of all that it rests on', () => {
    const read = { source: 'a report', known: 'read' } as const;
    const all = {
      aeroplane: { ...SYNTHETIC_1.aeroplane, from: read },
      uses: [use('private', [{ ...gust(30), from: read }])],
      place: { name: 'p', stress: { as: 'per_g', at_1g_MPa: 62, ground_at_1g_MPa: -20, from: read } },
      life: { ...SYNTHETIC_1.life, scatter_factor: { value: 8, from: read } },
    };
    expect(run(all).value.known).toBe('second-hand');
    expect(run({ ...all, invented: true }).value.known).toBe('invented');
    expect(run({ ...all, place: stress(62) }).value.known).toBe('invented');
  });
  it('every step of the working is finite and says its unit', () => {
    for (const s of run({ hours: { by_use: [{ use: 'drop', low_h: 1, high_h: 2 }] } }).working) {
      expect(s.formula.length).toBeGreaterThan(0);
      if (typeof s.value === 'number') expect(Number.isFinite(s.value)).toBe(true);
    }
  });
});

describe('U12 where no stress is known', () => {
  it('ratios by power laws and no life; the same ratios as with a stress, slope by slope', () => {
    const { value, warnings } = run({ place: unknown });
    expect(value.gives).toBe('ratios');
    for (const u of value.uses)
      expect([u.perHour, u.meanLife_h, u.safeLife_h, u.sequencePerHour]).toEqual([null, null, null, null]);
    const known = run({ place: stress(60) }).value;
    value.sensitivity.forEach((s, i) => {
      expect(known.sensitivity[i]!.tried).toBe(s.tried);
      expect(s.ratios[1]!.ratio).toBeCloseTo(known.sensitivity[i]!.ratios[1]!.ratio!, 9);
    });
    expect(value.sensitivity.map((s) => s.tried)).toEqual(['slope 3', 'slope 4', 'slope 5', 'slope 6']);
    expect(value.uses[1]!.ratio).toBeGreaterThan(1);
    expect(value.uses[0]!.shares.reduce((t, s) => t + s.share, 0)).toBeCloseTo(1, 12);
    expect(warnings.join(' ')).toMatch(/No stress with a source/);
  });
  it('a drawn sequence counts there as well: the ratio rests on the harsher of it and the bands', () => {
    const manoeuvres = { ...gust(40), load: 'manoeuvre' } as ReturnType<typeof gust>;
    const over = { uses: [use('private'), use('rough', [gust(30, 1.3), manoeuvres])], place: unknown };
    const sequence = { seed: 3, flights: 500 };
    const [bands, both] = [run(over).value, run({ ...over, sequence }).value];
    const d = readUsage(asked({ ...over, sequence }));
    const slope = byPowerLaw(4.5, 0.68);
    const counted = d.uses.map((u) => sequenceDamage(sequenceShapeOf(d, u.use, sequence), slope));
    const one = d.uses.map((u) => damagePerHour(shapeOf(d, u.use).bands, slope));
    const [a, b] = counted.map((x, i) => Math.max(x, one[i]!));
    expect(counted[1]!).toBeGreaterThan(one[1]!);
    expect(both.uses[1]!.ratio).toBeCloseTo(b! / a!, 9);
    expect(both.uses[1]!.ratio).toBeGreaterThan(bands.uses[1]!.ratio);
    const tried = new Map(both.sensitivity.map((s) => [s.tried, s.ratios[1]!.ratio]));
    expect(tried.get('tables one by one')).toBeCloseTo(one[1]! / one[0]!, 9);
    expect(tried.get('counted flight by flight')).toBeCloseTo(counted[1]! / counted[0]!, 9);
    expect(both.uses[1]!.sequencePerHour).toBe(null);
  });
});

describe('U9 under the run-out', () => {
  it('everywhere: no damage, no life, ratios by power law, and all of it said', () => {
    const { value, warnings } = run({ place: stress(5) });
    for (const u of value.uses) expect([u.perHour, u.meanLife_h]).toEqual([0, null]);
    expect(value.uses[0]!.ratio).toBe(1);
    expect(value.uses[1]!.ratio).toBeCloseTo(run({ place: unknown }).value.uses[1]!.ratio, 9);
    expect(warnings.join(' ')).toMatch(/no damage in private, rough:.*small cycles vanish/);
    expect(warnings.join(' ')).toMatch(/hour of private, rough counts is by a power law of slope 4\.5/);
    expect(value.equivalent).toBe(null);
  });
  /** A stress at which the rough use passes the run-out and the other does not. */
  const between = stress(22);
  it('of a use alone: its hours never count nothing', () => {
    const { value, warnings } = run({
      place: between,
      reference_use: 'rough',
      uses: [use('private', [gust(30, 0.3)]), use('rough', [gust(30, 1.3)])],
    });
    expect(value.uses[0]!.perHour).toBe(0);
    expect(value.uses[0]!.ratio).toBeGreaterThan(0);
    expect(warnings.join(' ')).toMatch(/an hour of private counts is by a power law/);
  });
  it('of the reference alone: the hardest power law, and a warning to take another', () => {
    const { value, warnings } = run({
      place: between,
      uses: [use('private', [gust(30, 0.3)]), use('rough', [gust(30, 1.3)])],
    });
    const slopes = value.sensitivity.filter((s) => s.tried.startsWith('slope')).map((s) => s.ratios[1]!.ratio!);
    expect(value.uses[1]!.ratio).toBe(Math.max(...slopes));
    expect(warnings.join(' ')).toMatch(/Take a use that damages as the reference/);
    expect(value.sensitivity.find((s) => s.tried === 'stress −20 %')!.ratios[1]!.ratio).toBe(null);
  });
});

describe('warnings', () => {
  const said = (over: Parameters<typeof asked>[0]) => run(over).warnings.join(' ');
  it.each<[string, Parameters<typeof asked>[0], RegExp]>([
    ['a fit with run-out', {}, /under the run-out stress of this curve count nothing/],
    [
      'a fit without',
      { life: { ...SYNTHETIC_1.life, curve: { library: '7050-t7451-kt3' } } },
      /every small cycle damages/,
    ],
    [
      'cycles beyond the tests',
      { life: { ...SYNTHETIC_1.life, curve: { library: '7050-t7451-kt3' } }, place: stress(5) },
      /beyond 100 million/,
    ],
    ['cycles too hard for the tests', { place: stress(200) }, /fewer than 1000 times/],
    ['shares of a gust limit that is not stated', {}, /No limit increment in gusts/],
    ['up without down', { uses: [use('private', [{ ...gust(3), down: undefined } as never])] }, /no downward levels/],
    [
      'no density',
      { uses: [use('private', [{ ...gust(3), per: 'nautical_mile' } as never], { speed_m_per_s: 50 })] },
      /No density/,
    ],
    [
      'a gust table downward only',
      { uses: [use('private', [{ ...gust(3), up: undefined } as never])] },
      /no upward levels: nothing pulls harder/,
    ],
    [
      'a curve that was not read',
      { life: { ...SYNTHETIC_1.life, curve: { library: '2024-t3-kt5' } } },
      /curve are from memory: read MIL-HDBK-5J, figure 3\.2\.3\.1\.8\(i\) before a life/,
    ],
    ['a curve read in a copy', {}, /constants of this curve are second-hand/],
    ['a short sequence', { sequence: { seed: 1, flights: 20 } }, /sequence is short, 20 of 500 flights/],
    [
      'a scatter factor for tests, on a life by analysis',
      { life: { ...SYNTHETIC_1.life, scatter_factor: { value: 4, from: MADE_UP } } },
      /divided by 8 in AC 23-13A, paragraph 2-26 \(second-hand\); the scatter factor of 4 is softer/,
    ],
    ['a life that nothing ever flew', { place: stress(30) }, /longer than anything that ever flew/],
    [
      'stress on the ground that a hard landing relieves',
      { place: { name: 'p', stress: { ...stress(60).stress, ground_per_g_MPa: 8 } } },
      /opposite signs \(−20 and 8 MPa\).*check the sign/,
    ],
    [
      'several landings',
      { uses: [use('private', [gust(3)], { landings_per_flight: 4 })] },
      /More than one landing a flight in private: .* too soft/,
    ],
    [
      'hours of a use without loads',
      { hours: { by_use: [{ use: 'drop', low_h: 1, high_h: 2 }] } },
      /No loads are known for drop: .* hardest known use, rough/,
    ],
  ])('%s', (_, over, words) => expect(said(over)).toMatch(words));
  it('nothing of this where nothing of this is so', () => {
    const all = said({ aeroplane: { ...SYNTHETIC_1.aeroplane, gust_limit_increment: 2.8 } });
    expect(all).not.toMatch(/gust|density|landing|loads are known|beyond|fewer|upward|short|softer|ever flew|signs/);
  });
});

describe('laws', () => {
  const scale = fc.double({ min: 0.5, max: 1.6, noNaN: true });
  it('more stress, more damage; a use against itself is 1; hours of one use count their ratio', () => {
    fc.assert(
      fc.property(
        scale,
        scale,
        fc.double({ min: 20, max: 80, noNaN: true }),
        fc.constantFrom('2024-t3-kt2', '7075-t6-kt1', '2024-t3-kt5'),
        (a, b, s, library) => {
          const at = (k: number) =>
            run({
              place: stress(s * k),
              uses: [use('private', [gust(30, a)]), use('rough', [gust(20, b)])],
              life: { ...SYNTHETIC_1.life, curve: { library } },
              hours: { by_use: [{ use: 'rough', low_h: 100, high_h: 100 }] },
            }).value;
          const [one, more] = [at(1), at(1.1)];
          one.uses.forEach((u, i) => {
            expect(more.uses[i]!.perHour).toBeGreaterThanOrEqual(u.perHour!);
          });
          expect(one.uses[0]!.ratio).toBe(1);
          expect(one.equivalent!.equivalent_h.low).toBeCloseTo(100 * one.uses[1]!.ratio, 4);
        },
      ),
      { numRuns: 25 },
    );
  });
});
