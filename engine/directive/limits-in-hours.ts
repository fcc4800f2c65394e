import { hoursFromSeconds } from '../foundation/convert.ts';
import { type Day, daysBetween } from '../foundation/day.ts';
import type { Life, RecordModel } from '../record/index.ts';
import type { Action, DirectiveDocument, Limit } from './document.ts';
import { situationOf } from './life-situation.ts';
import { landingsAhead } from './mix.ts';
import type { Assessment } from './model.ts';
import { limitInWords, spaced } from './words.ts';
import { ratePerHour } from './yardstick.ts';

/** A limit that a directive sets for one part, in hours of the part; null where flying does not bring it. */
export interface LimitInHours {
  readonly directive: string;
  readonly issue: number;
  readonly action: string;
  readonly title: string;
  /** Hours since new at which it must first be done. */
  readonly first_at_h: number | null;
  readonly repeat_h: number | null;
  /** Left on the worse side; negative: overdue. */
  readonly left_h: number | null;
  /** What it asks, in its own words, and at what rate it was turned into hours. */
  readonly reference: string;
}
export interface PartUnder {
  readonly documents: readonly DirectiveDocument[];
  readonly model: RecordModel;
  /** Of the part, up to `day`. */
  readonly life: Life;
  readonly day: Day;
  /** Of the part, at the flying that they are to be turned into hours at. */
  readonly assessments: readonly Assessment[];
  /** The fewest hours a year that the aircraft is likely to fly, for limits by the calendar; null: not known. */
  readonly slow_h_per_year: number | null;
}

const DAYS_PER_YEAR = 365.25;
const MONTHS_PER_YEAR = 12;
/** What limits how long a part goes without being looked at: looks, and the end of its use. */
const LOOKS: readonly Action['does'][] = ['inspect', 'replace'];
const OPEN = (a: Assessment): boolean => a.standing.worst !== 'ended' && a.standing.worst !== 'not affected';
/** Hours are given down to a hundredth, never up. */
const down = (h: number): number => Math.floor(h * 100 + 1e-6) / 100;
const least = (...all: readonly (number | null)[]): number | null => {
  const known = all.filter((x) => x !== null);
  return known.length ? Math.min(...known) : null;
};

/**
 * The limits of directives for one part, in hours, so that they can be held against an interval that is computed.
 *
 * What is left comes from the worse side of each answer, at the mix of uses it was answered for. A first limit is what
 * the part has flown at least, with that; a first limit in hours since new stays as it is written. Landings and
 * counted figures become hours by what one hour of that mix uses up. Months and days become hours at the slowest
 * flying that is likely, so that the hours never come later than the date. Of "whichever comes later" the later counts
 * only where both are known. Nothing is overdue by more hours than the part can have flown: landings that are not known
 * would tell of centuries.
 *
 * Not valid for a part that no record carries; actions other than looks and replacements are left out, as are those
 * that ended or do not affect the part.
 *
 * @returns hours; overdue is negative; an action that could not be computed has nothing left
 */
export function limitsInHours(of: PartUnder): LimitInHours[] {
  return of.assessments
    .filter((a) => a.subject === of.life.subject.id && LOOKS.includes(a.action.does) && OPEN(a))
    .map((a) => limitOf(a, of));
}

/** The shorter of the same limits turned into hours at several ways of flying; told by the words of the one that leaves least. */
export function shortestLimits(all: readonly (readonly LimitInHours[])[]): LimitInHours[] {
  const found = new Map<string, LimitInHours>();
  for (const l of all.flat()) {
    const key = `${l.directive}|${l.issue}|${l.action}`;
    const b = found.get(key) ?? l;
    const first_at_h = least(l.first_at_h, b.first_at_h);
    const [repeat_h, left_h] = [least(l.repeat_h, b.repeat_h), least(l.left_h, b.left_h)];
    const sooner = left_h !== b.left_h || (l.left_h === b.left_h && repeat_h !== b.repeat_h);
    found.set(key, { ...(sooner ? l : b), first_at_h, repeat_h, left_h });
  }
  return [...found.values()];
}

function limitOf(a: Assessment, of: PartUnder): LimitInHours {
  const directive = of.documents.find((d) => d.number === a.directive && d.issue === a.issue);
  const counted = directive && a.action.counts ? countedPerHour(directive, a, of) : 0;
  const per = { landings: landingsAhead(a.mix), counted, year: of.slow_h_per_year, day: of.day };
  const flown = of.life.figure('hours.total', of.day).value;
  const left = leftOf(a, of.slow_h_per_year);
  const left_h = left === null ? null : Math.max(left, -Math.max(flown.high, LEAST_OVER_H));
  const ahead = left_h === null ? null : Math.max(0, flown.low + left_h);
  const first = a.action.first ?? null;
  const first_at_h = a.lastDone ? first && hoursOf(first, per) : (asWritten(first) ?? ahead);
  const repeat_h = a.action.repeat ? hoursOf(a.action.repeat, per) : null;
  const floored = (h: number | null) => (h === null ? null : down(h));
  return {
    directive: a.directive,
    issue: a.issue,
    action: a.action.id,
    title: a.action.title,
    first_at_h: floored(first_at_h),
    repeat_h: floored(repeat_h),
    left_h: floored(left_h),
    reference: wordsOf(a, directive, per),
  };
}

function countedPerHour(directive: DirectiveDocument, a: Assessment, of: PartUnder): number {
  const at = { directive, action: a.action, life: of.life, model: of.model, day: of.day, mix: a.mix };
  return ratePerHour(situationOf(at), a.mix);
}

/** Of a limit in the part's own hours since new, what is written: it needs no flying to be told in hours. */
const asWritten = (l: Limit | null): number | null =>
  l && 'hours_h' in l && l.of === 'part' && l.since === 'new' ? l.hours_h : null;

/** The worse side's rest in hours, by flying or by the calendar, whichever comes first. */
function leftOf(a: Assessment, slow: number | null): number | null {
  const { left, dueAt, standing } = a.treatAs;
  const bites = standing === 'due' || standing === 'overdue';
  const days = dueAt.day === null ? null : daysBetween(a.day, dueAt.day);
  const byDate = days === null ? null : days > 0 ? (slow === null ? null : inYears(days) * slow) : overBy(days, slow);
  const byHours = left?.hours_s == null ? null : hoursFromSeconds(left.hours_s);
  const perHour = landingsAhead(a.mix);
  const byLandings = left?.landings == null || perHour <= 0 ? null : left.landings / perHour;
  const found = least(byHours, byLandings, byDate);
  if (a.notComputed !== null || dueAt.now || bites) return Math.min(0, found ?? 0);
  return found;
}
const inYears = (days: number): number => days / DAYS_PER_YEAR;
/** A date that has passed is never nothing: it is overdue by the flying since, or by a little. */
const overBy = (days: number, slow: number | null): number =>
  days === 0 ? 0 : Math.min(-LEAST_OVER_H, inYears(days) * (slow ?? 0));
const LEAST_OVER_H = 0.01;

interface Per {
  readonly landings: number;
  readonly counted: number;
  readonly year: number | null;
  readonly day: Day;
}
/** A limit as hours from its origin on; null: flying does not bring it, or nothing tells. */
function hoursOf(l: Limit, per: Per): number | null {
  if ('first_of' in l) return least(...l.first_of.map((x) => hoursOf(x, per)));
  if ('later_of' in l) {
    const all = l.later_of.map((x) => hoursOf(x, per));
    return all.includes(null) ? least(...all) : Math.max(...(all as number[]));
  }
  if ('when' in l) return least(hoursOf(l.limit, per), hoursOf(l.otherwise, per));
  if ('before_further_flight' in l) return 0;
  if ('hours_h' in l) return l.hours_h;
  if ('landings' in l) return per.landings > 0 ? l.landings / per.landings : null;
  if ('counted' in l) return per.counted > 0 ? l.counted / per.counted : null;
  if ('next_inspection' in l)
    return l.next_inspection === 'hundred_hour' ? 100 : l.next_inspection === 'annual' ? per.year : null;
  if (per.year === null) return null;
  if ('on' in l) return Math.max(0, inYears(daysBetween(per.day, l.on as Day)) * per.year);
  return ('days' in l ? inYears(l.days) : l.months / MONTHS_PER_YEAR) * per.year;
}

function wordsOf(a: Assessment, d: DirectiveDocument | undefined, per: Per): string {
  const { action } = a;
  const asks = [
    ...(action.first ? [limitInWords(action.first, action)] : []),
    ...(action.repeat ? [`then ${limitInWords(action.repeat, action)}`] : []),
  ].join('; ');
  const text = JSON.stringify([action.first ?? 0, action.repeat ?? 0]);
  const figure = (n: number) => spaced(Math.round(n * 100) / 100);
  const rates = [
    ...(text.includes('"counted"') && per.counted > 0
      ? [`${figure(per.counted)} ${action.counts?.called ?? 'counted'} an hour`]
      : []),
    ...(text.includes('"landings"') ? [`${figure(per.landings)} landings an hour`] : []),
    ...(/"(months|days|on|next_inspection)"/.test(text) && per.year !== null
      ? [`${figure(per.year)} h a year at the slowest`]
      : []),
  ];
  const at = rates.length ? `, turned into hours at ${rates.join(' and ')}` : '';
  const where = [`${a.directive} issue ${a.issue}`, action.source].filter(Boolean).join(', ');
  const not = a.notComputed ? `; ${a.notComputed}` : '';
  return `${where}${d?.known === 'invented' ? ' (invented)' : ''}: ${asks}${at}${not}`.slice(0, 4000);
}
