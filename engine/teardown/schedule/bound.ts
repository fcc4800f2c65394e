import { alone, earliestTimes, endAfter } from './ahead.ts';
import { type Party, partiesOf } from './parties.ts';
import type { Problem } from './problem.ts';

const MOST_ORDERS = 5;
/** Of the sums of work from a head on, so many of the latest are followed to the end. */
const FOLLOWED = 3;
/** With more operations what must be done before each is not added up: the bound is plainer. */
const MOST_ADDED = 1500;

/**
 * A time before which no schedule ends, minutes of the clock.
 *
 * What: the greatest of three. The path of needs with calendars, on which an operation waits as well for the sum of the
 * work that must be done before it by those who alone can do it; the sum of such work with the least that must come
 * before and after; the stays in a jig that alone fits, one after the other in their best order.
 * How: each leaves out what the others count, so none is above the least end. Persons who may not work because they are to
 * inspect are counted as if they might.
 * Not valid for: more than the findings say where something was planned "as if".
 */
export function boundOf(problem: Problem): number {
  if (problem.count === 0) return 0;
  const parties = partiesOf(problem);
  const early = earliestTimes(problem, problem.count <= MOST_ADDED ? workBefore(problem, parties) : undefined);
  const sums = parties.map((party) => crewBound(problem, party, early.start));
  return Math.max(...early.end, ...sums, ...jigBounds(problem, early.start));
}

/** When the work that must be done before an operation can be done at the soonest. */
function workBefore(problem: Problem, parties: readonly Party[]) {
  const { before, calendar, count } = problem;
  const words = (count + 31) >> 5;
  const ahead = new Int32Array(count * words);
  return (op: number, start: Float64Array): number => {
    const row = op * words;
    for (const p of before[op]!) {
      for (let w = 0; w < words; w++) ahead[row + w]! |= ahead[p * words + w]!;
      ahead[row + (p >> 5)]! |= 1 << (p & 31);
    }
    if (before[op]!.length < 2) return 0;
    const all: number[] = [];
    for (let i = 0; i < count; i++) if (ahead[row + (i >> 5)]! & (1 << (i & 31))) all.push(i);
    all.sort((a, b) => start[b]! - start[a]!);
    let latest = 0;
    for (const { content, doneBy } of parties) {
      let sum = 0;
      for (let k = 0; k < all.length; k++) {
        sum += content[all[k]!]!;
        const last = k + 1 === all.length || start[all[k + 1]!] !== start[all[k]!];
        if (sum > 0 && last) latest = Math.max(latest, doneBy(calendar.toWork(start[all[k]!]!), sum));
      }
    }
    return latest > 0 ? calendar.endOf(Math.min(latest, calendar.whole)) : 0;
  };
}

function crewBound(problem: Problem, { content, doneBy }: Party, early: Float64Array): number {
  const { calendar } = problem;
  const late = Array.from(content.keys())
    .filter((i) => content[i]! > 0)
    .sort((a, b) => early[b]! - early[a]!);
  let sum = 0;
  const ends: { at: number; among: number }[] = [];
  late.forEach((op, k) => {
    sum += content[op]!;
    if (k + 1 < late.length && early[late[k + 1]!] === early[op]) return;
    ends.push({ at: doneBy(calendar.toWork(early[op]!), sum), among: k + 1 });
  });
  const followed = ends.sort((a, b) => b.at - a.at).slice(0, FOLLOWED);
  return Math.max(
    0,
    ...followed.map(({ at, among }) =>
      endOfLast(problem, late.slice(0, among), calendar.endOf(Math.min(at, calendar.whole))),
    ),
  );
}

/** One of these ends at this time or later: the least that still follows. */
function endOfLast(problem: Problem, these: readonly number[], at: number): number {
  const own = new Set(these);
  const last = these.filter((i) => !Array.from(problem.behind[i]!).some((n) => own.has(n) && problem.minutes[n]! > 0));
  return Math.min(...last.map((i) => endAfter(problem, i, at)));
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
