import type { Provenance } from '../foundation/provenance.ts';

/** What is believed of a habit before its readings speak, and of how habits change. Stated with every result; each field may be changed. */
export interface Prior {
  /** Half of the aircraft fly less than this. */
  readonly median_h_per_year: number;
  /** Standard deviation of the logarithm of the yearly hours. */
  readonly spread: number;
  /** Share of aircraft that hardly fly. */
  readonly idle_share: number;
  /** Share of aircraft in hire or instruction, around `BUSY_H_PER_YEAR`. */
  readonly busy_share: number;
  /** Changes of owner or of use per year, in the record. */
  readonly changes_per_year: number;
  /** Starts of a spell on the ground per year; the part of the record it covers does not speak about the rate. */
  readonly idle_spells_per_year: number;
}

const invented = (source: string): Provenance => ({ source, known: 'invented' });

/** 50 to 100 hours a year is a busy private aircraft; weight belongs below 50 and on idle years. */
export const DEFAULT_PRIOR: Prior = {
  median_h_per_year: 40,
  spread: 1,
  idle_share: 0.03,
  busy_share: 0.12,
  changes_per_year: 0.05,
  idle_spells_per_year: 0.06,
};
/** Hire and instruction: median and spread of the logarithm. */
export const BUSY_H_PER_YEAR = 350;
export const BUSY_SPREAD = 0.6;
export const PRIOR_PROVENANCE: Provenance = invented(
  'Common practice among private owners (50 to 100 hours a year is busy); no published source. Set by hand.',
);

/** Lumpiness b, hours: in a span in which v h are expected the variance is v b. Grid with weights. */
export const LUMPS_H = [1, 2.2, 5, 11, 24, 52] as const;
export const LUMP_WEIGHTS = [0.28, 0.34, 0.24, 0.1, 0.035, 0.005] as const;
/** Wander s of the log rate, per square root of a year. Grid with weights. */
export const WANDERS = [0.03, 0.2, 0.44] as const;
export const WANDER_WEIGHTS = [0.36, 0.38, 0.26] as const;
/** A rate does not wander off for ever: over a long time ahead the walk counts as one of at most this many years. */
export const WANDER_FADES_YEARS = 8;
/** Depth of a season that may be there unseen: where the readings are too far apart to show one, and where they are not. */
export const UNSEEN = 0.45;
export const UNSEEN_BESIDE = 0.25;
/** The flying ahead is taken this much faster than the weights say: a lean to the early, safe side, set on simulated lives. */
export const LEAN = 0.05;
export const GRID_PROVENANCE: Provenance = invented('Chosen on simulated lives; seeds other than those reported');

/** Beyond this the outlook names no date, only a year before which the limit is not reached. */
export const HORIZON_YEARS = 40;
export const DAYS_PER_YEAR = 365.25;
/** The meter is read to a tenth of an hour. */
export const METER_STEP_H = 0.1;
