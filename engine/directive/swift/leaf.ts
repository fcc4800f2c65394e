import { SECONDS_PER_HOUR } from '../../foundation/convert.ts';
import { addDays, addMonths, type Day, dayNumber, daysBetween } from '../../foundation/day.ts';
import { beforeCut, NotPlain } from '../../record/index.ts';
import type { Limit } from '../document.ts';
import { evaluate, number } from '../expression/index.ts';
import type { Leaf } from '../limit.ts';
import type { SwiftAction } from './compile.ts';
import { type Ends, linearEnds } from './ends.ts';
import { factsOn, happened, type SwiftLife } from './life.ts';
import { rateOf, soonOf } from './rate.ts';

/** A limit of one part: what is left of it at both ends of the possible histories. */
export interface SwiftLeaf extends Leaf, Ends {}
type Simple = Exclude<Limit, { first_of: Limit[] } | { later_of: Limit[] } | { when: string }>;

const NOTHING = number(0);
const NONE: readonly number[] = [];
export const exact = (x: number): Ends => ({ low: x, high: x, papers: NONE });

/** The limit as `leafOf` makes it, with its ends in closed form. Null: nothing has started its clock. @throws NotPlain */
export function leafOf(limit: Simple, a: SwiftAction, life: SwiftLife, start: Day): SwiftLeaf | null {
  const { asked, thing } = life;
  const { policy } = asked;
  const words = a.words.get(limit) ?? '';
  const is = 'is' in limit ? limit.is : 'at';
  if ('on' in limit) return calendar(words, is, limit.on as Day, life);
  if ('before_further_flight' in limit) {
    const [h, n] = [flownSince(life, start, 'hours'), flownSince(life, start, 'landings')];
    const flown = { low: h.low + n.low, high: h.high + n.high, papers: [...h.papers, ...n.papers] };
    return leaf(words, is, 0, flown, { scale: 1, unit: 'h', perHour: 1, now: true, meter: 'hours' });
  }
  if ('next_inspection' in limit) throw new NotPlain('it counts inspections');
  const origin = 'since' in limit && limit.since !== undefined ? limit.since : 'new';
  const looked = happened(origin, a.directive, thing);
  const point = looked ?? (typeof origin === 'object' && 'last_look' in origin ? 'new' : null);
  if (point === null) return null;
  if ('days' in limit || 'months' in limit) {
    const from = point === 'new' ? thing.built : point;
    if (from === null) return calendar(words, is, start, life);
    return calendar(words, is, 'days' in limit ? addDays(from, limit.days) : monthsAfter(from, limit.months), life);
  }
  if ('hours_h' in limit) {
    const axis = { scale: 1 / policy.soon_h, unit: 'h', perHour: 1, now: false, meter: 'hours' } as const;
    return leaf(words, is, limit.hours_h, flownSince(life, point, 'hours'), axis);
  }
  if ('landings' in limit) {
    const scale = 1 / policy.soon_landings;
    const axis = { scale, unit: 'landings', perHour: life.landingsAhead, now: false, meter: 'landings' } as const;
    return leaf(words, is, limit.landings, flownSince(life, point, 'landings'), axis);
  }
  const counted = countedSince(a, life, point);
  const { scale, steep } = soonOf(a, life);
  const perHour = Math.max(0, rateOf(a, life, life.mix));
  const meter = a.action.counts?.unit === 'landings' ? 'landings' : 'hours';
  return leaf(words, is, limit.counted, counted, { scale, steep, unit: 'counted', perHour, now: false, meter });
}

/** A limit less what has been used of it. */
function leaf(
  words: string,
  is: Leaf['is'],
  limit: number,
  used: Ends,
  axis: Pick<Leaf, 'scale' | 'steep' | 'unit' | 'perHour' | 'now' | 'meter'>,
): SwiftLeaf {
  const { scale, unit, perHour, now, meter } = axis;
  const [low, high] = [limit - used.high, limit - used.low];
  const steep = axis.steep ?? scale;
  const [counts, papers] = [unit === 'counted', used.papers];
  return {
    kind: 'leaf',
    margin: NOTHING,
    low,
    high,
    papers,
    scale,
    steep,
    is,
    unit,
    perHour,
    day: null,
    now,
    meter,
    counts,
    words,
    entry: null,
  };
}

export function calendar(words: string, is: Leaf['is'], day: Day, life: SwiftLife): SwiftLeaf {
  const left = daysBetween(life.asked.day, day);
  const scale = 1 / life.asked.policy.soon_days;
  const steep = scale;
  return {
    kind: 'leaf',
    margin: NOTHING,
    low: left,
    high: left,
    papers: NONE,
    scale,
    steep,
    is,
    unit: 'days',
    perHour: 0,
    day,
    now: false,
    meter: null,
    counts: false,
    words,
    entry: null,
  };
}

const kept = new Map<string, Day>();
/** Months are found by the calendar, each pair once. */
function monthsAfter(day: Day, months: number): Day {
  const key = `${day} ${months}`;
  let found = kept.get(key);
  if (!found) {
    if (kept.size > 20_000) kept.clear();
    found = addMonths(day, months);
    kept.set(key, found);
  }
  return found;
}

/** Hours or landings flown since the end of a day. */
function flownSince(life: SwiftLife, point: Day | 'new', what: 'hours' | 'landings'): Ends {
  const { sums, now, asked } = life;
  const unit = what === 'hours' ? SECONDS_PER_HOUR : 1;
  const all = (what === 'hours' ? now.total_s : now.landings) / unit;
  if (point === 'new') return exact(all);
  const day = point > asked.day ? asked.number : dayNumber(point);
  const was = life.at(day);
  const then = (what === 'hours' ? was.total_s : was.landings) / unit;
  if (was.cut < 0) return exact(all - then);
  const cut = beforeCut(sums, was.cut, day, asked.policy);
  const [low, high] = what === 'hours' ? cut.hours_s : cut.landings;
  return { low: all - then - high / unit, high: all - then - low / unit, papers: low < high ? [was.cut] : [] };
}

/** The directive's counted figure since a day. @throws NotPlain */
function countedSince(a: SwiftAction, life: SwiftLife, point: Day | 'new'): Ends {
  const { expression, facts, linear, terms } = a.counting!;
  const { asked } = life;
  const then = point === 'new' ? null : point > asked.day ? asked.day : point;
  if (linear) return linearEnds(linear, terms, life, then);
  const now = evaluate(expression, factsOn(life, facts, asked.day));
  return exact(then === null ? now : now - evaluate(expression, factsOn(life, facts, then)));
}
