import { addDays, addMonths, type Day, daysBetween, later } from '../foundation/day.ts';
import type { Limit, Origin } from './document.ts';
import {
  add,
  type Condition,
  choose,
  type Expression,
  fact,
  largest,
  multiply,
  number,
  renameFacts,
  smallest,
  subtract,
} from './expression/index.ts';
import { landingsAhead } from './mix.ts';
import { type Point, placed, type Situation, type Whose } from './situation.ts';
import { conditionOf, expressionOf } from './vocabulary.ts';
import { limitInWords } from './words.ts';
import { openMixes, ratePerHour, soonCounted } from './yardstick.ts';

/** One limit, held on its own axis. `margin` is what is left in its own unit; `scale` makes 1 the shop's "soon". */
export interface Leaf {
  readonly kind: 'leaf';
  readonly margin: Expression;
  readonly scale: number;
  /** The same at the steepest use that the papers leave open: the yardstick of the worst end. Absent: as `scale`. */
  readonly steep?: number;
  readonly is: 'at' | 'more than';
  readonly unit: 'h' | 'landings' | 'days' | 'counted';
  /** Of the carrier's hours, how much of the limit one hour uses up; 0 if flying does not. */
  readonly perHour: number;
  readonly day: Day | null;
  readonly now: boolean;
  /** The meter that it is read on, if flying uses it up; true `counts` for the directive's own formula. */
  readonly meter: 'hours' | 'landings' | null;
  readonly counts: boolean;
  readonly words: string;
  readonly entry: string | null;
}
export type Tree =
  | Leaf
  | { readonly kind: 'first' | 'later'; readonly of: readonly Tree[] }
  | { readonly kind: 'when'; readonly when: Condition; readonly yes: Tree; readonly no: Tree };

const at = (e: Expression, whose: Whose, key: string): Expression => renameFacts(e, (n) => placed(whose, key, n));

/** The directive's counted figure at a moment of the part's life. */
export function countedAt(s: Situation, key: string): Expression | null {
  return s.action.counts ? at(expressionOf(s.action.counts.expression, s.vocabulary), 'part', key) : null;
}
export const conditionNow = (s: Situation, source: string): Condition => {
  const c = conditionOf(source, s.vocabulary);
  const carrier = choose(c, number(1), number(0));
  return (at(carrier, 'part', 'now') as Expression & { kind: 'choose' }).when;
};

/** Turns a limit into the tree that is held against the possible histories. Null: nothing has started its clock. */
export function treeOf(limit: Limit, s: Situation, warn: (text: string) => void): Tree | null {
  if ('first_of' in limit || 'later_of' in limit) {
    const list = 'first_of' in limit ? limit.first_of : limit.later_of;
    const of = list.flatMap((l) => treeOf(l, s, warn) ?? []);
    if (of.length === 0) return null;
    return of.length === 1 ? of[0]! : { kind: 'first_of' in limit ? 'first' : 'later', of };
  }
  if ('when' in limit) {
    const [yes, no] = [treeOf(limit.limit, s, warn), treeOf(limit.otherwise, s, warn)];
    if (!yes || !no) return yes ?? no;
    return { kind: 'when', when: conditionNow(s, limit.when), yes, no };
  }
  return leafOf(limit, s, warn);
}

type Simple = Exclude<Limit, { first_of: Limit[] } | { later_of: Limit[] } | { when: string }>;

function leafOf(limit: Simple, s: Situation, warn: (text: string) => void): Leaf | null {
  const words = limitInWords(limit, s.action);
  const base = {
    kind: 'leaf' as const,
    words,
    now: false,
    day: null,
    entry: null,
    meter: null,
    counts: false,
    is: 'is' in limit ? limit.is : ('at' as const),
  };
  if ('on' in limit) return calendar(base, limit.on as Day, s, null);
  if ('before_further_flight' in limit) {
    const flown = (n: string) =>
      subtract(fact(placed('part', s.start.key, n), true), fact(placed('part', 'now', n), true));
    const margin = add(flown('hours.total'), flown('landings.total'));
    return {
      ...base,
      margin,
      scale: 1,
      unit: 'h',
      perHour: 1,
      now: true,
      meter: 'hours',
      entry: s.start.entry ?? null,
    };
  }
  if ('next_inspection' in limit) {
    const name = `inspections.${limit.next_inspection}`;
    const since = subtract(
      fact(placed('aircraft', 'now', name), true),
      fact(placed('aircraft', s.start.key, name), true),
    );
    return { ...base, margin: subtract(number(1), multiply(number(2), since)), scale: 1, unit: 'counted', perHour: 0 };
  }
  const origin = 'since' in limit && limit.since !== undefined ? limit.since : 'new';
  const point = pointOf(origin, s, warn, words);
  if (point === null) return null;
  const entry = point === 'new' ? null : (point.entry ?? null);
  if ('days' in limit || 'months' in limit) {
    const from = point === 'new' ? s.built : point.day;
    if (from === null) {
      warn(`The day it was built is not on paper: ${words} counts as passed.`);
      return calendar(base, s.start.day, s, entry);
    }
    return calendar(base, 'days' in limit ? addDays(from, limit.days) : addMonths(from, limit.months), s, entry);
  }
  const used = (whose: Whose, name: string) =>
    point === 'new'
      ? fact(placed(whose, 'now', name), true)
      : subtract(fact(placed(whose, 'now', name), true), fact(placed(whose, point.key, name), true));
  if ('hours_h' in limit)
    return {
      ...base,
      entry,
      margin: subtract(number(limit.hours_h + s.extends_h), used(limit.of, 'hours.total')),
      scale: 1 / s.policy.soon_h,
      unit: 'h',
      meter: 'hours',
      perHour: 1,
    };
  const landings = landingsAhead(s.mix);
  if ('landings' in limit)
    return {
      ...base,
      entry,
      margin: subtract(number(limit.landings + s.extends_h * landings), used(limit.of, 'landings.total')),
      scale: 1 / s.policy.soon_landings,
      unit: 'landings',
      meter: 'landings',
      perHour: landings,
    };
  const now = countedAt(s, 'now')!;
  const counted = point === 'new' ? now : subtract(now, countedAt(s, point.key)!);
  const perHour = ratePerHour(s, s.mix);
  return {
    ...base,
    entry,
    margin: subtract(number(limit.counted + s.extends_h * perHour), counted),
    scale: 1 / soonCounted(s, s.mix),
    steep: 1 / Math.max(...[s.mix, ...openMixes(s)].map((mix) => soonCounted(s, mix))),
    unit: 'counted',
    counts: true,
    meter: s.action.counts?.unit === 'landings' ? 'landings' : 'hours',
    perHour,
  };
}

function calendar(
  base: Omit<Leaf, 'margin' | 'scale' | 'unit' | 'perHour'>,
  day: Day,
  s: Situation,
  entry: string | null,
): Leaf {
  return {
    ...base,
    entry,
    day,
    margin: number(daysBetween(s.day, day)),
    scale: 1 / s.policy.soon_days,
    unit: 'days',
    perHour: 0,
  };
}

function pointOf(origin: Origin, s: Situation, warn: (text: string) => void, words: string): Point | null {
  const found = s.point(origin);
  if (found) return found;
  if (typeof origin === 'object' && 'last_look' in origin) {
    warn(`No earlier look is on paper: ${words} is counted from new.`);
    return 'new';
  }
  return null;
}

/** The tree as the worst end is held: each limit on its steepest yardstick. The tree itself where none differs. */
export function steepest(t: Tree): Tree {
  if (t.kind === 'leaf') return t.steep === undefined || t.steep === t.scale ? t : { ...t, scale: t.steep };
  if (t.kind === 'when') {
    const [yes, no] = [steepest(t.yes), steepest(t.no)];
    return yes === t.yes && no === t.no ? t : { ...t, yes, no };
  }
  const of = t.of.map(steepest);
  return of.every((x, i) => x === t.of[i]) ? t : { ...t, of };
}

/** One figure for the whole tree: below 0 overdue, 0 at the limit, up to 1 soon. Its sign is exact, its size the shop's yardstick. */
export function scaled(t: Tree): Expression {
  if (t.kind === 'leaf') return multiply(number(t.scale), t.margin);
  if (t.kind === 'when') return choose(t.when, scaled(t.yes), scaled(t.no));
  return (t.kind === 'first' ? smallest : largest)(...t.of.map(scaled));
}
export const notBefore = (t: Tree, day: Day, s: Situation): Tree => ({
  kind: 'later',
  of: [
    t,
    calendar(
      { kind: 'leaf', words: `the effective date`, now: false, is: 'at', entry: null, day, meter: null, counts: false },
      later(day, s.day),
      s,
      null,
    ),
  ],
});
