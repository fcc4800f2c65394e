import { z } from 'zod';
import { zDay, zProvenance } from '../foundation/document.ts';
import { zUsageDocument, zUse } from '../usage/index.ts';

/**
 * The growth document, `growth/1`: a crack at a named place, the stress that works it, how the material answers, what
 * a look can find, and the rule that makes a look interval of it. Lengths mm, stresses MPa, K MPa√m inside; fields in
 * other units are read by `inEngineUnits`.
 */
const zName = z.string().trim().min(1).max(200);
const zText = z.string().trim().min(1).max(4000);
const zLength = z.number().positive().max(10_000);
const zStressMPa = z.number().min(-3000).max(3000);
const plate = { width_mm: zLength, thickness_mm: zLength };
const hole = { ...plate, diameter_mm: zLength };
/** Pin load over hole diameter and thickness, as a share of the remote stress; 0 is an open hole. */
const bearing = { bearing_ratio: z.number().min(0).max(20).default(0) };
/** Bending stress at the outer fibre as a share of the remote tension. */
const bending = { bending_ratio: z.number().min(0).max(10).default(0) };
const cracks = { cracks: z.union([z.literal(1), z.literal(2)]) };

/** Where the crack sits. Width is the whole width of the plate; two cracks at a hole are alike. */
export const zGeometry = z.discriminatedUnion('shape', [
  /** Through crack of length 2c in the middle of a plate. */
  z.strictObject({ shape: z.literal('centre_through'), ...plate }),
  /** Through crack of length c from an edge. */
  z.strictObject({ shape: z.literal('edge_through'), ...plate, ...bending }),
  /** Through cracks of length c at a hole in the middle of a plate. */
  z.strictObject({ shape: z.literal('hole_through'), ...hole, ...cracks, ...bearing }),
  /** One through crack at a hole off the middle, growing to the near edge (handbook form). */
  z.strictObject({ shape: z.literal('hole_near_edge'), ...hole, edge_distance_mm: zLength, ...bearing }),
  /** One through crack at the hole of a lug, pin loaded (handbook form). The remote stress is P / (W t). */
  z.strictObject({ shape: z.literal('lug_through'), ...hole }),
  /** Quarter-ellipse corner cracks at a hole: c along the surface, a along the bore. */
  z.strictObject({ shape: z.literal('hole_corner'), ...hole, ...cracks, ...bending }),
  /** One corner crack at a hole, handbook form: bearing, hole off the middle. */
  z.strictObject({
    shape: z.literal('hole_corner_bearing'),
    ...hole,
    ...bearing,
    edge_distance_mm: zLength.optional(),
  }),
  /** Semi-ellipse in the bore of a hole: 2a along the bore, c outward. */
  z.strictObject({ shape: z.literal('hole_bore'), ...hole, ...cracks }),
  /** Semi-ellipse at a plate's surface: 2c long, a deep. */
  z.strictObject({ shape: z.literal('plate_surface'), ...plate, ...bending }),
  /** Quarter ellipse at a plate's edge (closed form). */
  z.strictObject({ shape: z.literal('plate_corner'), ...plate }),
  /** Quarter ellipse at a plate's edge (handbook table), with in-plane and out-of-plane bending. */
  z.strictObject({
    shape: z.literal('plate_corner_table'),
    ...plate,
    in_plane_bending_ratio: z.number().min(0).max(10).default(0),
    out_of_plane_bending_ratio: z.number().min(0).max(10).default(0),
  }),
  /** Geometry factors of one's own: K = σ √(πc) β(c), between the sizes given. */
  z.strictObject({
    shape: z.literal('own_table'),
    ...plate,
    points: z
      .array(z.strictObject({ c_mm: zLength, beta: z.number().positive().max(1000) }))
      .min(2)
      .max(2000),
    from: zProvenance,
  }),
]);
export type Geometry = z.output<typeof zGeometry>;

/** Boundaries that the form does not hold, each as a factor on K; compounded by product or by 1 + Σ(β − 1). */
const zFactor = z.strictObject({ name: zName, value: z.number().positive().max(20), from: zProvenance });

/** c: length along the surface, or from the hole or edge for a through crack. a: depth; absent for through cracks. */
const zSize = z.strictObject({ c_mm: zLength, a_mm: zLength.optional() });
const zFlaw = z.strictObject({ ...zSize.shape, from: zProvenance });

/** Units of a growth constant as printed; there is no default. */
const zLawUnits = z.enum(['mm, MPa√m', 'm, MPa√m', 'in, ksi√in']);
const zToughness = z.number().positive().max(1e4);
export const zLaw = z.discriminatedUnion('law', [
  /** da/dN = C ΔK^n, at the stress ratio that C was read at. */
  z.strictObject({
    law: z.literal('paris'),
    units: zLawUnits,
    c: z.number().positive(),
    n: z.number().min(1).max(15),
    from: zProvenance,
  }),
  /** da/dN = C [ΔK (1 − R)^(m − 1)]^n; for R < 0 the peak alone. */
  z.strictObject({
    law: z.literal('walker'),
    units: zLawUnits,
    c: z.number().positive(),
    n: z.number().min(1).max(15),
    m: z.number().min(0).max(1),
    from: zProvenance,
  }),
  /** da/dN = C ΔK^n / [(1 − R) Kc − ΔK]. */
  z.strictObject({
    law: z.literal('forman'),
    units: zLawUnits,
    c: z.number().positive(),
    n: z.number().min(1).max(15),
    kc: zToughness,
    from: zProvenance,
  }),
  /** da/dN = C [(1 − f)/(1 − R) ΔK]^n (1 − ΔKth/ΔK)^p / (1 − Kmax/Kc)^q with the opening function f. */
  z.strictObject({
    law: z.literal('closure'),
    units: zLawUnits,
    c: z.number().positive(),
    n: z.number().min(1).max(15),
    p: z.number().min(0).max(5),
    q: z.number().min(0).max(5),
    dk0: z.number().min(0).max(100),
    alpha: z.number().min(1).max(3),
    s: z.number().min(0).max(0.9),
    kc: zToughness,
    from: zProvenance,
  }),
]);
export type Law = z.output<typeof zLaw>;

const zMaterialOwn = z.strictObject({
  name: zName,
  law: zLaw,
  yield_MPa: z.strictObject({ value: z.number().positive().max(3000), from: zProvenance }),
  /** Against thickness: straight between the points, thinner stock as the thinnest, thicker only where plane strain is reached. One point: whatever the thickness. */
  toughness: z
    .array(z.strictObject({ thickness_mm: zLength, k_MPa_sqrt_m: zToughness, from: zProvenance }))
    .min(1)
    .max(50),
});
/** From the library by name, with the law to be taken; or one's own, every constant with its source. */
export const zMaterial = z.union([
  z.strictObject({ library: z.string().regex(/^[a-z0-9-]+$/), law: z.enum(['paris', 'walker', 'forman', 'closure']) }),
  zMaterialOwn,
]);

const zShare = z.strictObject({ use: zUse, share: z.number().min(0).max(1) });
/** What works the crack. */
export const zLoading = z.discriminatedUnion('as', [
  /** One cycle over and over. */
  z.strictObject({
    as: z.literal('constant'),
    max_MPa: zStressMPa,
    min_MPa: zStressMPa,
    per_hour: z.number().positive().max(1e7),
    from: zProvenance,
  }),
  /** Cycles per hour. */
  z.strictObject({
    as: z.literal('spectrum'),
    bands: z
      .array(z.strictObject({ max_MPa: zStressMPa, min_MPa: zStressMPa, per_hour: z.number().min(0).max(1e7) }))
      .max(5000),
    from: zProvenance,
  }),
  /** Cycles one after the other, repeated; needed where cycles act on each other. */
  z.strictObject({
    as: z.literal('sequence'),
    cycles_MPa: z
      .array(z.tuple([zStressMPa, zStressMPa]))
      .max(2_000_000)
      .meta({ description: '[highest, lowest] stress of each cycle, in order' }),
    hours: z.number().positive().max(1e6),
    from: zProvenance,
  }),
  /** From a usage document: the mix of uses to come. */
  z.strictObject({ as: z.literal('usage'), usage: zUsageDocument, mix: z.array(zShare).min(1).max(30) }),
]);

/** How one cycle acts on the next. `none` is the safe one: retardation never shortens a computed life. */
export const zInteraction = z.discriminatedUnion('as', [
  z.strictObject({ as: z.literal('none') }),
  z.strictObject({
    as: z.literal('wheeler'),
    exponent: z.number().min(0).max(10),
    plane: z.enum(['stress', 'strain']),
    from: zProvenance,
  }),
  z.strictObject({
    as: z.literal('willenborg'),
    threshold_MPa_sqrt_m: z.number().min(0).max(100),
    shut_off_ratio: z.number().min(1.01).max(10),
    plane: z.enum(['stress', 'strain']),
    from: zProvenance,
  }),
]);
export type Interaction = z.output<typeof zInteraction>;

/** Chance of finding a crack of a size: log-odds through two sizes, never above `most` (access missed, same hands, same probe). */
export const zDetection = z.strictObject({
  a50_mm: zLength,
  a90_mm: zLength,
  most: z.number().min(0).max(1).default(0.99),
  of: z.enum(['c', 'a']).default('c'),
  from: zProvenance,
});

/** Scatter as the standard deviation of the natural logarithm. */
const zSpread = z.strictObject({ sd_ln: z.number().min(0).max(2), from: zProvenance });
export const zChance = z.strictObject({
  seed: z
    .int()
    .min(0)
    .max(2 ** 32 - 1),
  lives: z.int().min(10).max(1_000_000),
  growth_rate: zSpread,
  stress: zSpread,
  toughness: zSpread,
  detection: zDetection.optional(),
});

export const zRule = z.strictObject({
  /** First look at this share of the growth from the first flaw to critical, repeats at this share from the detectable size. */
  name: z.enum(['half', 'third', 'own']),
  first: z.number().gt(0).max(1).optional(),
  repeat: z.number().gt(0).max(1).optional(),
  from: zProvenance,
});

export const zGrowthDocument = z.strictObject({
  sparwright: z.literal('growth/1'),
  title: zName,
  subject: zName.optional(),
  day: zDay.optional(),
  invented: z.boolean().optional().meta({ description: 'Made up for demonstration; shown wherever it appears' }),
  models: z.array(zName).max(50).optional(),
  place: zName,
  /** The kind of part that the place lies in, as the record names it: inboard_spar, wing. */
  part: zUse.optional(),
  geometry: zGeometry,
  factors: z.array(zFactor).max(20).optional(),
  compounded: z.enum(['product', 'sum']).optional(),
  material: zMaterial,
  loading: zLoading,
  interaction: zInteraction.default({ as: 'none' }),
  /** Remote stress at limit load; wanted for hours, not for ratios. */
  limit_stress: z.strictObject({ stress_MPa: z.number().positive().max(3000), from: zProvenance }).optional(),
  first_flaw: zFlaw,
  detectable: zFlaw.extend({ method: zText }),
  rule: zRule,
  /** Hours flown per use so far, as bounds: what is left to the first look is counted from them. */
  flown: z
    .array(z.strictObject({ use: zUse, low_h: z.number().min(0), high_h: z.number().min(0) }))
    .max(30)
    .optional(),
  /** Their sum, where the papers settle it better than its parts: of a gap each use may have flown all, but not all at once. */
  flown_total: z.strictObject({ low_h: z.number().min(0), high_h: z.number().min(0) }).optional(),
  /** Limits of directives in force for this place. Nothing is shown as longer. */
  in_force: z
    .array(
      z.strictObject({
        name: zName,
        first_at_h: z.number().min(0).optional(),
        repeat_h: z.number().min(0).optional(),
        /** Left to the next look it asks for, worse side; negative: overdue. */
        left_h: z.number().optional(),
        /** The same limits where all hours are of one use: landings and counted limits come sooner in some. */
        by_use: z
          .array(
            z.strictObject({
              use: zUse,
              first_at_h: z.number().min(0).optional(),
              repeat_h: z.number().min(0).optional(),
            }),
          )
          .max(30)
          .optional(),
        reference: zText,
      }),
    )
    .max(100)
    .optional(),
  chance: zChance.optional(),
});
export type GrowthDocument = z.output<typeof zGrowthDocument>;
export type GrowthInput = z.input<typeof zGrowthDocument>;
