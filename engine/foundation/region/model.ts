/**
 * A set of possible histories, as numbers.
 *
 * Each variable is one figure that the papers do not settle (the seconds flown towing in a stretch
 * without papers, its landings, the inspections in it). Each constraint is something the papers do
 * say about them (these stretches together are 41.5 h by the meter). A possible history is one value
 * per variable that keeps all limits and all constraints.
 *
 * Every variable has two finite ends: there is always a ceiling (hours per day, landings per hour),
 * and a figure without one is refused rather than guessed.
 */
export interface RegionVariable {
  readonly name: string;
  readonly low: number;
  readonly high: number;
  /** True for landings, inspections and yes/no choices (0 or 1). Time flown is continuous, in seconds. */
  readonly integer: boolean;
}

/** Coefficient of a variable; the variable is given by its place in `Region.variables`. */
export type LinearTerm = readonly [variable: number, coefficient: number];

/** low <= sum of terms <= high. Either end may be infinite; both equal is an equation. */
export interface RegionConstraint {
  /** In words that a person finds in the papers: it is quoted when constraints contradict each other. */
  readonly name: string;
  readonly terms: readonly LinearTerm[];
  readonly low: number;
  readonly high: number;
}

export interface Region {
  readonly variables: readonly RegionVariable[];
  readonly constraints: readonly RegionConstraint[];
}

/** constant + sum of coefficient * variable. */
export interface LinearForm {
  readonly constant: number;
  readonly terms: readonly LinearTerm[];
}

/**
 * One end of a figure over all possible histories.
 *
 * `exact`: no possible history goes further than `value` by more than the stated tolerance, and the
 * witness reaches it. `enclosure`: no possible history goes further than `value`, but whether one
 * gets there is not settled; the witness is the furthest history found.
 */
export interface End {
  readonly value: number;
  readonly proven: 'exact' | 'enclosure';
  /** A possible history that gives this end (exact) or comes closest (enclosure): one value per variable. */
  readonly witness: readonly number[];
}

export interface Extremes {
  readonly low: End;
  readonly high: End;
}

/** Everything is settled: one possible history, without variables. */
export const SETTLED: Region = { variables: [], constraints: [] };
