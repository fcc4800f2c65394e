import type { Bounds } from '../foundation/bounds.ts';
import type { Day } from '../foundation/day.ts';
import type { Provenance } from '../foundation/provenance.ts';
import type { FastenerKind, Stage, StepName, ThreePoint } from './structure-document.ts';

/** Numbered things with costs; each needs one of each of its clauses. What is chosen costs its sum; a worth is a negative cost. */
export interface AndOrProblem {
  /** Whole cents; below zero where choosing it pays. */
  readonly cost: readonly number[];
  /** For each thing a list of clauses, for each clause the things of which one must be chosen, and before it. */
  readonly clauses: readonly (readonly (readonly number[])[])[];
  readonly targets: readonly number[];
}
/** A set that can be done one after the other, with how sure it is that none is cheaper. */
export interface LeastSet {
  /** Ascending. */
  readonly chosen: readonly number[];
  readonly cost: number;
  /** No set costs less than this. Equal to the cost where it is proven. */
  readonly bound: number;
  readonly proven: boolean;
}

/** What is wrong, or worth knowing, of a map or a plan. Failing a check is an answer. */
export interface MapFinding {
  readonly code: string;
  readonly text: string;
  /** Parts, joins, looks it is about, by id. */
  readonly about: readonly string[];
  readonly remedy: string;
}

export const OPERATION_KINDS = [
  'gate',
  'support',
  'open',
  'off',
  'look',
  'job',
  'repair',
  'put',
  'clip',
  'jig_check',
  'edge_check',
  'drill',
  'unclip',
  'apart',
  'deburr',
  'convert',
  'prime',
  'dry',
  'refit',
  'seal',
  'reclip',
  'jig_recheck',
  'closing_look',
  'close',
  'cure',
  'release',
] as const;
export type OperationKind = (typeof OPERATION_KINDS)[number];

/** One step of the work. Its id is `kind:what`, stable as long as the map is. */
export interface Operation {
  readonly id: string;
  readonly kind: OperationKind;
  /** Id of the part, join, support, look, job or gate. */
  readonly of: string;
  readonly stage: Stage;
  /** "Drill out the splice rivets, lower row" */
  readonly title: string;
  readonly minutes: ThreePoint;
  readonly persons: number;
  /** Null where any hand will do, or none is needed. */
  readonly skill: string | null;
  /** Needs no hands: drying, curing. Runs day and night. */
  readonly unattended: boolean;
  readonly tools: readonly string[];
  readonly face: 'upper' | 'lower' | 'either';
  readonly who: 'shop' | 'installer';
  /** Jig kind that is taken while this is done. */
  readonly jig: string | null;
  /** The wing that stands in that jig; absent: the side of the job. */
  readonly hand?: 'left' | 'right' | 'both';
  /** Ids of operations that must be finished. */
  readonly after: readonly string[];
  /** Must begin no later than this after another has begun: the working life of a sealant. */
  readonly within: { readonly of: string; readonly min: number } | null;
  /** May be left overnight and taken up again. */
  readonly may_pause: boolean;
  /** A second person who did none of the work. */
  readonly duplicate: boolean;
  /** Cost of hands and goods on the mean, cents. */
  readonly cents: number;
  readonly done: boolean;
  /** Who did it, where it is recorded as done. */
  readonly by?: string;
  /** What it exposes that a finding could change: ids of looks. */
  readonly exposes: readonly string[];
  readonly because: string | null;
  readonly from: Provenance | null;
}

/** Flips and tool changes on the way. */
export interface Setups {
  readonly flips: number;
  readonly toolChanges: number;
  readonly minutes: number;
}

/** Chosen because access is open anyway, or left, with the sums that decide. */
export interface Extra {
  readonly id: string;
  readonly is: 'look' | 'job';
  readonly name: string;
  readonly chosen: boolean;
  /** What it costs now, access beyond the plan shared among those that pay for it included, cents. */
  readonly now_cents: number;
  readonly minutes: number;
  /** What is expected to be saved by it, cents. */
  readonly saves_cents: number;
  /** Steps that come on the plan for it alone or for it and others. */
  readonly opensMore: readonly StepName[];
  /** Asked by the map on every plan that exposes it, or by the shop. */
  readonly asked: 'by sums' | 'always' | 'wanted' | 'unwanted';
  /** In words, with the sums. */
  readonly because: string;
}

export interface LeastTeardown {
  /** Steps of the least teardown in a valid order, names as `off:PART`. */
  readonly steps: readonly StepName[];
  /** Cost of the least teardown for the targets alone, there and back, cents. */
  readonly cost_cents: number;
  readonly minutes: number;
  readonly bound_cents: number;
  readonly proven: boolean;
  /** Of each step why it is on the plan: what needs it. */
  readonly because: Readonly<Record<string, string>>;
}

export interface Plan {
  /** In a valid order, those done first. */
  readonly operations: readonly Operation[];
  readonly setups: Setups;
  readonly least: LeastTeardown;
  readonly extras: readonly Extra[];
  /** Parts that are off, and joins that are open, before the first operation that is not done. */
  readonly state: { readonly off: readonly string[]; readonly open: readonly string[] };
  readonly findings: readonly MapFinding[];
  /** Parts for which a new one goes in, by id: of a choice of targets those that were chosen. */
  readonly replaced?: readonly string[];
}

/** A step of the replay: what is off and open after it. */
export interface Replayed {
  readonly operation: string;
  readonly off: readonly string[];
  readonly open: readonly string[];
  /** Clipped, not riveted. */
  readonly clipped: readonly string[];
}

export interface ScheduledOperation {
  readonly id: string;
  readonly job: string;
  /** Minutes since midnight of the first day. */
  readonly start_min: number;
  readonly end_min: number;
  readonly startDay: Day;
  readonly endDay: Day;
  readonly crew: readonly string[];
  readonly jig: string | null;
  /** On the critical chain: delays of it delay the end. */
  readonly critical: boolean;
}
export interface Schedule {
  readonly from: Day;
  readonly operations: readonly ScheduledOperation[];
  /** End of the last operation of each job. */
  readonly ends: readonly { readonly job: string; readonly day: Day; readonly end_min: number }[];
  readonly end_min: number;
  /** No schedule ends earlier than this. */
  readonly bound_min: number;
  /** Ids in order: each waits for the one before it, by need, hands or jig. */
  readonly chain: readonly string[];
  readonly finish: { readonly p50: Day; readonly p80: Day; readonly seed: number; readonly runs: number } | null;
  readonly jigDays: readonly { readonly jig: string; readonly from: Day; readonly to: Day; readonly days: number }[];
  readonly findings: readonly MapFinding[];
}

export interface ShoppingLine {
  readonly code: string;
  readonly what: string;
  /** "solid_rivet" and the like, or consumable, tool, part. */
  readonly kind: FastenerKind | 'consumable' | 'tool' | 'part';
  readonly count: number;
  readonly spares: number;
  readonly unit: string;
  /** Length needed, mm: grip and what forms the shop head; null where there is none. */
  readonly length_mm: number | null;
  /** Null where the floor knows no price: the line is named on the quote as not priced. */
  readonly cents: Bounds | null;
  readonly joins: readonly string[];
  readonly lead_days: number | null;
}
export interface Shopping {
  readonly lines: readonly ShoppingLine[];
  readonly tools: readonly string[];
  readonly warnings: readonly string[];
}

export interface QuoteLine {
  readonly name: string;
  readonly hours: Bounds | null;
  readonly cents: Bounds;
  readonly because: string;
}
export interface Quote {
  readonly day: Day;
  readonly validUntil: Day;
  readonly base: readonly QuoteLine[];
  readonly baseTotal: Bounds;
  /** Priced now, charged only if found. */
  readonly ifFound: readonly (QuoteLine & { readonly chance: number })[];
  /** What findings add, P50 and P80 of the draws, cents. */
  readonly contingency: { readonly p50: number; readonly p80: number };
  readonly range: Bounds;
  readonly stopAndCall_cents: number;
  /** The sum already passes it, at the named end. */
  readonly passes: 'never' | 'at the high end' | 'always';
  readonly finish: { readonly early: Day; readonly late: Day } | null;
  /** The part that takes longer to come than the work before it needs. */
  readonly outrun: { readonly part: string; readonly lead_days: Bounds; readonly waits_days: Bounds } | null;
  readonly storage: QuoteLine | null;
  readonly installer: readonly string[];
  readonly excluded: readonly string[];
  readonly currency: string;
  readonly hours: Bounds;
  readonly jigDays: Bounds;
}

export interface TeardownAnswer {
  readonly plan: Plan;
  readonly schedule: Schedule | null;
  readonly shopping: Shopping;
  readonly quote: Quote | null;
}
