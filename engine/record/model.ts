import type { Bounds } from '../foundation/bounds.ts';
import type { Day, Moment } from '../foundation/day.ts';
import type { Evidence } from '../foundation/provenance.ts';
import type { LinearForm, Region } from '../foundation/region/index.ts';
import type { Worked } from '../foundation/working.ts';
import type { Entry, Policy } from './document.ts';

/** Something the papers do not settle, or say twice: an answer for a person, not an error. */
export interface Finding {
  /** For example `record.meter-runs-backwards`, `record.left-part-in-right-place`, `record.uncovered-hours`. */
  readonly code: string;
  readonly text: string;
  /** Ids of the entries it rests on; contradictions name both. */
  readonly entries: readonly string[];
  readonly remedy: string;
}

/** An aircraft or a part as the record knows it on the day. */
export interface Thing {
  readonly id: string;
  readonly kind: 'aircraft' | 'part';
  /** `inboard_spar`, `wing` ...; `aircraft` for an aircraft. */
  readonly what: string;
  readonly hand: 'left' | 'right' | 'none';
  /** Dated attributes in force on the day: registration, model, serial, stamp, part_number, owner, base, type. */
  readonly attributes: Readonly<
    Record<string, { readonly value: string; readonly evidence: Evidence; readonly entry: string; readonly since: Day }>
  >;
  readonly built: Day | null;
  /** The aircraft it sits in on the day (through any number of places), and the place it sits in directly. */
  readonly aircraft: string | null;
  readonly holder: { readonly id: string; readonly place: string } | null;
  /** `seen` only if its stamp, serial or number was seen on the aircraft itself. */
  readonly identity: Evidence;
  /** Kits fitted on the day, with the moment of fitting. */
  readonly kits: Readonly<Record<string, Moment>>;
}

/** A stretch of a life between two cuts, with what may have happened in it. */
export interface Stretch {
  readonly from: Moment;
  readonly to: Moment;
  readonly aircraft: string | null;
  /** True where no paper says which use it was, or how much. */
  readonly gap: string | null;
  readonly hours_s: Bounds;
  readonly landings: Bounds;
  /** Uses that may have been flown in it. */
  readonly uses: readonly string[];
  readonly kits: readonly string[];
  readonly entries: readonly string[];
  /** Variables of the region that belong to this stretch. */
  readonly variables: readonly number[];
}

export interface Gap {
  /** Stable name, the id of the entry that declares it or of the two entries it lies between. */
  readonly id: string;
  readonly from: Day;
  readonly to: Day;
  readonly because: string;
  /** The paper that would settle it, best first. */
  readonly papers: readonly string[];
  readonly what: readonly ('hours' | 'landings' | 'uses' | 'inspections')[];
  /** Variables of the region that this paper would fix. */
  readonly variables: readonly number[];
}

/**
 * All facts of one life at one moment, as linear forms over the variables of the region.
 * Hours are in **hours** here (expressions speak hours), variables in seconds.
 */
export type Facts = Readonly<Record<string, LinearForm>>;

/** What one part or aircraft has lived through, up to a day: every possible history at once. */
export interface Life {
  readonly subject: Thing;
  readonly until: Day;
  readonly region: Region;
  readonly stretches: readonly Stretch[];
  readonly gaps: readonly Gap[];
  /** Facts at a moment; `until` and every cut that was asked for. Between cuts the next earlier cut counts. */
  at(day: Day): Facts;
  /** Bounds of one fact at a day, with the entries behind it. Hours facts in hours. */
  figure(fact: string, day: Day): Worked<Bounds>;
  /**
   * Facts of the aircraft that carries it, over the same region, for limits that count on the aircraft. With
   * `aboard`: of the one that carries it on that day, as it stood on `day`, so that two days are of one aircraft.
   */
  carrierAt(day: Day, aboard?: Day): Facts | null;
  /** Total and landings of the carrier as read: the legal figures, oldest first. */
  readonly readings: readonly {
    readonly day: Day;
    readonly total_s: number;
    readonly landings: number | null;
    readonly entry: string;
  }[];
  readonly lastReading: {
    readonly day: Day;
    readonly total_s: number;
    readonly landings: number | null;
    readonly entry: string;
  } | null;
  readonly stale: boolean;
  readonly findings: readonly Finding[];
  /** Names of facts that exist: `hours.total`, `hours.tow`, `landings.total`, `inspections.hundred_hour`, `kit.winglet.hours`, `since.hard_landing.hours`, `count.overspeed`, `age.days` ... */
  readonly factNames: readonly string[];
  readonly policy: Policy;
}

/** The record after reading: corrections applied, things found, contradictions listed. */
export interface RecordModel {
  readonly day: Day;
  readonly entries: readonly Entry[];
  readonly replaced: readonly Entry[];
  readonly things: ReadonlyMap<string, Thing>;
  readonly findings: readonly Finding[];
  readonly policy: Policy;
  readonly uses: readonly string[];
  readonly invented: boolean;
}
