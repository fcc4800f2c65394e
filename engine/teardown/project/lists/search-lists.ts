import { listSearch } from './list-search.ts';
import type { ListAnswer, ListQuestion } from './question.ts';

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
