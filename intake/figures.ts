import { type Day, isDay, parseHours } from '../engine/index.ts';
import type { Cell } from './model.ts';

/** A value, or the reason why there is none. */
export type Read<T> = { readonly value: T } | { readonly why: string };
export const failed = <T>(r: Read<T>): r is { readonly why: string } => 'why' in r;

const BLANK = '[ \\u00a0\\u2007\\u2009\\u202f]';
const number = (group: string, point: string) =>
  new RegExp(`^[+-]?(?:\\d+|\\d{1,3}(?:(?:${group}|['’]|${BLANK})\\d{3})+)?(?:${point}\\d+)?$`);
const WRITTEN = { point: number(',', '\\.'), comma: number('\\.', ',') } as const;
const UNIT = /\s*(h|hrs?|hours?|std|landings?|ldgs?)\.?\s*$/i;
const GROUPED_CLOCK = new RegExp(`(\\d)(?:[.,'’]|${BLANK})(?=\\d{3}(?:\\D|$))`, 'g');

/** A number as plain digits with a point: `1 234,5` -> `1234.5`. */
function plainNumber(written: string, decimal: 'point' | 'comma'): Read<string> {
  const text = written.replace(UNIT, '').trim();
  if (!/\d/.test(text) || !WRITTEN[decimal].test(text))
    return { why: `"${written.trim()}" is no number with a decimal ${decimal}` };
  const point = decimal === 'point' ? '.' : ',';
  const cut = text.lastIndexOf(point);
  const whole = (cut < 0 ? text : text.slice(0, cut)).replace(/[^\d-]/g, '');
  return { value: `${whole === '' || whole === '-' ? `${whole}0` : whole}${cut < 0 ? '' : `.${text.slice(cut + 1)}`}` };
}

const notNegative = (seconds: number, text: string): Read<number> =>
  seconds < 0 ? { why: `"${text}" is less than nothing` } : { value: seconds };

/** Hours as whole seconds of time flown, from decimals or hh:mm. */
export function hoursIn(cell: Cell, decimal: 'point' | 'comma', unit: 'hours' | 'minutes' = 'hours'): Read<number> {
  if (cell.is === 'unreadable') return { why: cell.why };
  if (cell.is === 'day') return { why: `the date ${cell.text} stands where hours are expected` };
  if (cell.is === 'time') return notNegative(cell.seconds, cell.text);
  if (cell.is === 'number') {
    if (!Number.isFinite(cell.value) || Math.abs(cell.value) > 1e6)
      return { why: `"${cell.text}" is no possible time` };
    return notNegative(unit === 'minutes' ? Math.round(cell.value * 60) : parseHours(cell.value), cell.text);
  }
  const text = cell.text
    .replace(UNIT, '')
    .trim()
    .replace(/^(\d+) ?h ?(\d{2})( ?min)?$/i, '$1:$2');
  if (text.includes(':')) {
    const clock = text.replace(GROUPED_CLOCK, '$1');
    if (/^\d+:\d{2}(:\d{2})?$/.test(clock)) {
      const [, minutes, seconds] = clock.split(':').map(Number);
      if (minutes! > 59 || (seconds ?? 0) > 59)
        return { why: `"${cell.text.trim()}" has more than 59 minutes in its hour` };
      return { value: parseHours(clock) };
    }
    return { why: `"${cell.text.trim()}" is no time as hours:minutes` };
  }
  const plain = plainNumber(text, decimal);
  if (failed(plain)) return plain;
  if (Math.abs(Number(plain.value)) > 1e6) return { why: `"${text}" is no possible time` };
  return notNegative(unit === 'minutes' ? Math.round(Number(plain.value) * 60) : parseHours(plain.value), text);
}

/** A whole number of landings. */
export function countIn(cell: Cell, decimal: 'point' | 'comma'): Read<number> {
  if (cell.is === 'unreadable') return { why: cell.why };
  if (cell.is === 'day' || cell.is === 'time') return { why: `"${cell.text}" stands where landings are expected` };
  const plain: Read<string> = cell.is === 'number' ? { value: String(cell.value) } : plainNumber(cell.text, decimal);
  if (failed(plain)) return plain;
  const n = Number(plain.value);
  return Number.isInteger(n) && n >= 0 && n <= 10_000_000
    ? { value: n }
    : { why: `"${cell.text.trim()}" is no whole number of landings` };
}

const MONTHS: Readonly<Record<string, number>> = Object.fromEntries(
  [
    'jan januar january janvier ene enero',
    'feb februar february fev fevrier febrero',
    'mar marz march mars marzo mrz',
    'apr april avr avril abr abril',
    'may mai mayo',
    'jun juni june juin junio',
    'jul juli july juillet julio',
    'aug august aout ago agosto',
    'sep sept september septembre septiembre',
    'oct okt october oktober octobre octubre',
    'nov november novembre noviembre',
    'dec dez december dezember decembre dic diciembre',
  ].flatMap((words, m) => words.split(' ').map((w) => [w, m + 1] as const)),
);
const monthOf = (word: string): number | undefined =>
  MONTHS[
    word
      .normalize('NFD')
      .replace(/[\u0300-\u036f]/g, '')
      .toLowerCase()
      .replace(/\.$/, '')
  ];

const CLOCK_AFTER = /(?:[T ]+\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?(?: ?[ap]m)?Z?)$/i;
/** The two leading numbers of a date that only an order of day and month can tell apart. */
export function leadingPair(text: string): [number, number] | undefined {
  const m = /^(\d{1,2})[./-](\d{1,2})[./-](?:\d{4}|\d{2})$/.exec(text.trim().replace(CLOCK_AFTER, ''));
  return m ? [Number(m[1]), Number(m[2])] : undefined;
}

export interface DayReading {
  readonly day_order: 'day_first' | 'month_first' | 'to_be_chosen';
  readonly two_digit_years_from: number;
}
export function dayIn(cell: Cell, how: DayReading): Read<Day> {
  if (cell.is === 'empty') return { why: 'no day' };
  if (cell.is === 'unreadable') return { why: cell.why };
  if (cell.is === 'day') return { value: cell.day };
  const text = cell.text.trim();
  if (cell.is !== 'text') return { why: `"${text}" is a bare number where a day is expected` };
  const bare = text.replace(CLOCK_AFTER, '');
  let m = /^(\d{4})[./-](\d{1,2})[./-](\d{1,2})$/.exec(bare);
  if (m) return made(m[1]!, Number(m[2]), Number(m[3]), how, text);
  m = /^(\d{1,2})[./-](\d{1,2})[./-](\d{4}|\d{2})$/.exec(bare);
  if (m) {
    const [a, b] = [Number(m[1]), Number(m[2])];
    if (how.day_order === 'to_be_chosen' && a !== b)
      return { why: `"${text}": is the day or the month first? Choose it` };
    return how.day_order === 'month_first' ? made(m[3]!, a, b, how, text) : made(m[3]!, b, a, how, text);
  }
  m = /^(\d{1,2})(?:st|nd|rd|th)?[ .-]+(\p{L}{3,10}\.?)[ ,.-]+(\d{4}|\d{2})$/u.exec(bare);
  if (m && monthOf(m[2]!)) return made(m[3]!, monthOf(m[2]!)!, Number(m[1]), how, text);
  m = /^(\p{L}{3,10}\.?)[ -]+(\d{1,2})(?:st|nd|rd|th)?[ ,-]+(\d{4}|\d{2})$/u.exec(bare);
  if (m && monthOf(m[1]!)) return made(m[3]!, monthOf(m[1]!)!, Number(m[2]), how, text);
  return { why: `"${text}" is no day` };
}

function made(year: string, month: number, day: number, how: DayReading, text: string): Read<Day> {
  let y = Number(year);
  if (year.length === 2) {
    const from = how.two_digit_years_from;
    y += from - (from % 100);
    if (y < from) y += 100;
  }
  const two = (n: number) => String(n).padStart(2, '0');
  const written = `${y}-${two(month)}-${two(day)}`;
  if (isDay(written)) return { value: written };
  const far = isDay(`2000-${two(month)}-${two(day)}`) && !isDay(`${y}-01-01`);
  return { why: far ? `"${text}": the year ${y} cannot be meant` : `"${text}" is no day of the calendar` };
}
