import { Temporal } from 'temporal-polyfill';
import { Refusal } from './refusal.ts';

declare const day: unique symbol;
/** A calendar day as `YYYY-MM-DD`, without time zone; sorts as text. Valid from 1900-01-01 to 2199-12-31. */
export type Day = string & { readonly [day]: true };

const FIRST = '1900-01-01';
const LAST = '2199-12-31';
const MS_PER_DAY = 86_400_000;

/** @throws Refusal `foundation.not-a-day` for text that is no day of the calendar, or out of range */
export function parseDay(text: string): Day {
  if (/^\d{4}-\d{2}-\d{2}$/.test(text) && text >= FIRST && text <= LAST) {
    const t = Date.UTC(Number(text.slice(0, 4)), Number(text.slice(5, 7)) - 1, Number(text.slice(8, 10)));
    if (new Date(t).toISOString().slice(0, 10) === text) return text as Day;
  }
  throw new Refusal('foundation.not-a-day', {
    given: `"${text}"`,
    allowed: `a day as YYYY-MM-DD from ${FIRST} to ${LAST}`,
    remedy: 'Correct the date',
  });
}

export const isDay = (text: string): text is Day => {
  try {
    parseDay(text);
    return true;
  } catch {
    return false;
  }
};

/** Days since 1970-01-01 (negative before). */
export const dayNumber = (d: Day): number =>
  Date.UTC(Number(d.slice(0, 4)), Number(d.slice(5, 7)) - 1, Number(d.slice(8, 10))) / MS_PER_DAY;

/** The day with this number since 1970-01-01; fractions are floored. */
export const dayFromNumber = (n: number): Day => new Date(Math.floor(n) * MS_PER_DAY).toISOString().slice(0, 10) as Day;

/** Days from a to b; negative if b lies before a. */
export const daysBetween = (a: Day, b: Day): number => dayNumber(b) - dayNumber(a);
export const addDays = (d: Day, days: number): Day => dayFromNumber(dayNumber(d) + days);
/** Same day of the month, or the last day of a shorter month. */
export const addMonths = (d: Day, months: number): Day => Temporal.PlainDate.from(d).add({ months }).toString() as Day;
export const endOfMonth = (d: Day): Day => {
  const p = Temporal.PlainDate.from(d);
  return p.with({ day: p.daysInMonth }).toString() as Day;
};
export const earlier = (a: Day, b: Day): Day => (a <= b ? a : b);
export const later = (a: Day, b: Day): Day => (a >= b ? a : b);

/** A moment of the record: a day and the order of happenings within it. */
export interface Moment {
  readonly day: Day;
  readonly order: number;
}
export const compareMoments = (a: Moment, b: Moment): number =>
  a.day < b.day ? -1 : a.day > b.day ? 1 : a.order - b.order;
