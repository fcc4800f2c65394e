import type { usage } from '../../engine/index.ts';

/**
 * How the invented four-seater is loaded in the uses that its fleet flies, and what stress that makes at the first
 * fastener hole of the lower spar cap. Every table and figure is made up and resembles no real type.
 */
type Loads = usage.UsageInput['uses'][number]['loads'];
const madeUp = (place: string) => ({ source: 'Invented for demonstration', place, known: 'invented' }) as const;
const levels = (...rows: readonly (readonly [at: number, times: number])[]) =>
  rows.map(([at, times]) => ({ at, times }));

const gusts = (harder: number): Loads[number] => ({
  as: 'gust_velocity',
  per: 'nautical_mile',
  levels: [
    [1.5, 1.2],
    [3, 0.09],
    [4.5, 0.011],
    [6, 0.0016],
    [7.5, 0.00026],
    [9, 0.000045],
    [12, 0.0000015],
  ].map(([velocity_m_per_s = 0, times = 0]) => ({ velocity_m_per_s, times: times * harder })),
  from: madeUp('gusts met per nautical mile'),
});
const manoeuvres = (times: number, scale: number): Loads[number] => ({
  as: 'exponential',
  load: 'manoeuvre',
  measure: 'share_of_limit',
  per: 'hour',
  up: { times, scale, to: 1 },
  down: { times: times / 8, scale: scale * 0.7, to: 0.6 },
  from: madeUp('manoeuvres per hour'),
});
const rough = levels([0.1, 55], [0.2, 11], [0.3, 1.8], [0.4, 0.26], [0.5, 0.035], [0.6, 0.0045]);
const taxi: Loads[number] = {
  as: 'table',
  load: 'taxi',
  measure: 'increment',
  per: 'flight',
  up: rough,
  down: rough,
  from: madeUp('taxying on grass'),
};
const touchdowns: Loads[number] = {
  as: 'exponential',
  load: 'landing',
  measure: 'increment',
  per: 'landing',
  up: { times: 1, scale: 0.25, to: 2 },
  down: { times: 1, scale: 0.15, to: 1 },
  from: madeUp('landings'),
};

export const usageExample: usage.UsageInput = {
  sparwright: 'usage/1',
  title: 'Whimbrel W4, lower spar cap',
  subject: 'Left inboard spar of ZQ-LMB (invented)',
  day: '2026-11-25',
  invented: true,
  models: ['W4', 'W4-T'],
  aeroplane: {
    name: 'Whimbrel W4',
    limit_up: 3.8,
    limit_down: -1.52,
    wing_loading_Pa: 800,
    mean_chord_m: 1.5,
    lift_slope_per_rad: 4.8,
    from: madeUp('data sheet of the type'),
  },
  uses: [
    {
      use: 'private',
      title: 'Private flying',
      speed_m_per_s: 56,
      density_kg_per_m3: 1.1,
      flight_h: 0.9,
      landings_per_flight: 1,
      loads: [gusts(1), manoeuvres(12, 0.085), taxi, touchdowns],
    },
    {
      use: 'instruction',
      title: 'Instruction',
      speed_m_per_s: 46,
      density_kg_per_m3: 1.15,
      flight_h: 0.4,
      landings_per_flight: 1,
      loads: [gusts(1.3), manoeuvres(30, 0.085), taxi, touchdowns],
    },
    {
      use: 'tow',
      title: 'Glider towing',
      speed_m_per_s: 36,
      density_kg_per_m3: 1.18,
      flight_h: 0.2,
      landings_per_flight: 1,
      loads: [
        {
          as: 'turbulence',
          segments: [
            {
              name: 'climb and descent near the ground',
              share_of_time: 0.9,
              zero_crossings_per_s: 0.8,
              response_g_per_m_per_s: 0.09,
              p1: 1,
              b1_m_per_s: 0.77,
              p2: 0.005,
              b2_m_per_s: 1.54,
            },
          ],
          to: 2.4,
          from: madeUp('thermals over the field'),
        },
        manoeuvres(40, 0.1),
        taxi,
        touchdowns,
      ],
    },
  ],
  reference_use: 'private',
  place: {
    name: 'Lower spar cap, first fastener hole outboard of the root',
    stress: {
      as: 'per_g',
      at_1g_MPa: 43,
      per_g_MPa: 41,
      ground_at_1g_MPa: -10,
      ground_per_g_MPa: -10,
      from: madeUp('stress report of the type'),
    },
  },
  life: {
    curve: { library: '2024-t3-kt5' },
    scatter_factor: {
      value: 8,
      from: { source: 'AC 23-13A', edition: '2005', place: 'paragraph 2-26', known: 'second-hand' },
    },
  },
  sequence: { seed: 4, flights: 2000 },
  hours: {
    by_use: [
      { use: 'private', low_h: 3444.3, high_h: 3790.6 },
      { use: 'tow', low_h: 258, high_h: 604.3 },
    ],
    total: { low_h: 4048.6, high_h: 4048.6 },
  },
};
