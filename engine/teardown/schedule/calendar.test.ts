import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { expect, it } from 'vitest';
import type { Day } from '../../foundation/day.ts';
import { Calendar, DAY_MIN, mirrored, stretchesOf, weekdayOf } from './calendar.ts';
import { randomQuestion } from './testing/random-floor.ts';
import { inSteps, meanMinutes, plannedMinutes } from './times.ts';

const DAYS_SEEN = 25;

/** Temporal's calendar, minute by minute, against the table. */
it('working minutes are those of the shifts, counted one by one', () => {
  fc.assert(
    fc.property(fc.nat(10_000), fc.nat(400), (seed, later) => {
      const { floor } = randomQuestion(seed, 1, 1);
      const first = Temporal.PlainDate.from('2026-11-30').add({ days: later });
      const calendar = new Calendar(stretchesOf(floor, first.toString() as Day));
      let worked = 0;
      for (let m = 0; m < DAYS_SEEN * DAY_MIN; m++) {
        const at = first.toPlainDateTime('00:00').add({ minutes: m });
        const day = at.toPlainDate().toString();
        const clock = at.toPlainTime().toString().slice(0, 5);
        const open =
          !floor.closed.some((s) => s.from <= day && day <= s.to) &&
          floor.shifts.some(
            (s) =>
              s.weekdays.includes(at.dayOfWeek) &&
              s.from <= clock &&
              clock < s.to &&
              !(s.break && s.break.from <= clock && clock < s.break.to),
          );
        if (calendar.toWork(m) !== worked) return false;
        if (!open) continue;
        if (calendar.startOf(worked) !== m || calendar.endOf(worked + 1) !== m + 1) return false;
        worked++;
      }
      return true;
    }),
    { numRuns: 4 },
  );
}, 120_000);

it.each([
  ['2026-11-30', 1],
  ['2026-12-06', 7],
  ['1969-12-31', 3],
])('%s is day %i of the week', (day, weekday) => {
  const date = Temporal.PlainDate.from(day);
  expect(date.dayOfWeek).toBe(weekday);
  expect(weekdayOf(date.since('1970-01-01').days)).toBe(weekday);
});

const oneShift = {
  shifts: [{ weekdays: [1, 2, 3, 4, 5], from: '08:00', to: '16:00', break: { from: '12:00', to: '12:30' } }],
  closed: [{ from: '2026-12-01' as Day, to: '2026-12-01' as Day }],
};
/** Monday 30 November; Tuesday closed. Worked out by hand. */
it('what must fit into one shift goes to the next that holds it, over the break', () => {
  const calendar = new Calendar(stretchesOf(oneShift, '2026-11-30' as Day));
  expect(calendar.longestShift()).toBe(450);
  expect(calendar.fits(200, 250)).toBe(200);
  expect(calendar.fits(200, 251)).toBe(450);
  expect(calendar.startOf(240)).toBe(12 * 60 + 30);
  expect(calendar.endOf(240)).toBe(12 * 60);
  expect(calendar.startOf(450)).toBe(2 * DAY_MIN + 8 * 60);
  expect(calendar.fits(0, 451)).toBe(Number.POSITIVE_INFINITY);
});

it('mirrored twice is the same', () => {
  const stretches = stretchesOf(oneShift, '2026-11-30' as Day);
  const twice = mirrored(mirrored(stretches));
  expect(twice.from).toEqual(stretches.from);
  expect(twice.to).toEqual(stretches.to);
});

/** RS-11: Taylor's activity 1 with 5, 8, 17 has the mean 9. */
it('the mean of three points, and minutes in steps of five', () => {
  expect(meanMinutes({ low_min: 5, likely_min: 8, high_min: 17 })).toBe(9);
  expect(plannedMinutes({ minutes: { low_min: 5, likely_min: 8, high_min: 17 } })).toBe(10);
  expect([0, 0.1, 5, 5.000000001, 5.1].map(inSteps)).toEqual([0, 5, 5, 5, 10]);
});
