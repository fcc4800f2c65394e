import { addDays, type Day, type teardown } from '../../engine/index.ts';
import { day as dayWords } from '../display.ts';
import type { Mark } from '../model.ts';
import { clockMinutes, DAY_MIN, shiftsOn, weekday } from '../teardown/floor-days.ts';
import { line, r, text } from './axis.ts';
import { wideOf } from './plot.ts';

type Floor = teardown.Floor;
/** The frame of the chart: where its days begin and end, and where its rows begin. */
export const [LEFT, RIGHT, TOP] = [176, 1100, 30] as const;
/** A closed day is drawn narrower than a day of work. */
const CLOSED = 0.4;

/** Days of the axis with the shift of each; null where the floor is closed. */
export interface AxisDay {
  readonly day: Day;
  readonly shift: { readonly from: number; readonly to: number } | null;
  readonly x: number;
  readonly w: number;
}
function shiftOf(floor: Floor, d: Day): AxisDay['shift'] {
  const own = shiftsOn(floor, d);
  if (!own.length) return null;
  return {
    from: Math.min(...own.map((s) => clockMinutes(s.from))),
    to: Math.max(...own.map((s) => clockMinutes(s.to))),
  };
}
export function axisOf(floor: Floor, from: Day, days: number): AxisDay[] {
  const all = Array.from({ length: days }, (_, i) => addDays(from, i)).map((d) => ({
    day: d,
    shift: shiftOf(floor, d),
  }));
  const whole = all.reduce((n, d) => n + (d.shift ? 1 : CLOSED), 0);
  let x: number = LEFT;
  return all.map((d) => {
    const w = ((RIGHT - LEFT) * (d.shift ? 1 : CLOSED)) / whole;
    const at = { ...d, x, w };
    x += w;
    return at;
  });
}
/** Where a minute since the first midnight lies: within a day of work by its shift, so that nights take no room. */
export function placeOf(axis: readonly AxisDay[]): (min: number) => number {
  return (min) => {
    const i = Math.floor(min / DAY_MIN);
    const d = axis[Math.max(0, Math.min(i, axis.length - 1))]!;
    if (i >= axis.length) return RIGHT;
    if (i < 0) return LEFT;
    const [from, to] = d.shift ? [d.shift.from, d.shift.to] : [0, DAY_MIN];
    const share = (min - i * DAY_MIN - from) / Math.max(1, to - from);
    return r(d.x + d.w * Math.min(1, Math.max(0, share)));
  };
}

/** Rules at Mondays, closed days as a grey stretch; each day of the month by its figure where there is room. */
export function dayMarks(axis: readonly AxisDay[], bottom: number): Mark[] {
  const marks: Mark[] = [];
  let free = LEFT - 1;
  for (const [i, d] of axis.entries()) {
    if (!d.shift)
      marks.push({
        is: 'rect',
        x: r(d.x),
        y: TOP,
        w: r(d.w),
        h: bottom - TOP,
        stroke: 'none',
        fill: 'paper',
        width: 0,
        title: `${dayWords(d.day)}: closed`,
      });
    const monday = weekday(d.day) === 1;
    if (monday || i === 0) marks.push(line(r(d.x), TOP - 6, r(d.x), bottom, 'line', 0.8));
    const words = monday || i === 0 ? dayWords(d.day).replace(/ \d{4}$/, '') : String(Number(d.day.slice(8)));
    const wide = wideOf(words, 11);
    if (d.shift && d.x >= free && (monday || i === 0 || d.w > wide + 6)) {
      marks.push(text(r(d.x + 2), TOP - 10, words, { size: 11, ink: 'soft' }));
      free = d.x + wide + 8;
    }
  }
  return [...marks, line(LEFT, TOP, RIGHT, TOP, 'soft', 0.8)];
}
