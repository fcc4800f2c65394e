import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MPA_PER_KSI } from '../foundation/convert.ts';
import { curvesOf } from './curves.ts';
import { cyclesToFailure } from './life-curve.ts';
import { lifeCurveOf } from './life-curves.ts';
import { shapeOf, spectrumOf } from './spectrum.ts';
import { changed, loaded, MADE_UP } from './testing/documents.ts';

const NINE = { parts: 1, last: 'open' } as const;
const damages = (d = changed(), cut: Parameters<typeof spectrumOf>[2] = NINE) => {
  const curve = lifeCurveOf(d);
  return spectrumOf(d, 'private', cut).bands.map((b) => ({
    ...b,
    damage: b.perHour / cyclesToFailure(curve, b.max_MPa, b.min_MPa),
  }));
};
const sum = (d: readonly { damage: number }[]) => d.reduce((t, b) => t + b.damage, 0);

/** SYNTHETIC-1 (reference, section 1.3): computed there apart from this program, four figures a band; not aircraft data. */
describe('U5 SYNTHETIC-1', () => {
  it('band damages as printed', () => {
    const printed = [0, 1.558e-9, 8.711e-8, 1.7e-7, 1.614e-7, 1.108e-7, 6.319e-8, 3.196e-8, 2.083e-8];
    const gust = damages().filter((b) => b.load === 'gust');
    expect(gust).toHaveLength(9);
    gust.forEach((b, i) => {
      expect(Math.abs(b.damage - printed[i]!)).toBeLessThanOrEqual(printed[i]! * 5e-4);
    });
    expect(sum(gust)).toBeCloseTo(6.46902e-7, 12);
  });
  it('ground-air-ground to the once-per-flight maximum', () => {
    const gag = damages().at(-1)!;
    expect(gag.load).toBe('ground_air_ground');
    expect(gag.max_MPa / MPA_PER_KSI).toBeCloseTo(15.27685, 4);
    expect((gag.max_MPa / MPA_PER_KSI / 9 - 1) / 2.8).toBeCloseTo(0.249081, 6);
    expect(gag.min_MPa / MPA_PER_KSI).toBeCloseTo(-3, 12);
    expect(gag.damage * 0.75).toBeCloseTo(1.304043e-7, 13);
    expect(gag.damage).toBeCloseTo(1.738724e-7, 13);
  });
  it('mean life and safe life', () => {
    const life = 1 / sum(damages());
    expect(Math.abs(life - 1_218_362)).toBeLessThan(0.5);
    expect(Math.abs(life / 8 - 152_295)).toBeLessThan(0.5);
  });
  it('its own bands are fine enough: eight times as many change the sum by less than 0.2 %', () => {
    const fine = sum(damages(changed(), { parts: 66 }));
    expect(Math.abs(sum(damages(changed(), {})) / fine - 1)).toBeLessThan(0.002);
  });
});

/** The one kind of events that does not follow a straight line in the logarithm. */
const turbulence = (to: number) => ({
  as: 'turbulence',
  segments: [
    {
      share_of_time: 0.9,
      zero_crossings_per_s: 1.2,
      response_g_per_m_per_s: 0.09,
      p1: 1,
      b1_m_per_s: 0.77,
      p2: 0.005,
      b2_m_per_s: 1.54,
    },
    {
      share_of_time: 0.1,
      zero_crossings_per_s: 0.8,
      response_g_per_m_per_s: 0.05,
      p1: 0.3,
      b1_m_per_s: 1.04,
      p2: 0.002,
      b2_m_per_s: 2.49,
    },
  ],
  to,
  from: MADE_UP,
});
it.each([2.4, 20])('U5 bands of turbulence to %d g are fine enough as well, and few', (to) => {
  const d = loaded([turbulence(to)]);
  const [own, fine] = [spectrumOf(d, 'private').bands, spectrumOf(d, 'private', { parts: 8 }).bands];
  const damage = (bands: typeof own) =>
    bands.reduce((t, b) => t + b.perHour * b.max_MPa ** 5 * (1 - Math.min(0.99, b.min_MPa / b.max_MPa)) ** 3, 0);
  expect(Math.abs(damage(own) / damage(fine) - 1)).toBeLessThan(0.002);
  expect(own.length).toBeLessThan(500);
});

const table = (load: string, up: readonly number[][] | null, down: readonly number[][] | null, more: object = {}) => ({
  as: 'table',
  load,
  measure: 'increment',
  per: 'hour',
  ...(up ? { up: up.map(([at, times]) => ({ at, times })) } : {}),
  ...(down ? { down: down.map(([at, times]) => ({ at, times })) } : {}),
  from: MADE_UP,
  ...more,
});
const stress = (over: object = {}) => ({
  name: 'a place',
  stress: {
    as: 'per_g',
    at_1g_MPa: 60,
    per_g_MPa: 50,
    ground_at_1g_MPa: -10,
    ground_per_g_MPa: -8,
    from: MADE_UP,
    ...over,
  },
});
const at = (loads: unknown, cut: Parameters<typeof spectrumOf>[2] = { parts: 1 }) =>
  spectrumOf(changed({ place: stress(), uses: [{ use: 'private', flight_h: 2, loads }] }), 'private', cut).bands.map(
    (b) => [b.load, b.max_MPa, b.min_MPa, b.perHour],
  );

describe('U5 cycles', () => {
  it('gust up and down of equal frequency make one; what is left of one way goes with 1 g', () => {
    const up = [
      [0.4, 10],
      [0.8, 4],
    ];
    const down = [
      [0.2, 6],
      [0.6, 2],
    ];
    const found = at([table('gust', up, down)]);
    expect(found.map((b) => b[0])).toEqual(['gust', 'gust', 'gust', 'gust', 'ground_air_ground']);
    // 10 to 6 an hour: up only, between 0.4 and the level met 6 times.
    const six = 0.4 + (0.4 * Math.log(6 / 10)) / Math.log(4 / 10);
    expect(found[0]![1]).toBeCloseTo(60 + (50 * (0.4 + six)) / 2, 9);
    expect(found[0]!.slice(2)).toEqual([60, 4]);
    // 6 to 4: up to 0.8, down from 0.2 to the level met 4 times.
    const four = 0.2 + (0.4 * Math.log(4 / 6)) / Math.log(2 / 6);
    expect(found[1]![1]).toBeCloseTo(60 + (50 * (six + 0.8)) / 2, 9);
    expect(found[1]![2]).toBeCloseTo(60 - (50 * (0.2 + four)) / 2, 9);
    // Beyond 0.8 up counts at 0.8, beyond 0.6 down at 0.6.
    expect(found[3]!.slice(1)).toEqual([100, 30, 2]);
  });
  it('a manoeuvre goes with 1 g, each way by itself', () => {
    expect(
      at([
        table(
          'manoeuvre',
          [
            [1, 3],
            [2, 1],
          ],
          [
            [0.5, 2],
            [1, 0],
          ],
        ),
      ]),
    ).toEqual([
      ['manoeuvre', 135, 60, 2],
      ['manoeuvre', 160, 60, 1],
      ['manoeuvre', 60, 22.5, 2],
      ['ground_air_ground', expect.any(Number), -10, 0.5],
    ]);
  });
  it('taxi and landing move the ground stress, and lower the foot of ground-air-ground', () => {
    const found = at([
      table(
        'taxi',
        [
          [0.5, 3],
          [1, 1],
        ],
        null,
      ),
      table(
        'gust',
        [
          [0.5, 1],
          [1, 0.1],
        ],
        null,
      ),
    ]);
    // Up on the ground presses harder: 10 + 8 · 0.75.
    expect(found[0]).toEqual(['taxi', -10, -16, 2]);
    expect(found[1]).toEqual(['taxi', -10, -18, 1]);
    // In flights of 2 h, 1 g up on the ground is met twice a flight: it ends the table there.
    expect(found.at(-1)![2]).toBe(-18);
  });
  it('stress on a line, straight between points', () => {
    const line = [
      { load_factor: -1, stress_MPa: -20 },
      { load_factor: 1, stress_MPa: 60 },
      { load_factor: 4, stress_MPa: 120 },
    ];
    const d = changed({
      place: { name: 'p', stress: { as: 'line', points: line, ground_at_1g_MPa: -5, from: MADE_UP } },
      uses: [
        {
          use: 'private',
          flight_h: 2,
          loads: [
            table(
              'gust',
              [
                [1, 4],
                [1.5, 1],
              ],
              [
                [1, 4],
                [1.5, 1],
              ],
            ),
          ],
        },
      ],
    });
    const [first, second] = spectrumOf(d, 'private', { parts: 1 }).bands;
    expect([first!.max_MPa, first!.min_MPa]).toEqual([60 + 1.25 * 20, 60 - 1.25 * 40]);
    expect([second!.max_MPa, second!.min_MPa]).toEqual([90, 0]);
  });
  it('the shape is the spectrum over the stress at 1 g', () => {
    const d = changed({ place: stress() });
    const [a, b] = [spectrumOf(d, 'private').bands, shapeOf(d, 'private').bands];
    a.forEach((x, i) => {
      expect(b[i]!.max_MPa).toBeCloseTo(x.max_MPa / 60, 12);
      expect(b[i]!.min_MPa).toBeCloseTo(x.min_MPa / 60, 12);
    });
  });
  it('the shape of a place whose stress is not known takes the ground as a share', () => {
    const d = changed({ place: { name: 'p', stress: { as: 'unknown', ground_share: -0.25, from: MADE_UP } } });
    expect(shapeOf(d, 'private').bands.at(-1)!.min_MPa).toBe(-0.25);
    expect(() => spectrumOf(d, 'private')).toThrow(expect.objectContaining({ code: 'usage.stress-unknown' }));
  });
});

const levels = fc
  .array(fc.tuple(fc.double({ min: 0.02, max: 0.4, noNaN: true }), fc.double({ min: 0, max: 0.95, noNaN: true })), {
    minLength: 2,
    maxLength: 8,
  })
  .map((steps) => {
    let [at, times] = [0, 100];
    return steps.map(([rise, fall]) => {
      at += rise;
      times *= 1 - fall;
      return [at, times];
    });
  });

describe('laws', () => {
  it('exceedances fall with the level and are never negative', () => {
    fc.assert(
      fc.property(levels, levels, fc.array(fc.double({ min: 0, max: 5, noNaN: true })), (up, down, xs) => {
        const [c] = curvesOf(loaded([table('gust', up, down)]), 'private');
        const sorted = [...xs].sort((a, b) => a - b);
        for (const way of ['up', 'down'] as const)
          sorted.reduce((before, x) => {
            const now = c!.perHour(way, x);
            expect(now).toBeGreaterThanOrEqual(0);
            expect(now).toBeLessThanOrEqual(before);
            return now;
          }, Number.POSITIVE_INFINITY);
      }),
    );
  });
  it('bands hold every event once: their number is the exceedance of the first level', () => {
    fc.assert(
      fc.property(levels, levels, (up, down) => {
        const d = loaded([table('gust', up, down), table('manoeuvre', up, down)]);
        const { bands } = spectrumOf(d, 'private');
        const of = (load: string) => bands.filter((b) => b.load === load).reduce((t, b) => t + b.perHour, 0);
        const [u, v] = [up[0]![1]!, down[0]![1]!];
        expect(of('gust')).toBeCloseTo(Math.max(u, v), 6);
        expect(of('manoeuvre')).toBeCloseTo(u + v, 6);
      }),
    );
  });
  it('the middles of the bands lie between the levels, and rarer is harder', () => {
    fc.assert(
      fc.property(levels, (up) => {
        const of = spectrumOf(loaded([table('gust', up, up)]), 'private').bands.filter((b) => b.load === 'gust');
        of.forEach((b, i) => {
          if (i > 0) expect(b.max_MPa).toBeGreaterThanOrEqual(of[i - 1]!.max_MPa);
          if (i > 0) expect(b.min_MPa).toBeLessThanOrEqual(of[i - 1]!.min_MPa);
        });
      }),
    );
  });
});
