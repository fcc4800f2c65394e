import { describe, expect, it } from 'vitest';
import { dayNumber } from '../../foundation/day.ts';
import { flownCase, HABITS } from './habits.ts';

const cases = (habit: (typeof HABITS)[number], n: number) =>
  Array.from({ length: n }, (_, i) => flownCase(habit, 11, i));
const yearly_h = (c: ReturnType<typeof flownCase>) => {
  const [a, b] = [c.readings[0]!, c.readings[c.readings.length - 1]!];
  return ((b.total_s - a.total_s) / 3600 / (dayNumber(b.day) - dayNumber(a.day))) * 365.25;
};

describe('the simulated life', () => {
  it('is the same for the same seed and item, and another for others', () => {
    expect(flownCase('steady', 3, 8)).toEqual(flownCase('steady', 3, 8));
    expect(flownCase('steady', 3, 8)).not.toEqual(flownCase('steady', 3, 9));
    expect(flownCase('steady', 3, 8)).not.toEqual(flownCase('steady', 4, 8));
  });

  it.each(HABITS)(
    '%s: readings run forward, three at least, thin records among them, and the limit lies ahead',
    (habit) => {
      const all = cases(habit, 60);
      for (const { readings, reached } of all) {
        expect(readings.length).toBeGreaterThanOrEqual(3);
        readings.slice(1).forEach((r, i) => {
          expect(r.day > readings[i]!.day).toBe(true);
          expect(r.total_s).toBeGreaterThanOrEqual(readings[i]!.total_s);
          expect(r.landings).toBeGreaterThanOrEqual(readings[i]!.landings);
          expect(r.total_s % 360).toBe(0);
        });
        if (reached) expect(reached >= readings[readings.length - 1]!.day).toBe(true);
      }
      expect(all.filter((c) => c.readings.length <= 6).length).toBeGreaterThan(15);
      expect(all.filter((c) => c.readings.length > 6).length).toBeGreaterThan(15);
    },
  );

  it('schools fly a few hundred hours a year, private owners from a handful to a busy 160', () => {
    const school = cases('school', 100).map(yearly_h);
    expect(Math.min(...school)).toBeGreaterThan(100);
    expect(Math.max(...school)).toBeLessThan(1000);
    const own = cases('steady', 100).map(yearly_h);
    expect(Math.min(...own)).toBeLessThan(20);
    expect(own.filter((h) => h > 200)).toEqual([]);
  });

  it('the owner changes inside the record, with one whole interval after it, or later, or never', () => {
    for (const c of cases('changed owner in the record', 60)) {
      expect(c.changed! > c.readings[0]!.day).toBe(true);
      expect(c.changed! <= c.readings[c.readings.length - 2]!.day).toBe(true);
    }
    for (const c of cases('changed owner later', 60))
      expect(c.changed! > c.readings[c.readings.length - 1]!.day).toBe(true);
    for (const c of cases('drifting', 20)) expect(c.changed).toBeNull();
  });

  it('has intervals in which next to nothing was flown', () => {
    const idle = cases('steady', 300).filter((c) =>
      c.readings.slice(1).some((r, i) => {
        const [h, days] = [
          (r.total_s - c.readings[i]!.total_s) / 3600,
          dayNumber(r.day) - dayNumber(c.readings[i]!.day),
        ];
        return days > 150 && (h / days) * 365.25 < 2;
      }),
    );
    expect(idle.length).toBeGreaterThan(5);
  });
});
