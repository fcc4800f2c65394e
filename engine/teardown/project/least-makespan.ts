import { lowerBounds } from './bound/lower-bounds.ts';
import { coarser } from './coarser.ts';
import { listSearch } from './lists/list-search.ts';
import type { Project } from './model.ts';
import { prover } from './prove/prover.ts';
import { listBy, PRIORITY_RULES, priorities } from './schedule/rules.ts';
import { swiftDecoder } from './schedule/swift.ts';

export interface LeastMakespanOptions {
  readonly seed: number;
  /** Lists decoded, and as much again by the proof: an eighth of the jobs it looks at. 20,000 without a word. */
  readonly effort?: number;
  /** Asked now and then; false ends the search with the best so far. The only way in which time may come in. */
  readonly keepGoing?: () => boolean;
  readonly onBetter?: (makespan: number, bound: number) => void;
}
export interface LeastMakespan {
  /** Start of each job. */
  readonly starts: Int32Array;
  readonly makespan: number;
  /** No schedule is shorter. Equal to the makespan where it is proven. */
  readonly bound: number;
  readonly proven: boolean;
  /** What was spent, in the unit of the option. */
  readonly effort: number;
}

const EFFORT = 20_000;
/** Steps of the proof that count as one list. */
const STEPS = 8;
const FIRST = 250;
const LARGEST = 4000;
/** The proof keeps a figure for every job and unit of time. */
const PROOF_ROOM = 400_000;

/**
 * The shortest schedule of a project under precedence and limited resources, or the best one found with a bound.
 *
 * By turns: a genetic search over lists, each decoded in series and justified twice, and a proof that raises the bound by
 * learning from contradictions and hands over what it finds. Ends at once when both meet. The same project, seed and
 * effort give the same answer, unless `keepGoing` ends it earlier.
 *
 * Not valid for jobs that may be interrupted or done in several ways. Projects of more than 400,000 jobs times units of
 * time (after division by the greatest common divisor of the times) are searched without the proof.
 *
 * @returns start of each job and the makespan in the units of the project; the bound in the same; whether it is proven
 */
export function leastMakespan(given: Project, options: LeastMakespanOptions): LeastMakespan {
  const { project, unit } = coarser(given);
  const swift = swiftDecoder(project);
  const effort = options.effort ?? EFFORT;
  const keepGoing = options.keepGoing ?? (() => true);
  const search = listSearch({
    count: project.count,
    before: project.predecessors,
    urgency: priorities(project, 'LFT'),
    first: PRIORITY_RULES.map((rule) => listBy(project, priorities(project, rule))),
    decode: swift.decode,
    seed: options.seed,
    keepGoing,
    onBetter: (makespan) => options.onBetter?.(makespan * unit, bound * unit),
  });
  let bound = 0;
  search.run(PRIORITY_RULES.length, 0);
  bound = lowerBounds(project, search.makespan).best;
  search.run(Math.min(FIRST, effort) - PRIORITY_RULES.length, bound);
  let starts = startsOf(search.list);
  let { makespan } = search;
  let spent = search.decoded;
  if (makespan > bound && spent < effort && project.count * makespan <= PROOF_ROOM) {
    const proof = prover(project, starts, makespan, bound);
    for (let slice = FIRST; !proof.proven && spent < effort && keepGoing(); slice = Math.min(slice * 2, LARGEST)) {
      proof.run(STEPS * Math.min(slice, effort - spent), keepGoing);
      if (proof.makespan < search.makespan) {
        search.offer(listOf(proof.starts), proof.makespan);
        options.onBetter?.(proof.makespan * unit, proof.bound * unit);
      }
      spent = search.decoded + Math.ceil(proof.steps / STEPS);
      if (proof.proven || spent >= effort) break;
      search.run(Math.min(slice, effort - spent), proof.bound);
      if (search.makespan < proof.makespan) proof.improve(startsOf(search.list), search.makespan);
      spent = search.decoded + Math.ceil(proof.steps / STEPS);
    }
    ({ starts, makespan, bound } = proof);
  } else {
    search.run(effort - spent, bound);
    ({ makespan } = search);
    starts = startsOf(search.list);
    spent = search.decoded;
  }
  return {
    starts: starts.map((s) => s * unit),
    makespan: makespan * unit,
    bound: bound * unit,
    proven: makespan === bound,
    effort: spent,
  };

  function startsOf(list: Int32Array): Int32Array {
    swift.serial(list);
    return swift.starts.slice();
  }
  function listOf(by: Int32Array): Int32Array {
    const place = new Int32Array(project.count);
    project.order.forEach((j, i) => {
      place[j] = i;
    });
    return Int32Array.from(project.order).sort((a, b) => by[a]! - by[b]! || place[a]! - place[b]!);
  }
}
