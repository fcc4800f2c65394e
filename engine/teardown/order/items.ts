/** A thing to be done, its minutes, where it is reached from and with what. */
export interface OrderItem {
  readonly minutes: number;
  readonly face: 'upper' | 'lower' | 'either';
  readonly tools: readonly string[];
  /** Places in the list of which one of each clause must come first. */
  readonly clauses: readonly (readonly number[])[];
  /** Minutes at stake until it is done: chance of a finding times the work that a finding changes. */
  readonly weight: number;
}
export interface OrderTerms {
  readonly flip_min: number;
  readonly toolChange_min: number;
  /** How the wing lies, and what is at hand, at the start; absent: as the first step wants it. */
  readonly face?: 'upper' | 'lower';
  readonly tools?: readonly string[];
}
export interface BestOrder {
  readonly order: readonly number[];
  /** Minutes of flips and tool changes, and of what is at stake by the share of the work done before it is known. */
  readonly cost: number;
  /** No order costs less. */
  readonly bound: number;
  readonly proven: boolean;
  readonly flips: number;
  readonly toolChanges: number;
}
