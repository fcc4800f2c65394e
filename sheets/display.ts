import {
  type Bounds,
  type Day,
  dayNumber,
  type Evidence,
  hoursFromSeconds,
  isDay,
  type outlook,
} from '../engine/index.ts';

/** Figures in the reader's units. Forecasts are never said to the day. */
const THIN = '\u202f';
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const SEASONS = ['winter', 'spring', 'summer', 'autumn'];

export function number(value: number, places = 0): string {
  const fixed = Math.abs(value).toFixed(places);
  const [whole = '', part] = fixed.split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, THIN);
  const zero = Number(fixed) === 0;
  return `${value < 0 && !zero ? '−' : ''}${grouped}${part ? `.${part}` : ''}`;
}
/** A range whose ends read alike is one figure. */
export function range(b: Bounds, places = 0): string {
  const [low, high] = [number(b.low, places), number(b.high, places)];
  return low === high ? low : `${low} to ${high}`;
}
export const hours = (seconds: number): string => `${number(hoursFromSeconds(seconds), 1)} h`;
export const count = (n: number, one: string, many = `${one}s`): string => `${number(n)} ${n === 1 ? one : many}`;
export const landings = (n: number): string => count(Math.floor(n), 'landing');
export const yearOf = (d: Day): number => Number(d.slice(0, 4));
const monthOf = (d: Day): number => Number(d.slice(5, 7));
/** A day that is a fact: 14 Nov 2026. */
export const day = (d: Day): string => `${Number(d.slice(8, 10))} ${MONTHS[monthOf(d) - 1]} ${d.slice(0, 4)}`;

/** A day that is a forecast: the nearer, the finer, never finer than a month. */
export function about(d: Day, today: Day): string {
  const ahead_days = dayNumber(d) - dayNumber(today);
  const [m, y] = [monthOf(d), yearOf(d)];
  if (ahead_days < 120) return `${MONTHS[m - 1]} ${y}`;
  if (ahead_days < 1100) {
    if (m === 12) return `the winter of ${y} to ${y + 1}`;
    if (m <= 2) return `the winter of ${y - 1} to ${y}`;
    return `the ${SEASONS[Math.floor(m / 3)]} of ${y}`;
  }
  return m <= 4 ? `early ${y}` : m <= 8 ? `mid ${y}` : `the end of ${y}`;
}
export function arrival(a: outlook.Arrival, today: Day): string {
  if (a.is === 'reached') return 'now';
  // A forecast that lies behind us: the reading is old, and the limit may have been flown since.
  if (a.is === 'day') return a.day <= today ? 'now' : about(a.day, today);
  return `not before ${a.year}`;
}
export function arrivalYear(a: outlook.Arrival): string {
  return a.is === 'reached' ? 'now' : a.is === 'day' ? String(yearOf(a.day)) : `after ${a.year}`;
}
/** For placing and sorting only. */
export const arrivalNumber = (a: outlook.Arrival, today: Day): number =>
  a.is === 'reached' ? dayNumber(today) : a.is === 'day' ? dayNumber(a.day) : dayNumber(`${a.year}-07-01` as Day);
export function years(from: outlook.Arrival, to: outlook.Arrival): string {
  const [a, b] = [arrivalYear(from), arrivalYear(to)];
  return a === b ? a : `${a} to ${b}`;
}
/** The years of a stretch: "2010 to 2011", "2018". */
export function yearsOf(s: { readonly from: Day; readonly to: Day }): string {
  const [a, b] = [s.from.slice(0, 4), s.to.slice(0, 4)];
  return a === b ? a : `${a} to ${b}`;
}
export const EVIDENCE_WORDS: Readonly<Record<Evidence, string>> = {
  seen: 'seen',
  copy: 'from a copy',
  statement: 'as stated',
  inferred: 'inferred',
  assumed: 'believed, not seen',
};
export const capital = (s: string): string => s.replace(/^./, (c) => c.toUpperCase());
/** As in the middle of a sentence; what begins with a short form stays: "IFR training". */
export const uncapital = (s: string): string => (/^[A-Z][a-z]/.test(s) ? s[0]!.toLowerCase() + s.slice(1) : s);
/** Hours left to a limit, down to the whole hour: never told as more than they are, nor as less overdue. */
export const hoursLeft = (h: number): string => (h < 0 ? `overdue by ${number(Math.ceil(-h))}` : number(Math.floor(h)));
export const plain = (slug: string): string => slug.replaceAll('_', ' ');
export const money = (cents: number): string => number(cents / 100, cents % 100 === 0 ? 0 : 2);
/** "1 240.50 to 1 300": whole cents, in the words of the purse. */
export function moneyRange(cents: number | Bounds): string {
  if (typeof cents === 'number') return money(Math.round(cents));
  const [low, high] = [money(Math.round(cents.low)), money(Math.round(cents.high))];
  return low === high ? low : `${low} to ${high}`;
}
/** Days within a sentence of the engine, as the reader writes them. */
export const datesInWords = (s: string): string => s.replace(/\b\d{4}-\d{2}-\d{2}\b/g, (d) => (isDay(d) ? day(d) : d));
