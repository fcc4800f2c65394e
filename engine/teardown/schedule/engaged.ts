import { type Day, dayNumber } from '../../foundation/day.ts';
import type { Engaged } from '../document.ts';
import type { Floor } from '../floor-document.ts';
import { type Calendar, DAY_MIN } from './calendar.ts';
import type { Off } from './problem.ts';

const minutesOf = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));

/** What other work takes of each of the crew, in working minutes. */
export function engagedOf(crew: Floor['crew'], engaged: readonly Engaged[], calendar: Calendar, day: Day): Off[] {
  const first = dayNumber(day);
  const at = (d: Day, clock: string) =>
    calendar.toWork(Math.max(0, (dayNumber(d) - first) * DAY_MIN + minutesOf(clock)));
  return crew.map(({ name }) => {
    const spans = engaged
      .filter((e) => e.person === name)
      .map((e) => ({ from: at(e.from as Day, e.from_at), to: at(e.to as Day, e.to_at) }))
      .filter((s) => s.to > s.from)
      .sort((a, b) => a.from - b.from);
    const from: number[] = [];
    const to: number[] = [];
    for (const s of spans) {
      const last = to.length - 1;
      if (last >= 0 && s.from <= to[last]!) to[last] = Math.max(to[last]!, s.to);
      else {
        from.push(s.from);
        to.push(s.to);
      }
    }
    return { from: Float64Array.from(from), to: Float64Array.from(to) };
  });
}
