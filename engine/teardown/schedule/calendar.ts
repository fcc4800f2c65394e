import { type Day, dayNumber } from '../../foundation/day.ts';
import type { Floor } from '../floor-document.ts';

/** Ten years: what does not end within them is refused. */
export const DAYS = 3660;
export const DAY_MIN = 1440;
/** Working minutes between two entries of the table that finds a stretch of work. */
const STRIDE = 64;

/** Open stretches of the floor on the clock, rising: [from, to) in minutes, and the shift that each belongs to. */
export interface Stretches {
  readonly from: readonly number[];
  readonly to: readonly number[];
  readonly shift: readonly number[];
}

/**
 * Minutes in which the floor works, numbered without its nights, breaks and closed days.
 *
 * What: turns the clock (minutes since midnight of the first day) into working minutes and back. A working minute w
 * fills [startOf(w), startOf(w) + 1) of the clock.
 * How: rising stretches, found through a table; no stretch lies across midnight.
 * Not valid for: times beyond the ten years; there `startOf` answers Infinity.
 */
export class Calendar {
  /** Working minutes within the ten years. */
  readonly whole: number;
  private readonly from: Float64Array;
  private readonly to: Float64Array;
  private readonly base: Float64Array;
  private readonly shiftEnd: Float64Array;
  private readonly firstOfDay: Int32Array;
  private readonly table: Int32Array;

  constructor({ from, to, shift }: Stretches) {
    const n = from.length;
    this.from = Float64Array.from(from);
    this.to = Float64Array.from(to);
    this.base = new Float64Array(n + 1);
    for (let i = 0; i < n; i++) this.base[i + 1] = this.base[i]! + to[i]! - from[i]!;
    this.whole = this.base[n]!;
    this.shiftEnd = new Float64Array(n);
    for (let i = n - 1; i >= 0; i--)
      this.shiftEnd[i] = i + 1 < n && shift[i + 1] === shift[i] ? this.shiftEnd[i + 1]! : this.base[i + 1]!;
    this.firstOfDay = new Int32Array(DAYS + 1);
    for (let day = 0, i = 0; day <= DAYS; day++) {
      while (i < n && to[i]! <= day * DAY_MIN) i++;
      this.firstOfDay[day] = i;
    }
    this.table = new Int32Array(Math.floor(this.whole / STRIDE) + 1);
    for (let k = 0, i = 0; k < this.table.length; k++) {
      while (i < n - 1 && this.base[i + 1]! <= k * STRIDE) i++;
      this.table[k] = i;
    }
  }

  /** Working minutes that have passed at a time of the clock. */
  toWork(clock: number): number {
    if (clock <= 0) return 0;
    if (clock >= DAYS * DAY_MIN) return this.whole;
    for (let i = this.firstOfDay[Math.floor(clock / DAY_MIN)]!; i < this.from.length; i++) {
      if (clock < this.from[i]!) return this.base[i]!;
      if (clock < this.to[i]!) return this.base[i]! + clock - this.from[i]!;
    }
    return this.whole;
  }
  /** The time at which a working minute begins. */
  startOf(work: number): number {
    if (work >= this.whole) return Number.POSITIVE_INFINITY;
    const i = this.at(work);
    return this.from[i]! + work - this.base[i]!;
  }
  /** The time at which so many minutes have been worked. */
  endOf(work: number): number {
    return this.startOf(work - 1) + 1;
  }
  /** The least working minute, not before this one, from which so many fit into one shift; its break is bridged. */
  fits(work: number, minutes: number): number {
    if (work >= this.whole) return Number.POSITIVE_INFINITY;
    let i = this.at(work);
    let begin = work;
    while (begin + minutes > this.shiftEnd[i]!) {
      begin = this.shiftEnd[i]!;
      while (i < this.from.length && this.base[i]! < begin) i++;
      if (i >= this.from.length) return Number.POSITIVE_INFINITY;
    }
    return begin;
  }
  /** Working minutes of the longest shift. */
  longestShift(): number {
    let longest = 0;
    for (let i = 0, begin = 0; i < this.from.length; i++) {
      if (this.base[i + 1]! < this.shiftEnd[i]!) continue;
      longest = Math.max(longest, this.base[i + 1]! - begin);
      begin = this.base[i + 1]!;
    }
    return longest;
  }
  private at(work: number): number {
    let i = this.table[Math.floor(work / STRIDE)]!;
    while (this.base[i + 1]! <= work) i++;
    return i;
  }
}

const minuteOf = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5));
/** 1 Monday to 7 Sunday. */
export const weekdayOf = (number: number): number => ((((number + 3) % 7) + 7) % 7) + 1;

/**
 * The stretches in which a floor works from a day on.
 *
 * What: the union of its shifts less their breaks, without closed days. Shifts of one day that touch or overlap are one:
 * who works on the floor works in all of them.
 */
export function stretchesOf(floor: Pick<Floor, 'shifts' | 'closed'>, day: Day): Stretches {
  const first = dayNumber(day);
  const closed = new Uint8Array(DAYS);
  for (const span of floor.closed)
    closed.fill(1, Math.max(0, dayNumber(span.from) - first), Math.max(0, dayNumber(span.to) - first + 1));
  const week = [1, 2, 3, 4, 5, 6, 7].map((weekday) => dayStretches(floor.shifts, weekday));
  const from: number[] = [];
  const to: number[] = [];
  const shift: number[] = [];
  let shifts = 0;
  for (let d = 0; d < DAYS; d++) {
    if (closed[d]) continue;
    const today = week[weekdayOf(first + d) - 1]!;
    for (const s of today) {
      from.push(d * DAY_MIN + s.from);
      to.push(d * DAY_MIN + s.to);
      shift.push(shifts + s.shift);
    }
    shifts += today.length;
  }
  return { from, to, shift };
}

function dayStretches(shifts: Floor['shifts'], weekday: number): { from: number; to: number; shift: number }[] {
  const inShift = new Uint8Array(DAY_MIN + 1);
  const open = new Uint8Array(DAY_MIN + 1);
  for (const s of shifts) {
    if (!s.weekdays.includes(weekday)) continue;
    const rest = s.break ? { from: minuteOf(s.break.from), to: minuteOf(s.break.to) } : { from: 0, to: 0 };
    for (let m = minuteOf(s.from); m < minuteOf(s.to); m++) {
      inShift[m] = 1;
      if (m < rest.from || m >= rest.to) open[m] = 1;
    }
  }
  const found: { from: number; to: number; shift: number }[] = [];
  let shift = -1;
  let begin = -1;
  for (let m = 0; m <= DAY_MIN; m++) {
    if (inShift[m] && !(m > 0 && inShift[m - 1])) shift++;
    if (open[m] && begin < 0) begin = m;
    if (!open[m] && begin >= 0) {
      found.push({ from: begin, to: m, shift });
      begin = -1;
    }
  }
  return found;
}

/** The same stretches with time running back from the end of the ten years. */
export const mirrored = ({ from, to, shift }: Stretches): Stretches => ({
  from: to.map((t) => DAYS * DAY_MIN - t).reverse(),
  to: from.map((t) => DAYS * DAY_MIN - t).reverse(),
  shift: [...shift].reverse(),
});
