import { describe, expect, it } from 'vitest';
import { KG_PER_M3_PER_SLUG_PER_FT3, M_PER_S_PER_KNOT, METRES_PER_FOOT, PA_PER_PSF } from '../foundation/convert.ts';
import { curvesOf, milesPerHour } from './curves.ts';
import { gustResponse } from './gust.ts';
import { changed, loaded, MADE_UP } from './testing/documents.ts';
import { TURBULENCE_BY_ALTITUDE, turbulencePerHour } from './turbulence.ts';

const AEROPLANE = { wing_loading_Pa: 17 * PA_PER_PSF, mean_chord_m: 5 * METRES_PER_FOOT, lift_slope_per_rad: 4.8 };
const DENSITY = 0.002377 * KG_PER_M3_PER_SLUG_PER_FT3;

/**
 * G1, G2: wing loading 17 psf, chord 5 ft, slope 4.8, 0.002377 slug/ft³. The formula is 14 CFR 23.341(c) as read; the
 * figures were computed from it apart from this program (32.174 ft/s²), to the last printed place.
 */
describe('U2 discrete gust formula', () => {
  it('G1 mass ratio 18.5239, alleviation 0.684231', () => {
    const r = gustResponse(AEROPLANE, 50, DENSITY);
    expect(Math.abs(r.mu - 18.5239)).toBeLessThanOrEqual(2e-4);
    expect(Math.abs(r.alleviation - 0.684231)).toBeLessThanOrEqual(2e-6);
  });
  it.each([
    [120, 50, 2.32764],
    [120, 30, 1.39659],
    [150, 25, 1.45478],
  ])('G2 %i kt, %i ft/s: %d', (knots, gust, printed) => {
    const { perVelocity } = gustResponse(AEROPLANE, knots * M_PER_S_PER_KNOT, DENSITY);
    expect(Math.abs(perVelocity * gust * METRES_PER_FOOT - printed)).toBeLessThanOrEqual(1e-5);
  });
  it('turns levels of gust velocity into load factor, as often up as down', () => {
    const d = changed({
      aeroplane: { name: 'a', limit_up: 3.8, limit_down: -1.5, from: MADE_UP, ...AEROPLANE },
      uses: [
        {
          use: 'private',
          flight_h: 1,
          speed_kt: 120,
          density_slug_per_ft3: 0.002377,
          loads: [
            {
              as: 'gust_velocity',
              per: 'hour',
              levels: [
                { velocity_ft_per_s: 30, times: 3 },
                { velocity_ft_per_s: 50, times: 0.2 },
              ],
              from: MADE_UP,
            },
          ],
        },
      ],
    });
    const [c] = curvesOf(d, 'private');
    expect(c!.up!.from).toBeCloseTo(1.39659, 5);
    expect(c!.down!.to).toBeCloseTo(2.32764, 5);
    expect(c!.perHour('up', c!.up!.from)).toBe(3);
    expect(c!.perHour('down', c!.up!.to)).toBeCloseTo(0.2, 12);
    expect(c!.perHour('up', c!.up!.to * 1.001)).toBe(0);
  });
});

/** G5: the form is 14 CFR 25 appendix G as read; P and b of the heights from memory; figures computed apart from this program. */
describe('U3 continuous turbulence', () => {
  it.each([
    [5, 0.138272],
    [10, 0.0192974],
    [20, 4.40859e-4],
    [30, 1.94433e-5],
  ])('y/A %i ft/s: %d', (y, printed) => {
    const { p1, b1_m_per_s, p2, b2_m_per_s } = TURBULENCE_BY_ALTITUDE[1]!;
    const s = {
      share_of_time: 1,
      zero_crossings_per_s: 1 / 3600,
      response_g_per_m_per_s: 0.1,
      p1,
      b1_m_per_s,
      p2,
      b2_m_per_s,
    };
    const n = turbulencePerHour([s], y * METRES_PER_FOOT * 0.1);
    expect(Math.abs(n - printed) / printed).toBeLessThanOrEqual(4e-6);
  });
  it('sums segments by their share of time, and is followed by levels within 0.1 %', () => {
    const segment = (share_of_time: number, response_g_per_m_per_s: number) => ({
      share_of_time,
      zero_crossings_per_s: 1.3,
      response_g_per_m_per_s,
      p1: 1,
      b1_m_per_s: 0.77,
      p2: 0.005,
      b2_m_per_s: 1.54,
    });
    const segments = [segment(0.25, 0.05), segment(0.5, 0.09)];
    const [c] = curvesOf(loaded([{ as: 'turbulence', segments, to: 2, from: MADE_UP }]), 'private');
    const alone = (s: (typeof segments)[number]) => turbulencePerHour([{ ...s, share_of_time: 1 }], 0.4);
    expect(c!.perHour('down', 0.4)).toBeCloseTo(0.25 * alone(segments[0]!) + 0.5 * alone(segments[1]!), 9);
    const l = c!.levels.up!;
    for (let i = 1; i < l.at.length; i++) {
      const exact = turbulencePerHour(segments, (l.at[i]! + l.at[i - 1]!) / 2);
      expect(Math.abs(Math.sqrt(l.times[i]! * l.times[i - 1]!) / exact - 1)).toBeLessThan(1e-3);
    }
  });
});

const table = (per: string, more: object = {}) => ({
  as: 'table',
  load: 'gust',
  measure: 'increment',
  per,
  up: [
    { at: 0.5, times: 8 },
    { at: 1, times: 2 },
  ],
  from: MADE_UP,
  ...more,
});
const first = (load: object, more: object = {}) => curvesOf(loaded([load], more), 'private')[0]!;

describe('U1 tables', () => {
  it('log-linear between levels, nothing beyond the last', () => {
    const c = first(table('hour'));
    expect(c.perHour('up', 0.75)).toBeCloseTo(4, 12);
    expect([c.perHour('up', 0.1), c.perHour('up', 1), c.perHour('up', 1.01), c.perHour('down', 0.5)]).toEqual([
      8, 2, 0, 0,
    ]);
  });
  it('straight to a level that is never passed', () => {
    const c = first(
      table('hour', {
        up: [
          { at: 0.5, times: 8 },
          { at: 1, times: 0 },
        ],
      }),
    );
    expect(c.perHour('up', 0.75)).toBeCloseTo(4, 12);
  });
  it('per flight and per landing', () => {
    expect(first(table('flight'), { flight_h: 0.25 }).perHour('up', 0.5)).toBe(32);
    expect(first(table('landing'), { flight_h: 0.5, landings_per_flight: 3 }).perHour('up', 0.5)).toBe(48);
    expect(first(table('landing'), { flight_h: 0.5 }).perHour('up', 0.5)).toBe(16);
  });
  it('per nautical mile through the air: thinner air makes more of them', () => {
    expect(first(table('nautical_mile'), { speed_m_per_s: 46.3 }).perHour('up', 0.5)).toBeCloseTo(720, 9);
    const use = { speed_m_per_s: 60, density_kg_per_m3: 1.225 / 1.44 } as never;
    expect(milesPerHour(use)).toBeCloseTo((60 / M_PER_S_PER_KNOT) * 1.2, 9);
  });
  it('shares of the limit: manoeuvre each way of its own, gust of the gust limit', () => {
    const both = {
      measure: 'share_of_limit',
      up: [
        { at: 0.5, times: 8 },
        { at: 1, times: 2 },
      ],
      down: [
        { at: 0.5, times: 8 },
        { at: 1, times: 2 },
      ],
    };
    const m = first(table('hour', { ...both, load: 'manoeuvre' }));
    expect([m.up!.to, m.down!.to]).toEqual([2.8, 2.52]);
    const g = first(table('hour', both));
    expect([g.up!.to, g.down!.to]).toEqual([2.8, 2.8]);
    const own = changed({
      aeroplane: { name: 'a', limit_up: 3.8, limit_down: -1.5, gust_limit_increment: 3.1, from: MADE_UP },
      uses: [{ use: 'private', flight_h: 1, loads: [table('hour', both)] }],
    });
    expect(curvesOf(own, 'private')[0]!.up!.to).toBe(3.1);
  });
  it('an exponential is its equation, to its last level', () => {
    const c = first({
      as: 'exponential',
      load: 'manoeuvre',
      measure: 'share_of_limit',
      per: 'hour',
      down: { times: 40, scale: 0.1, to: 0.5 },
      from: MADE_UP,
    });
    expect(c.perHour('down', 0.25 * 2.52)).toBeCloseTo(40 * Math.exp(-2.5), 12);
    expect(c.perHour('down', 0.51 * 2.52)).toBe(0);
    expect(c.up).toBe(null);
  });
});
