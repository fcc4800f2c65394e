import { alone, earliestTimes, endAfter } from './ahead.ts';
import type { Problem } from './problem.ts';

const MOST_ORDERS = 5;
/** Of the sums of work from a head on, so many of the latest are followed to the end. */
const FOLLOWED = 3;

/**
 * A time before which no schedule ends, minutes of the clock.
 *
 * What: the greatest of three. The critical path with calendars, hands without limit; the work that only certain persons
 * can do over the time that they are there, with the least that must come before and after; the stays in a jig that
 * alone fits, one after the other in their best order.
 * How: each leaves out what the others count, so none is above the least end.
 * Not valid for: nothing is proven of what was planned "as if" by a finding, beyond what the finding says.
 */
export function boundOf(problem: Problem): number {
  if (problem.count === 0) return 0;
  const early = earliestTimes(problem);
  const path = Math.max(...early.end);
  return Math.max(path, ...crewBounds(problem, early.start), ...jigBounds(problem, early.start));
}

/** Sets of persons who alone can do some work, and everybody. */
function crewBounds(problem: Problem, early: Float64Array): number[] {
  const { hands, minutes, off, count } = problem;
  const sets = new Map<string, number[]>();
  const everybody = off.map((_, p) => p);
  sets.set(everybody.join(), everybody);
  for (const { able, persons } of hands) {
    const set = Array.from(able).sort((a, b) => a - b);
    if (persons > 0) sets.set(set.join(), set);
  }
  return [...sets.values()].flatMap((set) => {
    const own = new Set(set);
    const theirs: number[] = [];
    for (let i = 0; i < count; i++)
      if (hands[i]!.persons > 0 && minutes[i]! > 0 && hands[i]!.able.every((p) => own.has(p))) theirs.push(i);
    const parties = [...new Set(theirs.map((i) => hands[i]!.persons))];
    return [...new Set([1, ...parties])].map((party) => crewBound(problem, set, theirs, early, party));
  });
}

/** Counted in parties of so many: of three persons one party of two, so that what takes two goes one after the other. */
function crewBound(
  problem: Problem,
  set: readonly number[],
  all: readonly number[],
  early: Float64Array,
  party: number,
): number {
  const { calendar, minutes, hands } = problem;
  const done = workedBy(problem, set, party);
  const theirs = all.filter((i) => hands[i]!.persons >= party);
  const late = [...theirs].sort((a, b) => early[b]! - early[a]!);
  let content = 0;
  const ends: { at: number; among: number }[] = [];
  late.forEach((op, k) => {
    content += minutes[op]! * Math.floor(hands[op]!.persons / party);
    if (k + 1 < late.length && early[late[k + 1]!] === early[op]) return;
    const w = done(calendar.toWork(early[op]!), content);
    ends.push({ at: w <= calendar.whole ? calendar.endOf(w) : calendar.endOf(calendar.whole), among: k + 1 });
  });
  const followed = ends.sort((a, b) => b.at - a.at).slice(0, FOLLOWED);
  return Math.max(0, ...followed.map(({ at, among }) => endOfLast(problem, late.slice(0, among), at)));
}

/** One of these ends at this time or later: the least that still follows. */
function endOfLast(problem: Problem, these: readonly number[], at: number): number {
  const own = new Set(these);
  const last = these.filter((i) => !Array.from(problem.behind[i]!).some((n) => own.has(n) && problem.minutes[n]! > 0));
  return Math.min(...last.map((i) => endAfter(problem, i, at)));
}

/** Working minute by which the parties of a set of persons have done so much work from a minute on. */
function workedBy(
  { off, calendar }: Problem,
  set: readonly number[],
  party: number,
): (from: number, content: number) => number {
  const changes = new Map<number, number>();
  const add = (at: number, by: number) => changes.set(at, (changes.get(at) ?? 0) + by);
  for (const p of set)
    for (let i = 0; i < off[p]!.from.length; i++) {
      add(off[p]!.from[i]!, -1);
      add(off[p]!.to[i]!, 1);
    }
  const rising = [...changes].sort((a, b) => a[0] - b[0]);
  return (from, content) => {
    let there = set.length;
    let at = from;
    let left = content;
    for (const [when, by] of rising) {
      const parties = Math.floor(there / party);
      if (when > at) {
        if (parties > 0 && left <= parties * (when - at)) return at + Math.ceil(left / parties);
        left -= parties * (when - at);
        at = when;
      }
      there += by;
    }
    const parties = Math.floor(there / party);
    return parties > 0 ? at + Math.ceil(left / parties) : calendar.whole + 1;
  };
}

/** Stays in a jig that has no other beside it. */
function jigBounds(problem: Problem, early: Float64Array): number[] {
  const { stays, jigs } = problem;
  return jigs.map((_, j) => {
    const mine = stays.flatMap((s, n) => (s.jigs.length === 1 && s.jigs[0] === j ? [n] : []));
    if (mine.length < 2 || mine.length > MOST_ORDERS) return 0;
    return Math.min(...ordersOf(mine).map((order) => inTurn(problem, order, early)));
  });
}
function inTurn(problem: Problem, order: readonly number[], early: Float64Array): number {
  const { stays, before } = problem;
  let free = 0;
  let last = 0;
  for (const s of order) {
    const { members } = stays[s]!;
    const own = new Set(members);
    const end = new Map<number, number>();
    for (const op of problem.order) {
      if (!own.has(op)) continue;
      let at = Math.max(free, early[op]!);
      for (const p of before[op]!) at = Math.max(at, end.get(p) ?? 0);
      end.set(op, alone(problem, op, at).end);
    }
    free = Math.max(free, ...end.values());
    last = Math.max(last, endOfLast(problem, members, free));
  }
  return last;
}
function ordersOf(items: readonly number[]): number[][] {
  if (items.length < 2) return [[...items]];
  return items.flatMap((item) => ordersOf(items.filter((x) => x !== item)).map((rest) => [item, ...rest]));
}
