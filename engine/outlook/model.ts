import type { Day } from '../foundation/day.ts';
import type { Prior } from './prior.ts';

/** When a limit is reached, as far as a date can be named. `not before`: not within the horizon, so only a year is said. */
export type Arrival =
  | { readonly is: 'reached'; readonly day: Day }
  | { readonly is: 'day'; readonly day: Day }
  | { readonly is: 'not before'; readonly year: number };

/** The limit is reached by p10 with a chance of 10 %, by p50 with 50 %, by p90 with 90 %. */
export interface Percentiles {
  readonly p10: Arrival;
  readonly p50: Arrival;
  readonly p90: Arrival;
}

/**
 * What is left at the last reading, on one end of the possible histories. Several limits together: the first governs.
 * Negative or zero: reached.
 */
export interface LeftAtEnd {
  readonly left_s?: number | null;
  readonly left_landings?: number | null;
  /** A directive's own figure, counted as hours times perHour plus landings times perLanding from now on. */
  readonly counted?: { readonly left: number; readonly perHour: number; readonly perLanding: number } | null;
  readonly onDay?: Day | null;
}

export interface ReadingAge {
  /** Day of the last reading: every figure is as of this day. */
  readonly asOf: Day;
  readonly age_days: number;
  readonly stale: boolean;
}

/** The total on the day, beyond the last reading: an estimate with its band, never the legal figure. */
export interface TodayEstimate extends ReadingAge {
  readonly read_s: number;
  readonly total_s: { readonly p10: number; readonly p50: number; readonly p90: number };
}

/** A rate that is simply assumed, and when the limit would be reached at it. */
export interface AtRate {
  readonly rate_h_per_year: number;
  readonly treatAs: Arrival;
  readonly couldBecome: Arrival;
}

/** What the readings say of the owner's rate. */
export interface RateFound {
  readonly h_per_year: { readonly p10: number; readonly p50: number; readonly p90: number };
  readonly landingsPerHour: number;
  readonly season: 'none shown' | { readonly depth: number; readonly peakDayOfYear: number };
  /** The stretch in which the habit most likely changed, if a change is more likely than not. */
  readonly changed: { readonly from: Day; readonly to: Day; readonly chance: number } | null;
  readonly basis: 'readings' | 'few readings and the prior' | 'prior alone';
}

export interface Outlook {
  readonly today: ReadingAge;
  readonly rate: RateFound;
  /** Over the worst history: in force. The date that is spoken is its p50, with p10 beside it. */
  readonly treatAs: Percentiles;
  /** Over the best history: what a paper may change it to. */
  readonly couldBecome: Percentiles;
  /** Two widths that are never added into one chance: what papers would settle, and what flying will. */
  readonly spans: {
    readonly papers: { readonly from: Arrival; readonly to: Arrival };
    readonly flying: { readonly from: Arrival; readonly to: Arrival };
    readonly whole: { readonly from: Arrival; readonly to: Arrival };
  };
  readonly atRates: readonly AtRate[];
}

export interface OutlookOptions {
  /** Rates to answer plainly; 25, 50 and 100 h a year unless stated. */
  readonly rates_h_per_year?: readonly number[] | undefined;
  /** A reading older than this is stale; 90 days unless stated. */
  readonly staleAfter_days?: number | undefined;
  readonly prior?: Partial<Prior> | undefined;
  /** Landings per hour to come; from the record unless stated. */
  readonly landingsPerHour?: number | undefined;
}
