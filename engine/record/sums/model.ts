import type { Day } from '../../foundation/day.ts';

/** An action that was done on a thing, as far as a limit asks for it. */
export interface Done {
  readonly day: Day;
  readonly order: number;
  readonly entry: string;
  readonly directive: string;
  readonly issue: number;
  readonly action: string;
  readonly finding: string;
}
/** An aircraft, or a part that has sat in it from the day it was built. */
export interface SummedThing {
  readonly id: string;
  /** `inboard_spar` ...; `aircraft` for the aircraft itself. */
  readonly what: string;
  readonly partNumber?: string | undefined;
  readonly built: Day | null;
  /** Day it was fitted; null for the aircraft. */
  readonly fitted: Day | null;
  readonly done: readonly Done[];
}
/** Time stated to be of one use. Days of the edges: the ends of these days bound it; no end: null. */
export interface SummedPeriod {
  readonly after: number;
  readonly to: number | null;
  readonly use: string;
}
/** A stretch for which no paper exists, with the paper that would settle it. */
export interface SummedGap {
  readonly after: number;
  readonly to: number;
  readonly paper: string;
}

/**
 * All that the papers of a plain aircraft say, as figures: what was flown on which day in which use, and what was
 * flown between two readings without a row. Days are numbers since 1970-01-01, hours whole seconds.
 *
 * A *plain* record needs no solver: what is open in it is open apart from everything else, so that every end of a
 * linear figure has a closed form (`amountAt`, `ends.ts`).
 */
export interface Sums {
  readonly aircraft: string;
  readonly registration: string;
  readonly model?: string | undefined;
  readonly serial?: string | undefined;
  readonly built: Day;
  /** The aircraft first, then its parts. */
  readonly things: readonly SummedThing[];
  /** Uses that may have been flown where no paper speaks. */
  readonly uses: readonly string[];
  /** Newest entry of all that is summed: figures of an earlier day are not these. */
  readonly newest: Day;
  /** Day of the last reading or row. */
  readonly known: number;
  readonly periods: readonly SummedPeriod[];
  readonly gaps: readonly SummedGap[];
  /** The newest days before a change of use, newest first: shares hold from the next day on. */
  readonly useChanges: readonly Day[];
  /** Settled flying, oldest first: day, use (place in `uses`), seconds, landings; four figures each. */
  readonly rows: Int32Array;
  /**
   * Flown between two readings that no row lists, oldest first: day of the first and of the second reading, seconds,
   * landings, and its use (place in `uses`), or -1 - n where it lies in gap n and any use may have been flown.
   */
  readonly spans: Int32Array;
  /** Totals as read: day, seconds, landings (-1: not read); three figures each. */
  readonly readings: Int32Array;
}
export const ROW = 4;
export const SPAN = 5;
export const READING = 3;

/** The totals of a circle, or why it needs the whole way. */
export type Summed = { readonly sums: Sums; readonly why: null } | { readonly sums: null; readonly why: string };
