import { addDays, type Day, dayNumber, type teardown } from '../../engine/index.ts';

type Floor = teardown.Floor;
export const DAY_MIN = 24 * 60;
/** "07:30" as minutes since midnight. */
export const clockMinutes = (clock: string): number => 60 * Number(clock.slice(0, 2)) + Number(clock.slice(3));
/** 1 Monday to 7 Sunday. */
export const weekday = (d: Day): number => ((((dayNumber(d) + 3) % 7) + 7) % 7) + 1;
export const dayAt = (from: Day, min: number): Day => addDays(from, Math.floor(min / DAY_MIN));
/** Shifts of a day; none where the floor is closed. */
export const shiftsOn = (floor: Floor, d: Day): Floor['shifts'] =>
  floor.closed.some((c) => c.from <= d && d <= c.to) ? [] : floor.shifts.filter((s) => s.weekdays.includes(weekday(d)));

const overlap = (a: number, b: number, c: number, d: number): number => Math.max(0, Math.min(b, d) - Math.max(a, c));
/** Minutes between two moments that lie within the shifts, breaks left out. */
export function shiftMinutes(floor: Floor, from: Day, start_min: number, end_min: number): number {
  let sum = 0;
  for (let i = Math.floor(start_min / DAY_MIN); i * DAY_MIN < end_min; i++)
    for (const s of shiftsOn(floor, addDays(from, i))) {
      const at = (clock: string) => i * DAY_MIN + clockMinutes(clock);
      const [a, b] = [Math.max(start_min, at(s.from)), Math.min(end_min, at(s.to))];
      sum += Math.max(0, b - a) - (s.break && b > a ? overlap(a, b, at(s.break.from), at(s.break.to)) : 0);
    }
  return sum;
}
