import { describe, expect, it } from 'vitest';
import { curvesOf } from './curves.ts';
import type { UsageInput } from './document.ts';
import { readUsage } from './read.ts';
import { sequenceOf } from './sequence.ts';
import { spectrumOf } from './spectrum.ts';
import { changed, MADE_UP, SYNTHETIC_1 } from './testing/documents.ts';

const table = (over: object = {}) => ({
  as: 'table',
  load: 'gust',
  measure: 'increment',
  per: 'hour',
  up: [
    { at: 0.5, times: 8 },
    { at: 1, times: 2 },
  ],
  from: MADE_UP,
  ...over,
});
const of = (load: object, more: object = {}, over: Partial<Record<keyof UsageInput, unknown>> = {}) => ({
  ...SYNTHETIC_1,
  uses: [{ use: 'private', flight_h: 1, loads: [load], ...more }],
  ...over,
});
const aeroplane = (over: object) => ({
  aeroplane: { ...SYNTHETIC_1.aeroplane, wing_loading_Pa: 800, mean_chord_m: 1.5, lift_slope_per_rad: 4.8, ...over },
});
const velocities = (levels: readonly [number, number][]) => ({
  as: 'gust_velocity',
  per: 'hour',
  levels: levels.map(([velocity_m_per_s, times]) => ({ velocity_m_per_s, times })),
  from: MADE_UP,
});
const FAST = { speed_m_per_s: 50 };
const GUSTS = velocities([
  [5, 3],
  [10, 0.1],
]);
const line = (...points: readonly [number, number][]) => ({
  place: {
    name: 'p',
    stress: {
      as: 'line',
      points: points.map(([load_factor, stress_MPa]) => ({ load_factor, stress_MPa })),
      ground_at_1g_MPa: -5,
      from: MADE_UP,
    },
  },
});
const segment = (share_of_time: number) => ({
  share_of_time,
  zero_crossings_per_s: 1,
  response_g_per_m_per_s: 0.08,
  p1: 1,
  b1_m_per_s: 0.8,
  p2: 0,
  b2_m_per_s: 1,
});
const row = (use: string, low_h: number, high_h: number) => ({ use, low_h, high_h });

describe('U15 refused, with the place in the document', () => {
  it.each<[string, unknown, RegExp, string]>([
    [
      'usage.use-unknown',
      { ...SYNTHETIC_1, reference_use: 'tow' },
      /reference_use is "tow"/,
      'reference use without loads',
    ],
    [
      'usage.use-twice',
      { ...SYNTHETIC_1, uses: [SYNTHETIC_1.uses[0], SYNTHETIC_1.uses[0]] },
      /uses names "private" twice/,
      'one use twice',
    ],
    [
      'usage.use-twice',
      { ...SYNTHETIC_1, hours: { by_use: [row('tow', 1, 2), row('tow', 3, 4)] } },
      /hours\.by_use names "tow" twice/,
      'hours of a use twice',
    ],
    [
      'usage.figure-missing',
      of(table({ per: 'nautical_mile' })),
      /load 1 \(gust\) of use private has no speed_m_per_s/,
      'per mile without speed',
    ],
    ['usage.figure-missing', of(GUSTS, {}, aeroplane({})), /has no speed_m_per_s/, 'gust velocity without speed'],
    [
      'usage.figure-missing',
      of(GUSTS, FAST, aeroplane({ wing_loading_Pa: undefined })),
      /aeroplane has no wing_loading_Pa/,
      'without wing loading',
    ],
    [
      'usage.figure-missing',
      of(GUSTS, FAST, aeroplane({ mean_chord_m: undefined })),
      /aeroplane has no mean_chord_m/,
      'without chord',
    ],
    [
      'usage.figure-missing',
      of(GUSTS, FAST, aeroplane({ lift_slope_per_rad: undefined })),
      /aeroplane has no lift_slope_per_rad/,
      'without slope',
    ],
    [
      'usage.limit-missing',
      of(table({ load: 'taxi', measure: 'share_of_limit' })),
      /load 1 \(taxi\) of use private/,
      'taxi in shares',
    ],
    [
      'usage.limit-missing',
      of(table({ load: 'landing', measure: 'share_of_limit' })),
      /load 1 \(landing\)/,
      'landing in shares',
    ],
    [
      'usage.levels-missing',
      of(table({ up: undefined })),
      /uses\.0\.loads\.0 neither up nor down/,
      'neither up nor down',
    ],
    [
      'usage.not-monotone',
      of(
        table({
          up: [
            { at: 0.5, times: 8 },
            { at: 1, times: 9 },
          ],
        }),
      ),
      /uses\.0\.loads\.0\.up\.1 9 times follow 8/,
      'times that rise',
    ],
    [
      'usage.not-monotone',
      of(
        table({
          down: [
            { at: 1, times: 8 },
            { at: 1, times: 7 },
          ],
        }),
      ),
      /down\.1 the level 1 follows 1/,
      'a level twice',
    ],
    [
      'usage.not-monotone',
      of(
        velocities([
          [10, 3],
          [5, 1],
        ]),
        FAST,
        aeroplane({}),
      ),
      /levels\.1 the level 5 follows 10/,
      'velocities that fall',
    ],
    [
      'usage.not-monotone',
      of(table(), {}, line([0, 0], [2, 90], [2, 95])),
      /place\.stress\.points\.2/,
      'a line that turns back',
    ],
    [
      'usage.time-over',
      of({ as: 'turbulence', segments: [segment(0.6), segment(0.5)], to: 2, from: MADE_UP }),
      /segments the shares of time add up to 1\.1/,
      'more than all the time',
    ],
    [
      'usage.no-cycles',
      of(
        table({
          up: [
            { at: 0.5, times: 0 },
            { at: 1, times: 0 },
          ],
        }),
      ),
      /uses\.0\.loads every level is met 0 times/,
      'nothing happens',
    ],
    [
      'usage.line-unfit',
      of(table(), {}, line([0, 0], [1.9, 90])),
      /load factors from 1 to 2 occur; the line of stress runs from 0 to 1\.9/,
      'a line too short upward',
    ],
    [
      'usage.line-unfit',
      of(
        table({
          down: [
            { at: 0.5, times: 8 },
            { at: 1.5, times: 0 },
          ],
        }),
        {},
        line([0, 0], [2, 90]),
      ),
      /from -0\.5 to 2 occur/,
      'a line too short downward',
    ],
    [
      'usage.line-unfit',
      of(table(), {}, line([0, 0], [1, 60], [1.5, 120], [3, 90])),
      /points\.3 the stress turns, from 120 to 90 MPa/,
      'a line that turns: its top lies inside a cycle',
    ],
    [
      'usage.no-cycles',
      of(
        table({ load: 'taxi' }),
        {},
        {
          place: {
            name: 'p',
            stress: { as: 'per_g', at_1g_MPa: 43, ground_at_1g_MPa: 43, ground_per_g_MPa: 0, from: MADE_UP },
          },
        },
      ),
      /uses\.0\.loads no cycle pulls at the place/,
      'loads that leave the stress as it is',
    ],
    ['usage.line-unfit', of(table(), {}, line([1.5, 20], [3, 90])), /runs from 1\.5 to 3 g/, 'a line without 1 g'],
    [
      'usage.line-unfit',
      of(table(), {}, line([0, 20], [2, -90])),
      /stress at 1 g in flight is -35 MPa/,
      'a place that is pressed in flight',
    ],
    [
      'usage.curve-unknown',
      { ...SYNTHETIC_1, life: { ...SYNTHETIC_1.life, curve: { library: 'unobtainium' } } },
      /life\.curve\.library "unobtainium"/,
      'a curve that is not held',
    ],
    [
      'usage.sequence-too-long',
      of(
        table({
          up: [
            { at: 0.5, times: 800 },
            { at: 1, times: 2 },
          ],
        }),
        {},
        { sequence: { seed: 1, flights: 100_000 } },
      ),
      /uses\.0: 100000 flights of about 800 events/,
      'a sequence too long',
    ],
    [
      'foundation.bounds-reversed',
      { ...SYNTHETIC_1, hours: { by_use: [row('tow', 5, 2)] } },
      /hours\.by_use\.0 \(tow\) from 5 to 2 h/,
      'hours reversed',
    ],
    [
      'foundation.bounds-reversed',
      { ...SYNTHETIC_1, hours: { by_use: [row('tow', 1, 2)], total: { low_h: 2, high_h: 1 } } },
      /hours\.total from 2 to 1 h/,
      'total reversed',
    ],
    [
      'foundation.two-units',
      {
        ...SYNTHETIC_1,
        place: {
          name: 'p',
          stress: { as: 'per_g', at_1g_ksi: 9, at_1g_MPa: 62, ground_at_1g_MPa: -20, from: MADE_UP },
        },
      },
      /"at_1g_ksi" beside/,
      'one figure in two units',
    ],
    ['foundation.document-invalid', of(table({ up: [] })), /uses\.0\.loads\.0\.up/, 'no levels'],
    [
      'foundation.document-invalid',
      of(
        table({
          up: [
            { at: -1, times: 3 },
            { at: 1, times: 2 },
          ],
        }),
      ),
      /up\.0\.at/,
      'a level below 0',
    ],
    [
      'foundation.document-invalid',
      of(
        table({
          up: [
            { at: Number.NaN, times: 3 },
            { at: 1, times: 2 },
          ],
        }),
      ),
      /up\.0\.at/,
      'no number',
    ],
    ['foundation.document-invalid', { ...SYNTHETIC_1, colour: 'red' }, /colour/, 'an unknown field'],
    ['foundation.document-invalid', null, /the document/, 'no document'],
  ])('%s (%#)', (code, input, words) => {
    let said: unknown;
    try {
      readUsage(input);
    } catch (e) {
      said = e;
    }
    expect(said).toMatchObject({ code, message: expect.stringMatching(words) });
  });
  it('a use that the document does not hold', () => {
    const d = changed();
    const asks = [
      () => curvesOf(d, 'tow'),
      () => spectrumOf(d, 'tow'),
      () => sequenceOf(d, 'tow', { seed: 1, flights: 1 }),
    ];
    for (const ask of asks) expect(ask).toThrow(/the use asked for is "tow"/);
  });
});

describe('read', () => {
  it('inch, ksi, knots and feet become engine units', () => {
    const d = changed({
      life: {
        ...SYNTHETIC_1.life,
        curve: { name: 'own', a1: 9, a2: -3, a3: 0.6, a4_ksi: 10, stress_concentration: 2, from: MADE_UP },
      },
    });
    expect(d.life.curve).toMatchObject({ a4_MPa: expect.closeTo(68.94757, 4) });
    expect(d.place.stress).toMatchObject({ at_1g_MPa: expect.closeTo(62.05281, 4) });
  });
});
