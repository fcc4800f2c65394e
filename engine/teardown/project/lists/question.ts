export interface ListQuestion {
  /** Jobs 0 to count - 1. */
  readonly count: number;
  /** Per job the jobs that stand before it in every list. */
  readonly before: readonly ArrayLike<number>[];
  /**
   * How good a list is, less is better. It may put the list into another order that keeps the precedence (the order
   * that its schedule has in truth); then the search goes on from that one.
   */
  decode(list: Int32Array): number;
  readonly seed: number;
  /** Lists that are decoded at most. */
  readonly effort: number;
  /** Per job a figure: the less, the earlier it rather stands in lists drawn at random. */
  readonly urgency?: ArrayLike<number>;
  /** Lists to begin with. */
  readonly first?: readonly ArrayLike<number>[];
  /** No list can be better: reaching it ends the search. */
  readonly bound?: number;
  /** Asked now and then; false ends the search with the best so far. */
  readonly keepGoing?: () => boolean;
  readonly onBetter?: (makespan: number, list: Int32Array) => void;
}
export interface ListAnswer {
  readonly list: Int32Array;
  readonly makespan: number;
  /** Lists that were decoded. */
  readonly effort: number;
}
