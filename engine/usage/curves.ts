import { M_PER_S_PER_KNOT } from '../foundation/convert.ts';
import type { Exceedances, UsageDocument, UseLoads } from './document.ts';
import { gustResponse, SEA_LEVEL_DENSITY } from './gust.ts';
import { firstOf, type Levels, lastOf, timesAt } from './levels.ts';
import { limitIncrement } from './limits.ts';
import type { ExceedanceCurve } from './model.ts';
import { loadsOf, missing } from './refusals.ts';
import { turbulencePerHour } from './turbulence.ts';

/** An exceedance curve with the levels behind it. */
export interface LevelCurve extends ExceedanceCurve {
  readonly levels: { readonly up: Levels | null; readonly down: Levels | null };
}

/** Nautical miles an hour through the air. Tables count still-air distance, so that thinner air makes more of them. */
export const milesPerHour = (use: UseLoads): number =>
  (use.speed_m_per_s! / M_PER_S_PER_KNOT) * Math.sqrt(SEA_LEVEL_DENSITY / (use.density_kg_per_m3 ?? SEA_LEVEL_DENSITY));

/** How many of what a table counts by there are in an hour. */
function perHour(per: 'hour' | 'nautical_mile' | 'flight' | 'landing', use: UseLoads, place: string): number {
  if (per === 'hour') return 1;
  if (per === 'flight') return 1 / use.flight_h;
  if (per === 'landing') return (use.landings_per_flight ?? 1) / use.flight_h;
  if (use.speed_m_per_s === undefined) throw missing(place, 'speed_m_per_s', 'a table per nautical mile');
  return milesPerHour(use);
}

/** Times an hour below which nothing happens in the life of any fleet: taken as never. */
const NEVER = 1e-18;
const levelsOf = (rows: readonly (readonly [at: number, times: number])[]): Levels => ({
  at: Float64Array.from(rows, ([at]) => at),
  times: Float64Array.from(rows, ([, times]) => (times < NEVER ? 0 : times)),
});
const whole = (l: Levels | null): Levels | null => (l && l.times[0]! > 0 ? l : null);

function made(
  load: ExceedanceCurve['load'],
  up: Levels | null,
  down: Levels | null,
  from: ExceedanceCurve['from'],
  exact?: (increment: number) => number,
): LevelCurve {
  const levels = { up: whole(up), down: whole(down) };
  const span = (l: Levels | null) => l && { from: firstOf(l), to: lastOf(l) };
  return {
    load,
    ground: load === 'taxi' || load === 'landing',
    perHour: (direction, increment) => {
      const l = levels[direction];
      if (!l) return 0;
      return exact && increment <= lastOf(l) ? exact(Math.max(0, increment)) : timesAt(l, increment);
    },
    up: span(levels.up),
    down: span(levels.down),
    from,
    levels,
  };
}

/** Share of the shortest scale that one level is from the next, so that a sum of exponentials is followed within 0.1 %. */
const FINE = 0.15;
const MOST_LEVELS = 4000;
function turbulenceLevels(e: Extract<Exceedances, { as: 'turbulence' }>): Levels {
  const scales = e.segments.map((s) => Math.min(s.b1_m_per_s, s.b2_m_per_s) * s.response_g_per_m_per_s);
  const longest = Math.max(...e.segments.map((s) => Math.max(s.b1_m_per_s, s.b2_m_per_s) * s.response_g_per_m_per_s));
  const all = turbulencePerHour(e.segments, 0);
  const to = Math.min(e.to, longest * Math.max(1, Math.log(all) - Math.log(NEVER)));
  const n = Math.min(MOST_LEVELS, Math.max(60, Math.ceil(to / (FINE * Math.min(...scales)))));
  const rows = Array.from({ length: n + 1 }, (_, i) => {
    const x = (to * i) / n;
    return [x, turbulencePerHour(e.segments, x)] as const;
  });
  return levelsOf(rows.filter(([, times], i) => i < 2 || times >= NEVER));
}

function curveOf(e: Exceedances, use: UseLoads, document: UsageDocument, place: string): LevelCurve {
  if (e.as === 'turbulence') {
    const l = turbulenceLevels(e);
    return made('gust', l, l, e.from, (x) => turbulencePerHour(e.segments, x));
  }
  const rate = perHour(e.per, use, `${place} of use ${use.use}`);
  if (e.as === 'gust_velocity') {
    const { wing_loading_Pa, mean_chord_m, lift_slope_per_rad } = document.aeroplane;
    const wanted = 'gust velocities';
    if (use.speed_m_per_s === undefined) throw missing(`${place} of use ${use.use}`, 'speed_m_per_s', wanted);
    if (wing_loading_Pa === undefined) throw missing('aeroplane', 'wing_loading_Pa', wanted);
    if (mean_chord_m === undefined) throw missing('aeroplane', 'mean_chord_m', wanted);
    if (lift_slope_per_rad === undefined) throw missing('aeroplane', 'lift_slope_per_rad', wanted);
    const { perVelocity } = gustResponse(
      { wing_loading_Pa, mean_chord_m, lift_slope_per_rad },
      use.speed_m_per_s,
      use.density_kg_per_m3 ?? SEA_LEVEL_DENSITY,
    );
    const l = levelsOf(e.levels.map((v) => [v.velocity_m_per_s * perVelocity, v.times * rate] as const));
    return made('gust', l, l, e.from);
  }
  const g = (direction: 'up' | 'down') =>
    e.measure === 'increment' ? 1 : limitIncrement(document.aeroplane, e.load, direction, `${place} of use ${use.use}`);
  const one = (direction: 'up' | 'down'): Levels | null => {
    if (e.as === 'table') {
      const rows = e[direction];
      return rows ? levelsOf(rows.map((r) => [r.at * g(direction), r.times * rate] as const)) : null;
    }
    const form = e[direction];
    if (!form) return null;
    const { scale } = form;
    const times = form.times * rate;
    if (times < NEVER) return null;
    const to = Math.min(form.to, scale * (Math.log(times) - Math.log(NEVER)));
    return to > 0
      ? levelsOf([
          [0, times],
          [to * g(direction), Math.max(NEVER, times * Math.exp(-to / scale))],
        ])
      : null;
  };
  return made(e.load, one('up'), one('down'), e.from);
}

/**
 * How often each level of load factor is passed in a use, one curve per load of the document.
 *
 * Tables are taken log-linear between their levels, exponentials and turbulence by their equations, gust velocities
 * through the discrete gust formula. Counts per nautical mile, flight and landing become counts per hour.
 *
 * Not valid beyond the last level: nothing is counted there.
 *
 * @param use word of a use of the document
 * @returns increments up and down in g, times per hour
 * @throws Refusal `usage.use-unknown`, `usage.figure-missing`, `usage.limit-missing`
 * @see 14 CFR 23.341(c) before amendment 64; 14 CFR 25 appendix G
 */
export function curvesOf(document: UsageDocument, use: string): LevelCurve[] {
  const u = loadsOf(document, use);
  return u.loads.map((e, i) =>
    curveOf(e, u, document, `load ${i + 1} (${e.as === 'table' || e.as === 'exponential' ? e.load : 'gust'})`),
  );
}
