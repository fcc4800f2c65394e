import { secondsFromHours } from '../foundation/convert.ts';
import type { Day } from '../foundation/day.ts';
import { STANDINGS, type Standing } from './document.ts';
import { choose, type FormOf, number, rounded, valueIn } from './expression/index.ts';
import type { Leaf, Tree } from './limit.ts';
import type { DueAt, Left } from './model.ts';

/** How near a limit is: the four steps a limit alone can tell apart, in the fixed order. */
export type Nearness = 'not yet due' | 'soon due' | 'due' | 'overdue';
export const badness = (s: Standing): number => STANDINGS.indexOf(s);
export const worseOf = (a: Standing, b: Standing): Standing => (badness(a) >= badness(b) ? a : b);

/** Standing of one limit: `at` L is due at L and overdue past it; `more than` L is neither at L and overdue past it. */
export function nearness(left: number, is: 'at' | 'more than', scale: number): Nearness {
  const r = rounded(left);
  if (r < 0) return 'overdue';
  if (r === 0 && is === 'at') return 'due';
  return rounded(r * scale) <= 1 ? 'soon due' : 'not yet due';
}

export interface Held {
  readonly leaf: Leaf;
  readonly left: number;
  readonly nearness: Nearness;
  /** Figure on the shop's yardstick, for choosing which governs. */
  readonly scaled: number;
  /** The carrier's hours until then where the formula was flown out; null: never at this mix. */
  readonly hours?: number | null;
}

/** Every limit that can govern in one possible history: the one that does first, then the others of a "whichever comes first". */
export function hold(t: Tree, forms: FormOf, history: readonly number[]): readonly Held[] {
  if (t.kind === 'leaf') {
    const left = rounded(valueIn(t.margin, forms, history));
    const scaled = left * t.scale;
    return [{ leaf: t, left, nearness: nearness(left, t.is, t.scale), scaled }];
  }
  if (t.kind === 'when') {
    const yes = valueIn(choose(t.when, number(1), number(0)), forms, history) === 1;
    return hold(yes ? t.yes : t.no, forms, history);
  }
  const held = t.of.map((x) => hold(x, forms, history));
  const order = [...held].sort((a, b) => {
    const d = badness(b[0]!.nearness) - badness(a[0]!.nearness) || a[0]!.scaled - b[0]!.scaled;
    return t.kind === 'first' ? d : -d;
  });
  return t.kind === 'first' ? order.flat() : order[0]!;
}

/** The carrier's hours until a limit is used up, at the stated mix; null where flying does not use it up. */
const hoursLeft = (h: Held): number | null =>
  h.hours !== undefined ? h.hours : h.leaf.perHour > 0 ? h.left / h.leaf.perHour : null;

export interface Due {
  readonly dueAt: DueAt;
  readonly left: Left;
  /** The carrier's hours until the reading; null where flying does not bring it. */
  readonly hours: number | null;
}

/**
 * The reading at which it falls due, with what is left. Of a "whichever comes first" the reading and the date
 * both stand, each on its own axis.
 */
export function dueOf(
  held: readonly Held[],
  carrier: { readonly total_s: number | null; readonly landings: number | null },
  landingsPerHour: number,
): Due {
  const governs = held[0]!;
  const flying = held
    .filter((h) => hoursLeft(h) !== null && !h.leaf.now)
    .sort((a, b) => hoursLeft(a)! - hoursLeft(b)!)[0];
  const calendar = held.filter((h) => h.leaf.day !== null).sort((a, b) => a.left - b.left)[0];
  const hours = flying ? hoursLeft(flying)! : null;
  const now = governs.leaf.now;
  const byLandings = flying?.leaf.meter === 'landings';
  const more = byLandings ? (flying.leaf.unit === 'landings' ? flying.left : hours! * landingsPerHour) : null;
  const dueAt: DueAt = {
    total_s:
      hours !== null && !byLandings && carrier.total_s !== null
        ? Math.max(0, Math.floor(carrier.total_s + secondsFromHours(hours)))
        : null,
    landings:
      more !== null && carrier.landings !== null ? Math.max(0, Math.floor(carrier.landings + more + 1e-6)) : null,
    day: calendar ? (calendar.leaf.day as Day) : null,
    now,
  };
  const left: Left = {
    value: governs.left,
    unit: governs.leaf.unit,
    hours_s: now ? 0 : hours === null ? null : byLandings ? null : secondsFromHours(hours),
    landings: now ? null : more === null ? null : Math.floor(more + 1e-6),
    limit: governs.leaf.words,
  };
  return { dueAt, left, hours };
}
