import type { CrackForm, CrackSize, Programme } from '../model.ts';
import type { Chance } from './scatter.ts';

/** What is the same in every life. Without load interaction growth at a tip depends on nothing but its K. */
export interface LifeProblem {
  readonly form: CrackForm;
  readonly first: CrackSize;
  /** Growth, mm/h, at a tip whose K is x times each stress of the loading. 0 where nothing opens it, Infinity where it runs. */
  readonly perHour: (x: number) => number;
  /** The same from ln x. */
  readonly perHourAtLn: (lnX: number) => number;
  /** n where perHour(s x) = s^n perHour(x) exactly: a pure power of K, whatever the spectrum. Null otherwise. */
  readonly power: number | null;
  /** Remote stress, MPa, that the place still carries with a crack, its toughness times a factor. */
  readonly strengthOf: (toughness: number) => (size: CrackSize) => number;
  /** Remote stress at limit load, MPa, at a stress factor of 1. */
  readonly limit_MPa: number;
}

/** A chance question ready to be computed, in whole or in parts. */
export interface PreparedChance {
  readonly problem: LifeProblem;
  readonly chance: Chance;
  /** Null where no programme can be given: then nothing is said about looks. */
  readonly programme: Pick<Programme, 'first_h' | 'repeat_h'> | null;
  /** Lengths, mm, at which the fan is counted; rising, the first is the first flaw's. */
  readonly sizes_mm: Float64Array;
}

/** Lives `from` up to, not with, `to`, in item order. */
export interface Lives {
  readonly from: number;
  readonly to: number;
  /** Hours from the first flaw to critical; Infinity for a life that does not end. */
  readonly hours: Float64Array;
  /** Chance that none of the looks before the end found the crack. */
  readonly missed: Float64Array;
  /** Of the first FAN_LIVES lives only, life by life: hours at which each of the sizes is reached. */
  readonly fan: Float32Array;
}
/** The fan is drawn from so many lives at most; percentiles and chances count all. */
export const FAN_LIVES = 20_000;
