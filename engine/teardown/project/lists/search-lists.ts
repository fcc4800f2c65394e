import { listSearch } from './list-search.ts';

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

/**
 * Looks for a good list of jobs under precedence, with the reader of a list handed in.
 *
 * Genetic: a population of lists, children from two places of two parents, small moves, what is better stays; begun
 * anew where it comes to rest. The same question with the same seed gives the same answer, unless `keepGoing` ends it.
 *
 * Not valid where `decode` answers differently for the same list. The best list is no proof: see the bound.
 *
 * @param question jobs, precedence (free of rings), decoder, seed, effort in lists decoded
 * @returns the best list found, its figure, what was decoded
 */
export function searchLists(question: ListQuestion): ListAnswer {
  const search = listSearch(question);
  search.run(question.effort, question.bound ?? Number.NEGATIVE_INFINITY);
  return { list: search.list.slice(), makespan: search.makespan, effort: search.decoded };
}
