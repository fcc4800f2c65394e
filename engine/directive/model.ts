import type { Bounds } from '../foundation/bounds.ts';
import type { Day } from '../foundation/day.ts';
import type { Step } from '../foundation/working.ts';
import type { Action, DirectiveDocument, Standing } from './document.ts';

export type Standings = { readonly worst: Standing; readonly best: Standing };

/** A reading of the aircraft at which something falls due, in the unit of the limit that governs. */
export interface DueAt {
  /** The aircraft's own total at which it is due, if hours govern. */
  readonly total_s: number | null;
  readonly landings: number | null;
  readonly day: Day | null;
  /** True for `before further flight`. */
  readonly now: boolean;
}

/** What is left to the limit that governs, on one end of the possible histories. */
export interface Left {
  /** In the limit's own unit (hours in hours). Negative: overdue by. */
  readonly value: number;
  readonly unit: 'h' | 'landings' | 'days' | 'counted';
  /** Turned into the carrier's hours or landings at the stated mix; null if only the calendar governs. */
  readonly hours_s: number | null;
  readonly landings: number | null;
  /** Words of the limit that governs, for example `9 000 counted landings`. */
  readonly limit: string;
}

export interface EndOfAnswer {
  readonly standing: Standing;
  readonly dueAt: DueAt;
  readonly left: Left | null;
  readonly counted: number | null;
  /** The possible history behind this end: value per variable of the region. */
  readonly witness: readonly number[];
  readonly proven: 'exact' | 'enclosure';
}

/** A paper that would narrow the answer, with how much. */
export interface PaperWanted {
  readonly gap: string;
  readonly paper: string;
  readonly from: Day;
  readonly to: Day;
  /** Due at, worst and best, after the paper is found at its worst and at its best. */
  readonly ifWorst: { readonly left: number; readonly dueAt: DueAt };
  readonly ifBest: { readonly left: number; readonly dueAt: DueAt };
  /** How wide what is left stays, in the unit of the limit, once it is found; zero: it settles the answer. */
  readonly staysWide: number;
}

/** Future flying at which the reading is projected: per carrier's hour. Stated, changeable. */
export interface Mix {
  /** Share of the hours per use; sums to 1. */
  readonly hours: Readonly<Record<string, number>>;
  /** Landings per hour by use. */
  readonly landingsPerHour: Readonly<Record<string, number>>;
  readonly from: 'recent record' | 'stated' | 'no record: private flying assumed';
}

/** The answer for one part under one action. Stored without the day; `standingOn` derives the day's standing. */
export interface Assessment {
  readonly directive: string;
  readonly issue: number;
  readonly action: Action;
  readonly subject: string;
  readonly day: Day;
  readonly affected: { readonly yes: boolean; readonly because: string };
  readonly standing: Standings;
  readonly treatAs: EndOfAnswer;
  readonly couldBecome: EndOfAnswer;
  /** The directive's counted figure over all possible histories, if the action counts one. */
  readonly counted: (Bounds & { readonly called: string; readonly unit: string }) | null;
  readonly mix: Mix;
  readonly lastDone: {
    readonly day: Day;
    readonly entry: string;
    readonly finding: string;
    readonly by: string;
  } | null;
  readonly papers: readonly PaperWanted[];
  /** Approved alternative in force, if one counts. */
  readonly alternative: {
    readonly reference: string;
    readonly conditions: string;
    readonly entry: string;
    /** Last day on which it holds; null: it bears none. */
    readonly expires: Day | null;
  } | null;
  /** Days ahead that the shop calls soon, so that the answer can be held against a later day. */
  readonly soon_days: number;
  readonly ferry: 'allowed' | 'limited' | 'forbidden' | 'not stated';
  readonly working: readonly Step[];
  readonly warnings: readonly string[];
  /** Set when its own test cases fail: the standing is then `due`, not computed. */
  readonly notComputed: string | null;
}

export interface Adopted {
  readonly document: DirectiveDocument;
  readonly by: string;
  readonly on: Day;
}
