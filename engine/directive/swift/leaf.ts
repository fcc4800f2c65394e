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
const sum = (a: Ends, b: Ends, k: number): Ends => ({
  low: a.low + (k > 0 ? k * b.low : k * b.high),
  high: a.high + (k > 0 ? k * b.high : k * b.low),
  papers: [...a.papers, ...b.papers],
});
export const exact = (x: number): Ends => ({ low: x, high: x, papers: [] });

/** The limit as `leafOf` makes it, with its ends in closed form. Null: nothing has started its clock. @throws NotPlain */
export function leafOf(limit: Simple, a: SwiftAction, life: SwiftLife, start: Day): SwiftLeaf | null {
  const { asked, thing } = life;
  const { policy } = asked;
  const base = {
    kind: 'leaf' as const,
    margin: NOTHING,
    words: a.words.get(limit) ?? '',
    now: false,
    day: null,
    entry: null,
    meter: null,
    counts: false,
    is: 'is' in limit ? limit.is : ('at' as const),
  };
  if ('on' in limit) return calendar(base, limit.on as Day, life);
  if ('before_further_flight' in limit) {
    const flown = sum(flownSince(life, start, 'hours'), flownSince(life, start, 'landings'), 1);
    return { ...base, ...sum(exact(0), flown, -1), scale: 1, unit: 'h', perHour: 1, now: true, meter: 'hours' };
  }
  if ('next_inspection' in limit) throw new NotPlain('it counts inspections');
  const origin = 'since' in limit && limit.since !== undefined ? limit.since : 'new';
  const looked = happened(origin, a.directive, thing);
  const point = looked ?? (typeof origin === 'object' && 'last_look' in origin ? 'new' : null);
  if (point === null) return null;
  if ('days' in limit || 'months' in limit) {
    const from = point === 'new' ? thing.built : point;
    if (from === null) return calendar(base, start, life);
    return calendar(base, 'days' in limit ? addDays(from, limit.days) : monthsAfter(from, limit.months), life);
  }
  if ('hours_h' in limit)
    return {
      ...base,
      ...sum(exact(limit.hours_h), flownSince(life, point, 'hours'), -1),
      scale: 1 / policy.soon_h,
      unit: 'h',
      meter: 'hours',
      perHour: 1,
    };
  if ('landings' in limit)
    return {
      ...base,
      ...sum(exact(limit.landings), flownSince(life, point, 'landings'), -1),
      scale: 1 / policy.soon_landings,
      unit: 'landings',
      meter: 'landings',
      perHour: life.landingsAhead,
    };
  const counted = countedSince(a, life, point);
  const { scale, steep } = soonOf(a, life);
  return {
    ...base,
    ...sum(exact(limit.counted), counted, -1),
    scale,
    steep,
    unit: 'counted',
    counts: true,
    meter: a.action.counts?.unit === 'landings' ? 'landings' : 'hours',
    perHour: Math.max(0, rateOf(a, life, life.mix)),
  };
}

export function calendar(
  base: Pick<Leaf, 'kind' | 'margin' | 'words' | 'now' | 'entry' | 'meter' | 'counts' | 'is'>,
  day: Day,
  life: SwiftLife,
): SwiftLeaf {
  const left = daysBetween(life.asked.day, day);
  const scale = 1 / life.asked.policy.soon_days;
  return { ...base, ...exact(left), day, scale, unit: 'days', perHour: 0 };
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
  const { expression, facts, linear } = a.counting!;
  const { asked } = life;
  const then = point === 'new' ? null : point > asked.day ? asked.day : point;
  if (linear) return linearEnds(linear, life, then);
  const now = evaluate(expression, factsOn(life, facts, asked.day));
  return exact(then === null ? now : now - evaluate(expression, factsOn(life, facts, then)));
}
