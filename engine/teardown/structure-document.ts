import { z } from 'zod';
import { zProvenance } from '../foundation/document.ts';

/**
 * The structure map of a wing, `structure/1`: parts, joins (a row of fasteners through a stack of layers), what each
 * needs off or open first, looks and small jobs that a step exposes. Plan coordinates in mm: x aft, y starboard of the
 * centre line, so the left wing has y < 0. Times are three-point minutes of one person's clock; several persons stand
 * beside it. Money is whole cents.
 */
const zName = z.string().trim().min(1).max(200);
const zText = z.string().trim().min(1).max(2000);
export const zId = z.string().regex(/^[a-z][a-z0-9-]{0,59}$/, 'must be a short word of small letters, digits and -');
const zCents = z.int().min(0).max(1e10);
const zMinutes = z.number().min(0).max(100_000);
const zPlace = z.number().min(-100_000).max(100_000);
const zPoint = z.tuple([zPlace, zPlace]);
export const zSide = z.enum(['left', 'right', 'both']);
const zChance = z.number().min(0).max(1);

/** Least, most likely and longest time, minutes. */
export const zThreePoint = z
  .strictObject({ low_min: zMinutes, likely_min: zMinutes, high_min: zMinutes })
  .refine((t) => t.low_min <= t.likely_min && t.likely_min <= t.high_min, 'must rise: low, likely, high');

/**
 * What stands in the way, by name: `off:PART` (taken off), `open:JOIN` (its fasteners out), `support:SUPPORT` (set up).
 */
export const zStep = z
  .string()
  .regex(/^(off|open|support):[a-z][a-z0-9-]{0,59}$/, 'must be off:PART, open:JOIN or support:SUPPORT');
/** All needs of a thing must be met; each by any one of its ways; a way that is a list by all of its steps. */
export const zNeed = z.union([
  zStep,
  z.strictObject({
    any: z
      .array(z.union([zStep, z.array(zStep).min(1).max(20)]))
      .min(1)
      .max(20),
    because: zText.optional(),
  }),
]);
const zNeeds = z.array(zNeed).max(40).default([]);

/** Which side of the wing must be up, or can be reached, to do it. */
export const zFace = z.enum(['upper', 'lower', 'either']);
const hands = {
  persons: z.int().min(1).max(8).default(1),
  skill: zId.optional(),
  tools: z.array(zName).max(20).default([]),
  face: zFace.default('either'),
};

export const PART_KINDS = [
  'spar',
  'cap',
  'web',
  'skin',
  'rib',
  'nose_section',
  'tank',
  'doubler',
  'splice',
  'stringer',
  'fitting',
  'panel',
  'fairing',
  'control_surface',
  'system',
  'other',
] as const;
export const zPart = z.strictObject({
  id: zId,
  name: zName,
  kind: z.enum(PART_KINDS),
  side: zSide,
  /** Plan outline, at least three points. */
  outline: z.array(zPoint).min(3).max(200),
  /** Drawn over parts of lower level: lower skin below spar, upper skin on top. */
  level: z.int().min(0).max(20).default(5),
  mass_kg: z.number().positive().max(5000).optional(),
  /** The body that the rest is taken off from. */
  stays: z.boolean().default(false),
  ...hands,
  take_off: zThreePoint,
  put_back: zThreePoint,
  /** What must be off or open besides every join that holds it. */
  needs: zNeeds,
  /** What must still be off when it goes back in: access for reaching it from behind. Without: nothing. */
  back_needs: zNeeds,
  /** A new one: what is ordered if it is to be replaced. */
  order: z
    .strictObject({
      code: zName,
      price_low_cents: zCents,
      price_high_cents: zCents,
      lead_days: z.strictObject({ low: z.int().min(0), likely: z.int().min(0), high: z.int().min(0) }),
      note: zText.optional(),
    })
    .optional(),
  /** Drained, purged and tested for leaks around its taking off. */
  holds_fuel: z.boolean().default(false),
  note: zText.optional(),
});

export const FASTENER_KINDS = ['solid_rivet', 'blind_rivet', 'bolt', 'screw', 'pin', 'clamp'] as const;
export const zFastenerKind = z.enum(FASTENER_KINDS);
/** Minutes for one fastener of a row; of a pair of persons, the clock of the pair. */
const zEach = z.strictObject({
  open: zThreePoint.optional(),
  /** Temporary fasteners in, for the dry pass. */
  clip: zThreePoint.optional(),
  /** Drilled to final size through the pilot holes. */
  drill: zThreePoint.optional(),
  /** Chips out, both sides deburred. */
  deburr: zThreePoint.optional(),
  close: zThreePoint.optional(),
});
export const zJoin = z.strictObject({
  id: zId,
  name: zName,
  side: zSide,
  /** Parts in the stack, from the head side. A row through one part and the body that stays has two layers. */
  layers: z.array(zId).min(2).max(5),
  /** Where it runs in plan. */
  line: z.array(zPoint).min(1).max(200),
  fasteners: z.strictObject({
    kind: zFastenerKind,
    count: z.int().min(1).max(5000),
    /** Part code without its length. */
    code: zName,
    diameter_mm: z.number().min(1).max(50),
    /** Thickness of the whole stack. */
    grip_mm: z.number().positive().max(300),
    head: z.enum(['flush', 'protruding']).default('protruding'),
    rows: z.int().min(1).max(10).default(1),
    pitch_mm: z.number().positive().max(1000).optional(),
  }),
  /** State of each hole by count; together the number of fasteners. Absent: all final. */
  holes: z
    .strictObject({
      pilot: z.int().min(0).default(0),
      final: z.int().min(0).default(0),
      elongated: z.int().min(0).default(0),
      oversize: z.int().min(0).default(0),
    })
    .optional(),
  /** Chance that drilling one fastener out spoils its hole. */
  spoil_chance: zChance.default(0),
  ...hands,
  /** Blind to the bucking bar: which parts must be off to open it. */
  needs: zNeeds,
  /** What must still be off or open to close it: the way of the bucking bar. */
  close_needs: zNeeds,
  /** Times of the whole row, where they differ from count times each. */
  row: zEach.optional(),
  /** The wing stands in the jig and is measured before this row is riveted. */
  jig_before_rivets: z.boolean().default(false),
  /** Closes a bay: riveted last, after the look into the bay. */
  closing_row: z.boolean().default(false),
  /** Attach bolts to the fuselage: holes are never opened to fit, bolts go one at a time. */
  attach: z.boolean().default(false),
  sealant: z
    .strictObject({ name: zName, working_life_min: z.number().positive(), cure_h: z.number().min(0).max(1000) })
    .optional(),
  /** What goes with it besides the fasteners. */
  consumables: z
    .array(z.strictObject({ name: zName, amount: z.number().positive(), unit: zName }))
    .max(20)
    .default([]),
  note: zText.optional(),
});

/** A jig, trestles, a strap: what holds the wing before something is opened. */
export const zSupport = z.strictObject({
  id: zId,
  name: zName,
  side: zSide,
  ...hands,
  set_up: zThreePoint,
  /** Of a jig: the wing measured in it, once. Absent: assumed, and said. */
  measure: zThreePoint.optional(),
  /** Kind of jig that is taken as long as it stands. */
  jig: zId.optional(),
  needs: zNeeds,
});

export const zLook = z.strictObject({
  id: zId,
  name: zName,
  /** Part or join that is looked at. */
  at: zId,
  /** What exposes it, besides nothing. */
  needs: zNeeds,
  ...hands,
  minutes: zThreePoint,
  method: zName.optional(),
  /** Chance of a finding, and what a finding costs if it is seen now, or later when the wing is closed. */
  chance: zChance,
  now_cents: zCents,
  later_cents: zCents,
  /** A finding adds these to what must be reached. */
  finding_targets: z
    .array(z.strictObject({ part: zId, work: z.enum(['replace', 'repair']) }))
    .max(10)
    .default([]),
  /** Hours that a finding adds, three-point minutes. */
  finding_work: zThreePoint.optional(),
  /** Done before a bay is closed, on every plan that closes it. */
  before_closing: z.boolean().default(false),
  /** A plan that exposes it must do it: the doubler under the walkway while it is bare. */
  always: z.boolean().default(false),
  from: zProvenance,
});
export const zSmallJob = z.strictObject({
  id: zId,
  name: zName,
  at: zId,
  needs: zNeeds,
  ...hands,
  minutes: zThreePoint,
  parts_cents: zCents.default(0),
  /** What it will cost on its own when its day comes, access and all, and how surely it comes. */
  later_cents: zCents,
  chance: zChance.default(1),
  from: zProvenance,
});

/** Stages of the work, in their order. A gate stands before one of them. */
export const STAGES = ['arrive', 'prepare', 'take_down', 'bare', 'dry', 'apart', 'wet', 'finish', 'hand_over'] as const;
export const zStage = z.enum(STAGES);
export const zGate = z.strictObject({
  id: zId,
  name: zName,
  /** It must be passed before this stage begins. */
  before: zStage,
  /** Passed only after these gates, by id; else in the order given. */
  after: z.array(zId).max(20).default([]),
  who: z.enum(['shop', 'installer']),
  ...hands,
  minutes: zThreePoint,
  /** Time without hands after it: drying, purging, curing. */
  wait_h: z.number().min(0).max(2000).default(0),
  /** Only where this is on the plan; absent: on every plan. */
  only_if: z.array(zStep).max(20).optional(),
  /** Needs a second person who has not done the work. */
  duplicate: z.boolean().default(false),
  from: zProvenance,
});

/** Order stated by the maker or with the kit: wins over least cost. Its steps are done, and in this order. */
export const zStated = z.strictObject({
  name: zName,
  steps: z.array(zStep).min(1).max(200),
  /** The way back, where it is stated too: `off:PART` goes in, `open:JOIN` is closed, in this order. */
  back: z.array(zStep).max(200).default([]),
  /** Only where this part is replaced; absent: on every plan. */
  only_if: zId.optional(),
  from: zProvenance,
});

export const zStructureMap = z.strictObject({
  sparwright: z.literal('structure/1'),
  title: zName,
  /** Models that it is true for. */
  models: z.array(zName).max(50).default([]),
  invented: z.boolean().default(false),
  from: zProvenance,
  parts: z.array(zPart).min(1).max(2000),
  joins: z.array(zJoin).max(5000),
  supports: z.array(zSupport).max(100).default([]),
  looks: z.array(zLook).max(500).default([]),
  jobs: z.array(zSmallJob).max(500).default([]),
  gates: z.array(zGate).max(100).default([]),
  stated: z.array(zStated).max(50).default([]),
  /** Minutes for one fastener by its kind: the shop's own times. */
  each: z.partialRecord(zFastenerKind, zEach),
  /** Minutes of the flips and tool changes that an order asks for. */
  flip: zThreePoint.default({ low_min: 20, likely_min: 30, high_min: 60 }),
  tool_change: zThreePoint.default({ low_min: 2, likely_min: 4, high_min: 8 }),
  /** Primer and conversion coat of the parts that come apart after the dry pass. */
  coating: z
    .strictObject({
      clean_each_join: zThreePoint,
      convert: zThreePoint,
      prime: zThreePoint,
      dry_h: z.number().min(0).max(200),
      materials: z.array(z.strictObject({ name: zName, amount: z.number().positive(), unit: zName })).max(20),
      from: zProvenance,
    })
    .optional(),
});

export type StructureMap = z.output<typeof zStructureMap>;
export type StructureInput = z.input<typeof zStructureMap>;
export type Part = StructureMap['parts'][number];
export type Join = StructureMap['joins'][number];
export type Support = StructureMap['supports'][number];
export type Look = StructureMap['looks'][number];
export type SmallJob = StructureMap['jobs'][number];
export type Gate = StructureMap['gates'][number];
export type Stated = StructureMap['stated'][number];
export type Need = z.output<typeof zNeed>;
export type StepName = z.output<typeof zStep>;
export type Stage = (typeof STAGES)[number];
export type Face = z.output<typeof zFace>;
export type ThreePoint = z.output<typeof zThreePoint>;
export type FastenerKind = z.output<typeof zFastenerKind>;
