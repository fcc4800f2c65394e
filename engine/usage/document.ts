import { z } from 'zod';
import { zDay, zProvenance } from '../foundation/document.ts';

/**
 * The usage document, `usage/1`: how each use loads the wing, what stress that makes at a named place, how the place
 * tires, and the hours flown per use. Fields end in their unit; those in `inEngineUnits` may be given in inch, knot,
 * ksi and so on instead.
 */
const zName = z.string().trim().min(1).max(200);
export const zUse = z.string().regex(/^[a-z][a-z0-9_]{0,39}$/, 'must be a short word of small letters, digits and _');
const zRate = z.number().min(0).max(1e9);

/** What loads the wing. The ground-air-ground cycle comes from the flight itself, once per flight. */
export const LOADS = ['gust', 'manoeuvre', 'taxi', 'landing'] as const;
const zLoad = z.enum(LOADS);

/** Increments of load factor, up or down: how often a level is passed. Levels rise, occurrences fall. */
const zLevels = z
  .array(z.strictObject({ at: z.number().positive().max(100), times: zRate }))
  .min(2)
  .max(2000);
/**
 * What `at` means: the increment of load factor itself (g), or its share of the limit increment. Taxi and landing
 * increments are of the ground load factor.
 */
const zMeasure = z.enum(['increment', 'share_of_limit']);
const zPer = z.enum(['hour', 'nautical_mile', 'flight', 'landing']);

export const zExceedances = z.discriminatedUnion('as', [
  /** A table as published or counted; between its levels log-linear, beyond its last level nothing. */
  z.strictObject({
    as: z.literal('table'),
    load: zLoad,
    measure: zMeasure,
    per: zPer,
    up: zLevels.optional(),
    down: zLevels.optional(),
    from: zProvenance,
  }),
  /** times · exp(−at / scale), both ways or each its own. `to` is the largest level that is counted. */
  z.strictObject({
    as: z.literal('exponential'),
    load: zLoad,
    measure: zMeasure,
    per: zPer,
    up: z
      .strictObject({ times: zRate, scale: z.number().positive().max(100), to: z.number().positive().max(100) })
      .optional(),
    down: z
      .strictObject({ times: zRate, scale: z.number().positive().max(100), to: z.number().positive().max(100) })
      .optional(),
    from: zProvenance,
  }),
  /** Derived gust velocities against distance, turned into load factor by the discrete gust formula. Up and down alike. */
  z.strictObject({
    as: z.literal('gust_velocity'),
    per: z.enum(['hour', 'nautical_mile']),
    levels: z
      .array(z.strictObject({ velocity_m_per_s: z.number().positive().max(100), times: zRate }))
      .min(2)
      .max(2000),
    from: zProvenance,
  }),
  /** Continuous turbulence: t · N0 · [P1 exp(−y/(b1 A)) + P2 exp(−y/(b2 A))] summed over segments. Up and down alike. */
  z.strictObject({
    as: z.literal('turbulence'),
    segments: z
      .array(
        z.strictObject({
          name: zName.optional(),
          share_of_time: z.number().min(0).max(1),
          zero_crossings_per_s: z.number().positive().max(100),
          /** A: root mean square load factor per root mean square gust velocity. */
          response_g_per_m_per_s: z.number().positive().max(10),
          p1: z.number().min(0).max(1),
          b1_m_per_s: z.number().positive().max(30),
          p2: z.number().min(0).max(1),
          b2_m_per_s: z.number().positive().max(30),
        }),
      )
      .min(1)
      .max(100),
    /** Largest increment that is counted, g. */
    to: z.number().positive().max(20),
    from: zProvenance,
  }),
]);
export type Exceedances = z.output<typeof zExceedances>;

export const zUseLoads = z.strictObject({
  use: zUse,
  title: zName.optional(),
  /** Equivalent airspeed at which it is flown; wanted by tables per nautical mile and by gust velocities. */
  speed_m_per_s: z.number().positive().max(350).optional(),
  density_kg_per_m3: z.number().positive().max(1.5).optional(),
  flight_h: z.number().positive().max(24),
  landings_per_flight: z.number().min(0).max(100).optional(),
  loads: z.array(zExceedances).min(1).max(20),
});

export const zAeroplane = z.strictObject({
  name: zName,
  /** Limit load factors in flight, up (> 1) and down (< 1). */
  limit_up: z.number().min(1.5).max(15),
  limit_down: z.number().min(-10).max(0.9),
  /** Limit increment in gusts, g, up and down alike; absent: that of `limit_up`. For gust tables in shares of the limit. */
  gust_limit_increment: z.number().positive().max(14).optional(),
  wing_loading_Pa: z.number().positive().max(20_000).optional(),
  mean_chord_m: z.number().positive().max(20).optional(),
  lift_slope_per_rad: z.number().positive().max(10).optional(),
  from: zProvenance,
});

/**
 * Stress at a place from load factor, gross section unless the place says otherwise. On the ground it is
 * ground_at_1g + ground_per_g · (n − 1); absent, ground_per_g is ground_at_1g.
 */
export const zStress = z.discriminatedUnion('as', [
  z.strictObject({
    as: z.literal('per_g'),
    at_1g_MPa: z.number().positive().max(1000),
    /** Stress per g where it differs from the stress at 1 g: the wing's own weight relieves it. */
    per_g_MPa: z.number().positive().max(1000).optional(),
    ground_at_1g_MPa: z.number().min(-1000).max(1000),
    ground_per_g_MPa: z.number().min(-1000).max(1000).optional(),
    from: zProvenance,
  }),
  /** A full line; between its points straight, beyond its ends refused. */
  z.strictObject({
    as: z.literal('line'),
    points: z
      .array(z.strictObject({ load_factor: z.number().min(-20).max(20), stress_MPa: z.number().min(-2000).max(2000) }))
      .min(2)
      .max(500),
    ground_at_1g_MPa: z.number().min(-1000).max(1000),
    ground_per_g_MPa: z.number().min(-1000).max(1000).optional(),
    from: zProvenance,
  }),
  /** No stress per g with a source: shapes only. Ground stress as a share of the stress at 1 g in flight. */
  z.strictObject({ as: z.literal('unknown'), ground_share: z.number().min(-2).max(1), from: zProvenance }),
]);

export const zPlace = z.strictObject({
  name: zName,
  stress: zStress,
});

/** log10 N = a1 + a2 log10(Seq − a4), Seq = Smax (1 − R)^a3, stresses in ksi as the handbook prints it. */
export const zLifeCurve = z.union([
  z.strictObject({ library: z.string().regex(/^[a-z0-9-]+$/) }),
  z.strictObject({
    name: zName,
    a1: z.number().min(-50).max(50),
    a2: z.number().min(-30).max(-0.5),
    a3: z.number().min(0).max(1),
    /** As `a4_ksi` where it is copied from the handbook. */
    a4_MPa: z.number().min(0).max(1400),
    stress_concentration: z.number().min(1).max(10),
    from: zProvenance,
  }),
]);

export const zUsageDocument = z.strictObject({
  sparwright: z.literal('usage/1'),
  title: zName,
  subject: zName.optional(),
  day: zDay.optional(),
  invented: z.boolean().optional().meta({ description: 'Made up for demonstration; shown wherever it appears' }),
  /** Models of aircraft that it was made for. */
  models: z.array(zName).max(50).optional(),
  /** The kind of part that the place lies in, as the record names it: inboard_spar, wing. */
  part: zUse.optional(),
  aeroplane: zAeroplane,
  uses: z.array(zUseLoads).min(1).max(30),
  /** The use that one hour is measured by. */
  reference_use: zUse,
  place: zPlace,
  life: z.strictObject({
    curve: zLifeCurve,
    scatter_factor: z.strictObject({ value: z.number().min(1).max(100), from: zProvenance }),
  }),
  /** Flights drawn, in order, for the flight-by-flight sequence. */
  sequence: z
    .strictObject({
      seed: z
        .int()
        .min(0)
        .max(2 ** 32 - 1),
      flights: z.int().min(1).max(200_000),
    })
    .optional(),
  /** Hours per use, as bounds; `total` where the papers settle the sum better than its parts. */
  hours: z
    .strictObject({
      by_use: z.array(z.strictObject({ use: zUse, low_h: z.number().min(0), high_h: z.number().min(0) })).max(30),
      total: z.strictObject({ low_h: z.number().min(0), high_h: z.number().min(0) }).optional(),
    })
    .optional(),
});
export type UsageDocument = z.output<typeof zUsageDocument>;
export type UsageInput = z.input<typeof zUsageDocument>;
export type UseLoads = z.output<typeof zUseLoads>;
export type Stress = z.output<typeof zStress>;
