import { describe, expect, it } from 'vitest';
import type { Day } from '../../foundation/day.ts';
import { scheduleOf } from './schedule.ts';
import { checkSchedule } from './testing/check.ts';
import { asFloor, listed, projectNamed, UNIT_MIN } from './testing/psplib.ts';
import { floorOf, operationOf } from './testing/random-floor.ts';

/**
 * RS-11: Taylor, Introduction to Management Science, PERT example problem: activities with a, m, b weeks; the critical
 * path is 1-3-5-7 and takes 24 weeks (printed whole). Of activities 2, 4 and 6 the reference gives the times alone: they
 * go beside, in a row. A week is five minutes here, the least step; everybody who is needed is there.
 */
it('RS-11: the PERT example takes 24 weeks along 1-3-5-7', () => {
  const weeks = (id: number, a: number, m: number, b: number, after: number[]) => ({
    ...operationOf(`job:${id}`, 0, { after: after.map((p) => `job:${p}`) }),
    minutes: { low_min: a * UNIT_MIN, likely_min: m * UNIT_MIN, high_min: b * UNIT_MIN },
  });
  const operations = [
    weeks(1, 5, 8, 17, []),
    weeks(2, 7, 10, 13, []),
    weeks(3, 3, 5, 7, [1]),
    weeks(4, 1, 3, 5, [2]),
    weeks(5, 4, 6, 8, [3]),
    weeks(6, 3, 3, 3, [4]),
    weeks(7, 3, 4, 5, [5, 6]),
  ];
  const floor = floorOf({
    crew: ['A', 'B', 'C'].map((name) => ({ name, skills: ['any'] })),
    shifts: [{ weekdays: [1, 2, 3, 4, 5, 6, 7], from: '00:00', to: '23:59' }],
  });
  const made = scheduleOf({
    floor,
    jobs: [{ name: 'job', operations }],
    others: [],
    day: '2026-11-30' as Day,
    seed: 1,
  });
  expect(made.end_min / UNIT_MIN).toBe(24);
  expect(made.bound_min / UNIT_MIN).toBe(24);
  expect(made.chain).toEqual(['job:1', 'job:3', 'job:5', 'job:7']);
});

const optima = listed('j30');
if (optima.size === 0) console.log('PSPLIB j30: not run, ../shared/data/psplib is not there');

/**
 * PSPLIB j30, instances whose jobs take of one resource each: a person for every unit of it. Listed optima; 301_1 = 43,
 * 301_2 = 47 (RS-01) and 303_4 = 98 (RS-02) are proven.
 */
describe.skipIf(optima.size === 0)('PSPLIB j30 decoded as work of a floor', () => {
  it.each([
    ['j301_1', 43],
    ['j301_2', 47],
    ['j303_4', 98],
  ])('%s takes %i', (name, best) => {
    const question = asFloor(projectNamed(name)!)!;
    const made = scheduleOf({ ...question, effort: 400 });
    expect(made.end_min / UNIT_MIN).toBe(best);
    expect(checkSchedule(question, made)).toEqual([]);
  });
  it('no schedule ends before the optimum, and no bound lies above it', () => {
    const held = [...optima].flatMap(([name, best]) => {
      const question = asFloor(projectNamed(name)!);
      if (!question) return [];
      const made = scheduleOf({ ...question, effort: 60 });
      return [{ name, best, end: made.end_min / UNIT_MIN, bound: made.bound_min / UNIT_MIN }];
    });
    expect(held.length).toBeGreaterThan(50);
    expect(held.filter((h) => h.end < h.best || h.bound > h.best)).toEqual([]);
    expect(held.filter((h) => h.end === h.best).length).toBeGreaterThanOrEqual(held.length * 0.9);
  });
});
