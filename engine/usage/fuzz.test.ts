import fc from 'fast-check';
import { expect, it } from 'vitest';
import { isRefusal } from '../foundation/refusal.ts';
import { answerUsage } from './answer.ts';
import { LIFE_CURVES } from './life-curves.ts';
import { MADE_UP } from './testing/documents.ts';

/** Every figure anywhere in a value that is no finite number, by its path. */
function bad(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} ${value}`];
  if (typeof value === 'string') return /NaN|Infinity/.test(value) ? [`${path} ${value}`] : [];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([k, v]) => bad(v, `${path}.${k}`));
}

const within = (min: number, max: number) =>
  fc.oneof(fc.constant(min), fc.constant(max), { arbitrary: fc.double({ min, max, noNaN: true }), weight: 5 });
const above = (max: number) =>
  fc.oneof(fc.constant(1e-12), fc.constant(max), fc.double({ min: 1e-12, max, noNaN: true }));
const maybe = <T>(a: fc.Arbitrary<T>) => fc.option(a, { nil: undefined, freq: 12 });
/** Rising levels, each a step beyond the one before; times that fall. */
const levels = (name: string, most: number) =>
  fc.array(fc.tuple(above(most / 5), within(0, 1e9)), { minLength: 2, maxLength: 5 }).map((rows) => {
    const times = rows.map(([, t]) => t).sort((a, b) => b - a);
    let at = 0;
    return rows.map(([step], i) => {
      at += step + at * 1e-9;
      return { [name]: Math.min(most, at), times: times[i] };
    });
  });
const load = fc.constantFrom('gust', 'manoeuvre', 'taxi', 'landing');
const measure = fc.constantFrom('increment', 'increment', 'increment', 'share_of_limit');
const per = fc.constantFrom('hour', 'nautical_mile', 'flight', 'landing');
const from = fc.constant(MADE_UP);
const exponential = fc.record({ times: within(0, 1e9), scale: above(100), to: above(100) });
const loads = fc.oneof(
  fc.record({
    as: fc.constant('table'),
    load,
    measure,
    per,
    up: maybe(levels('at', 100)),
    down: maybe(levels('at', 100)),
    from,
  }),
  fc.record({
    as: fc.constant('exponential'),
    load,
    measure,
    per,
    up: maybe(exponential),
    down: maybe(exponential),
    from,
  }),
  fc.record({
    as: fc.constant('gust_velocity'),
    per: fc.constantFrom('hour', 'nautical_mile'),
    levels: levels('velocity_m_per_s', 100),
    from,
  }),
  fc.record({
    as: fc.constant('turbulence'),
    segments: fc.array(
      fc.record({
        share_of_time: within(0, 0.5),
        zero_crossings_per_s: above(100),
        response_g_per_m_per_s: above(10),
        p1: within(0, 1),
        b1_m_per_s: above(30),
        p2: within(0, 1),
        b2_m_per_s: above(30),
      }),
      { minLength: 1, maxLength: 2 },
    ),
    to: above(20),
    from,
  }),
);
const use = (name: string) =>
  fc.record({
    use: fc.constant(name),
    speed_m_per_s: maybe(above(350)),
    density_kg_per_m3: maybe(above(1.5)),
    flight_h: above(24),
    landings_per_flight: maybe(within(0, 100)),
    loads: fc.array(loads, { minLength: 1, maxLength: 3 }),
  });
const stress = fc.oneof(
  fc.record({
    as: fc.constant('per_g'),
    at_1g_MPa: above(1000),
    per_g_MPa: maybe(above(1000)),
    ground_at_1g_MPa: within(-1000, 1000),
    ground_per_g_MPa: maybe(within(-1000, 1000)),
    from,
  }),
  fc.record({ as: fc.constant('unknown'), ground_share: within(-2, 1), from }),
  fc.record({
    as: fc.constant('line'),
    points: fc
      .tuple(
        fc.uniqueArray(fc.tuple(fc.integer({ min: -19, max: 19 }), within(-2000, 2000)), {
          selector: ([n]) => n,
          maxLength: 5,
        }),
        within(-2000, 2000),
        within(-2000, 2000),
      )
      .map(([rows, a, b]): [number, number][] => [...rows, [-20, a], [20, b]])
      .map((rows) =>
        rows.sort((a, b) => a[0] - b[0]).map(([load_factor, stress_MPa]) => ({ load_factor, stress_MPa })),
      ),
    ground_at_1g_MPa: within(-1000, 1000),
    from,
  }),
);
const curve = fc.oneof(
  fc.constantFrom(...LIFE_CURVES.map((c) => ({ library: c.id }))),
  fc.record({
    name: fc.constant('own'),
    a1: within(-50, 50),
    a2: within(-30, -0.5),
    a3: within(0, 1),
    a4_MPa: within(0, 1400),
    stress_concentration: within(1, 10),
    from,
  }),
);
const bounded = fc
  .tuple(within(0, 1e5), within(0, 1e5))
  .map(([a, b]) => ({ low_h: Math.min(a, b), high_h: Math.max(a, b) }));
const document = fc.record({
  sparwright: fc.constant('usage/1'),
  title: fc.constant('anything'),
  aeroplane: fc.record({
    name: fc.constant('a'),
    limit_up: within(1.5, 15),
    limit_down: within(-10, 0.9),
    gust_limit_increment: maybe(above(14)),
    wing_loading_Pa: maybe(above(20_000)),
    mean_chord_m: maybe(above(20)),
    lift_slope_per_rad: maybe(above(10)),
    from,
  }),
  uses: fc.tuple(use('private'), use('tow')),
  reference_use: fc.constantFrom('private', 'tow'),
  place: fc.record({ name: fc.constant('p'), stress }),
  life: fc.record({ curve, scatter_factor: fc.record({ value: within(1, 100), from }) }),
  sequence: maybe(fc.record({ seed: fc.nat(), flights: fc.integer({ min: 1, max: 20 }) })),
  hours: maybe(
    fc.record({
      by_use: fc.tuple(bounded, bounded).map(([a, b]) => [
        { use: 'private', ...a },
        { use: 'drop', ...b },
      ]),
      total: maybe(bounded),
    }),
  ),
});

it('any document is answered in finite figures or refused in words', () => {
  let answered = 0;
  fc.assert(
    fc.property(document, (d) => {
      try {
        const { value, working, warnings } = answerUsage(d);
        answered++;
        expect(bad(value)).toEqual([]);
        expect(bad(working)).toEqual([]);
        expect(bad(warnings)).toEqual([]);
        expect(value.uses.find((u) => u.use === value.reference)!.ratio).toBe(1);
        for (const u of value.uses) expect(u.ratio).toBeGreaterThanOrEqual(u.ratioAcross.low);
      } catch (e) {
        if (!isRefusal(e)) throw e;
        expect(bad(e.message)).toEqual([]);
      }
    }),
    { numRuns: 2000 },
  );
  expect(answered).toBeGreaterThan(15);
});
