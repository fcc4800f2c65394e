import { NotPlain } from '../../record/index.ts';
import { rounded } from '../expression/index.ts';
import { hoursUntil } from '../flown-out.ts';
import { standingOf } from '../judge.ts';
import type { LineEnd } from '../line.ts';
import { badness, dueOf, type Held, nearness } from '../standing.ts';
import type { SwiftAction } from './compile.ts';
import type { SwiftLeaf } from './leaf.ts';
import { factsOn, type SwiftLife } from './life.ts';
import { rateOf } from './rate.ts';

export type SwiftTree = SwiftLeaf | { readonly kind: 'first' | 'later'; readonly of: readonly SwiftTree[] };
type Side = 'worst' | 'best';
/** What is left of a limit in one history. */
type Pick = (leaf: SwiftLeaf) => number;

export const leavesOf = (t: SwiftTree): SwiftLeaf[] => (t.kind === 'leaf' ? [t] : t.of.flatMap(leavesOf));
const yardstick = (leaf: SwiftLeaf, side: Side): number => (side === 'worst' ? (leaf.steep ?? leaf.scale) : leaf.scale);

function figure(t: SwiftTree, pick: Pick, side: Side): number {
  if (t.kind === 'leaf') return yardstick(t, side) * pick(t);
  const all = t.of.map((x) => figure(x, pick, side));
  return t.kind === 'first' ? Math.min(...all) : Math.max(...all);
}

/** As `hold`: the limit that governs, then the others of a "whichever comes first". */
function hold(t: SwiftTree, pick: Pick, side: Side): Held[] {
  if (t.kind === 'leaf') {
    const left = rounded(pick(t));
    const scale = yardstick(t, side);
    return [
      {
        leaf: scale === t.scale ? t : { ...t, scale },
        left,
        nearness: nearness(left, t.is, scale),
        scaled: left * scale,
      },
    ];
  }
  const held = t.of.map((x) => hold(x, pick, side));
  held.sort((a, b) => {
    const d = badness(b[0]!.nearness) - badness(a[0]!.nearness) || a[0]!.scaled - b[0]!.scaled;
    return t.kind === 'first' ? d : -d;
  });
  return t.kind === 'first' ? held.flat() : held[0]!;
}

const FAR_H = 10_000_000;
/** Hours of the carrier until a counted limit is used up: straight for a weighted sum, flown out else. */
function flownOut(h: Held, a: SwiftAction, life: SwiftLife): Held {
  if (!h.leaf.counts || h.left <= 0) return h;
  const { expression, facts, linear } = a.counting!;
  if (!linear) return { ...h, hours: hoursUntil(expression, factsOn(life, facts, life.asked.day), life.mix, h.left) };
  const rate = rateOf(a, life, life.mix);
  const hours = rate > 0 ? h.left / rate : Number.POSITIVE_INFINITY;
  return { ...h, hours: hours <= FAR_H ? hours : null };
}

function endAt(t: SwiftTree, pick: Pick, side: Side, a: SwiftAction, life: SwiftLife, done: boolean): LineEnd {
  const held = hold(t, pick, side);
  const carrier = { total_s: life.now.total_s, landings: life.now.landings };
  const due = dueOf(
    held.map((h) => flownOut(h, a, life)),
    carrier,
    life.landingsAhead,
  );
  return { standing: standingOf(held[0]!.nearness, done), dueAt: due.dueAt, left: due.left };
}

const TINY = 1e-9;
/**
 * One end of a tree of limits of which at most one is open. Where that one governs, its end is the end. Where another
 * governs whatever the open one is, any history will do only if all of them give the same answer.
 * @throws NotPlain
 */
export function endOf(t: SwiftTree, side: Side, a: SwiftAction, life: SwiftLife, done: boolean): LineEnd {
  const open = leavesOf(t).filter((l) => l.high - l.low > TINY);
  if (open.length === 0) return endAt(t, (l) => l.low, side, a, life, done);
  const at = (value: (leaf: SwiftLeaf) => number) => endAt(t, value, side, a, life, done);
  if (open.length > 1) throw new NotPlain('two limits that are open');
  const only = open[0]!;
  const value = side === 'worst' ? only.low : only.high;
  const set =
    (x: number): Pick =>
    (l) =>
      l === only ? x : l.low;
  const found = at(set(value));
  const own = yardstick(only, side) * value;
  const whole = figure(t, set(value), side);
  const inward = (side === 'worst' ? 1 : -1) * Math.min(1e-3, only.high - only.low);
  const moves = Math.abs(figure(t, set(value + inward), side) - whole) > TINY;
  if (Math.abs(own - whole) <= TINY && moves) return found;
  // Another limit governs here: the open one may lie anywhere between this end and where it would take over.
  const edge = whole / yardstick(only, side);
  const other =
    side === 'worst' ? Math.min(only.high, Math.max(value, edge)) : Math.max(only.low, Math.min(value, edge));
  for (const x of [other, only.low, only.high])
    if (Math.abs(figure(t, set(x), side) - whole) <= TINY && !same(found, at(set(x))))
      throw new NotPlain('a date that hangs on a history the standing leaves open');
  return found;
}

const same = (a: LineEnd, b: LineEnd): boolean =>
  a.standing === b.standing &&
  a.dueAt.total_s === b.dueAt.total_s &&
  a.dueAt.landings === b.dueAt.landings &&
  a.dueAt.day === b.dueAt.day &&
  a.left?.value === b.left?.value &&
  a.left?.unit === b.left?.unit &&
  a.left?.hours_s === b.left?.hours_s &&
  a.left?.landings === b.left?.landings &&
  a.left?.limit === b.left?.limit;
