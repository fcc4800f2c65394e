import { Refusal } from '../../foundation/refusal.ts';
import type { AndOrProblem, LeastSet } from '../model.ts';
import { Chain } from './chain.ts';
import { type Found, Improver } from './improve.ts';
import { netOf } from './net.ts';
import { type Core, reduce } from './reduce.ts';
import { requireSound } from './require.ts';
import { Search } from './search.ts';

export interface LeastOptions {
  /** Counted effort: millions of entries of the search's table touched. The same effort gives the same answer. */
  readonly effort?: number;
  /** Asked now and then; the search ends where it answers false. */
  readonly keepGoing?: () => boolean;
}
const EFFORT = 400;

const greatestCommon = (a: number, b: number): number => (b === 0 ? Math.abs(a) : greatestCommon(b, a % b));

/** A first good set of a core. */
function firstOf(core: Core, goOn: () => boolean): Found {
  const improver = new Improver(core);
  const { cost } = core.net;
  const plain = improver.derive((j) => Math.max(0, cost[j]!))!;
  const paying = improver.addWhatPays(plain);
  return improver.addWhatPays(improver.around(paying, 40, goOn));
}

/**
 * The set of least cost that holds all targets and can be done one after the other: each thing after one of each of its
 * clauses.
 *
 * What cannot matter is taken away first (`reduce`). The rest is a zero-one program with a row a clause, solved by branch
 * and cut: the rows against loops, and stronger ones, come from forward chaining (`Cuts`), the bound is computed anew from
 * the rows and rounded up to whole costs. Good sets come from cheap derivations. What is returned was chained forward.
 *
 * Not valid for costs that depend on the order (flips, tool changes) or on one another. Where the effort ends before the
 * proof does, `proven` is false and `bound` says what no set can be below.
 *
 * @param problem whole costs, cents, below zero where a thing pays; targets by number, twice is once
 * @param options effort, or a clock handed in; with a clock the answer may differ from run to run
 * @returns the set, its cost, and a bound equal to it where it is proven
 * @throws Refusal `teardown.unreachable`, `teardown.problem-unsound`
 * @see AND/OR precedence: Möhring, Skutella, Stork, SIAM J. Comput. 33 (2004) 393-415, abstract; the least set is NP-hard
 */
export function leastSet(problem: AndOrProblem, options: LeastOptions = {}): LeastSet {
  requireSound(problem);
  const keepGoing = options.keepGoing ?? (() => true);
  const effort = 1e6 * (options.effort ?? EFFORT);
  const reduced = reduce(problem.cost, problem.clauses, problem.targets);
  if (!reduced) throw unreachable(problem);
  const { core, given, paid } = reduced;
  const done = (chosen: readonly number[], cost: number, bound: number): LeastSet => ({
    chosen: [...chosen].sort((a, b) => a - b),
    cost,
    bound,
    proven: bound >= cost,
  });
  if (core.net.things === 0) return done(given, paid, paid);
  const grain = core.net.cost.reduce(greatestCommon, 0) || 1;
  const first = firstOf(core, keepGoing);
  const searched = new Search(core, first, grain, (touched) => touched < effort && keepGoing()).run();
  const chosen = [...given];
  for (let j = 0; j < core.net.things; j++) if (searched.found.chosen[j]) chosen.push(...core.names[j]!);
  return done(chosen, paid + searched.found.cost, paid + searched.bound);
}

function unreachable(problem: AndOrProblem): Refusal {
  const chain = new Chain(netOf(problem.cost, problem.clauses));
  chain.run(new Uint8Array(problem.cost.length).fill(1));
  const never = problem.targets.filter((t) => !chain.joined[t]);
  return new Refusal('teardown.unreachable', {
    given: `${never.join(', ')} to be reached`,
    allowed: 'a target that can be reached step by step, each step after what it needs',
    remedy: 'Give what stands in the way another way, or correct the loop',
  });
}

/**
 * The chosen things in an order that can be done, each after one of each of its clauses.
 *
 * @returns null where some of them cannot be done with these alone
 */
export function orderOf(problem: AndOrProblem, chosen: readonly number[]): number[] | null {
  const chain = new Chain(netOf(problem.cost, problem.clauses));
  const allowed = new Uint8Array(problem.cost.length);
  for (const j of chosen) allowed[j] = 1;
  chain.run(allowed);
  return chain.count === new Set(chosen).size ? [...chain.order.subarray(0, chain.count)] : null;
}
