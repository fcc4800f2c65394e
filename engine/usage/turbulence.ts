import { METRES_PER_FOOT, SECONDS_PER_HOUR } from '../foundation/convert.ts';
import type { Exceedances } from './document.ts';
import { MISSION_TURBULENCE } from './sources.ts';

type Segment = Extract<Exceedances, { as: 'turbulence' }>['segments'][number];

const row = (heights: string, p1: number, b1_fps: number, p2: number, b2_fps: number) => ({
  heights,
  p1,
  b1_m_per_s: b1_fps * METRES_PER_FOOT,
  p2,
  b2_m_per_s: b2_fps * METRES_PER_FOOT,
  from: MISSION_TURBULENCE,
});
/** Turbulence field parameters by height. From memory: they may start a document, and decide nothing. */
export const TURBULENCE_BY_ALTITUDE = [
  row('low-level contour, 0 to 1000 ft', 1, 2.7, 1e-5, 10.65),
  row('0 to 1000 ft', 1, 2.51, 0.005, 5.04),
  row('1000 to 2500 ft', 0.42, 3.02, 0.0033, 5.94),
  row('2500 to 5000 ft', 0.3, 3.42, 0.002, 8.17),
  row('5000 to 10 000 ft', 0.15, 3.59, 0.00095, 9.22),
  row('10 000 to 20 000 ft', 0.062, 3.27, 0.00028, 10.52),
  row('20 000 to 30 000 ft', 0.025, 3.15, 0.00011, 11.88),
  row('30 000 to 40 000 ft', 0.011, 2.93, 0.000095, 9.84),
] as const;

/**
 * Times per hour that a gust increment is passed, each way.
 *
 * N(y) = Σ t N0 [P1 exp(−y / (b1 A)) + P2 exp(−y / (b2 A))].
 *
 * Not valid for single gusts of short duration, and no better than A and N0.
 *
 * @param increment g, 0 or more
 * @see 14 CFR 25 appendix G
 */
export const turbulencePerHour = (segments: readonly Segment[], increment: number): number =>
  segments.reduce((sum, s) => {
    const y = increment / s.response_g_per_m_per_s;
    const n = s.p1 * Math.exp(-y / s.b1_m_per_s) + s.p2 * Math.exp(-y / s.b2_m_per_s);
    return sum + s.share_of_time * s.zero_crossings_per_s * SECONDS_PER_HOUR * n;
  }, 0);
