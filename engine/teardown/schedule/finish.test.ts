import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Day } from '../../foundation/day.ts';
import { finishFrom, finishPart, prepareFinish } from './finish.ts';
import { plannedOrder } from './schedule.ts';
import { floorOf, operationOf, randomQuestion } from './testing/random-floor.ts';
import { drawMinutes, timesOf } from './times.ts';

const three = (low_min: number, likely_min: number, high_min: number) =>
  operationOf('job:a', 0, { minutes: { low_min, likely_min, high_min } });

describe('drawn times', () => {
  /** Shopfloor reference, 5.1: mean (a + 4m + b)/6; true variance of the beta (μ − a)(b − μ)/7. Steps of five add 2.5. */
  it.each([
    [50, 80, 170],
    [100, 100, 400],
    [20, 200, 200],
  ])('%i, %i, %i minutes have the mean and the variance of their beta', (low, likely, high) => {
    const times = [timesOf(three(low * 100, likely * 100, high * 100))];
    const into = new Float64Array(1);
    const runs = 20_000;
    let sum = 0;
    let squares = 0;
    for (let run = 0; run < runs; run++) {
      drawMinutes(times, 0, 11, run, into);
      const x = (into[0]! - 2.5) / 100;
      sum += x;
      squares += x * x;
    }
    const mean = (low + 4 * likely + high) / 6;
    const variance = ((mean - low) * (high - mean)) / 7;
    expect(Math.abs(sum / runs - mean)).toBeLessThan(4 * Math.sqrt(variance / runs));
    expect(squares / runs - (sum / runs) * (sum / runs)).toBeCloseTo(variance, -Math.log10(variance * 0.08));
  });
  it('the shared cause has the mean 1, acts on all hands alike and on no drying', () => {
    const hour = { low_min: 60_000, likely_min: 60_000, high_min: 60_000 };
    const times = [
      timesOf(operationOf('job:a', 0, { minutes: hour })),
      timesOf(operationOf('job:b', 0, { minutes: hour })),
      timesOf(operationOf('cure:c', 0, { minutes: hour, unattended: true })),
    ];
    const into = new Float64Array(3);
    let sum = 0;
    let logs = 0;
    const runs = 20_000;
    for (let run = 0; run < runs; run++) {
      drawMinutes(times, 0.3, 5, run, into);
      expect(into[0]).toBe(into[1]);
      expect(into[2]).toBe(60_000);
      const factor = into[0]! / 60_000;
      sum += factor;
      logs += Math.log(factor) * Math.log(factor);
    }
    expect(Math.abs(sum / runs - 1)).toBeLessThan((4 * 0.31) / Math.sqrt(runs));
    expect(logs / runs).toBeCloseTo(0.3 * 0.3 + (0.3 * 0.3) ** 2 / 4, 2);
  });
});

const questions = fc
  .tuple(fc.nat(100_000), fc.integer({ min: 1, max: 2 }))
  .map(([seed, jobs]) => randomQuestion(seed, 15, jobs));

it('times without spread end every run as the schedule does', () => {
  fc.assert(
    fc.property(questions, (question) => {
      const sure = {
        ...question,
        effort: 5,
        jobs: question.jobs.map((j) => ({
          ...j,
          operations: j.operations.map((o) => {
            const m = o.minutes.likely_min;
            return { ...o, minutes: { low_min: m, likely_min: m, high_min: m } };
          }),
        })),
      };
      const { schedule, list } = plannedOrder(sure);
      const prepared = prepareFinish({ question: sure, list, chance: { seed: 9, runs: 100, common: 0 } });
      expect(new Set(finishPart(prepared, 0, 20).ends)).toEqual(new Set([schedule.end_min]));
    }),
    { numRuns: 25 },
  );
});

it('half of the runs end no later than four in five; parts are as good as the whole', () => {
  fc.assert(
    fc.property(questions, (question) => {
      const chance = { seed: 3, runs: 100, common: 0.25 };
      const { schedule, list } = plannedOrder({ ...question, effort: 3, chance });
      expect(schedule.finish!.p50 <= schedule.finish!.p80).toBe(true);
      const prepared = prepareFinish({ question, list, chance });
      const parts = [finishPart(prepared, 60, 100), finishPart(prepared, 0, 60)];
      expect(finishFrom(prepared, parts)).toEqual(schedule.finish);
      expect(() => finishFrom(prepared, parts.slice(1))).toThrow(/60 runs of 100/);
    }),
    { numRuns: 15 },
  );
});

/** One operation on a floor that is always open: the days are those of its own times, sorted. */
it('P50 and P80 are the days of the sorted runs', () => {
  const floor = floorOf({ shifts: [{ weekdays: [1, 2, 3, 4, 5, 6, 7], from: '00:00', to: '23:59' }] });
  const job = {
    name: 'A',
    operations: [
      operationOf('cure:a', 0, { unattended: true, minutes: { low_min: 0, likely_min: 2000, high_min: 20_000 } }),
    ],
  };
  const question = { floor, jobs: [job], others: [], day: '2026-11-30' as Day, seed: 1 };
  const chance = { seed: 3, runs: 1001, common: 0 };
  const prepared = prepareFinish({ question, list: [0], chance });
  const part = finishPart(prepared, 0, 1001);
  const sorted = [...part.ends].sort((a, b) => a - b);
  const day = (end: number) =>
    new Date(Date.parse('2026-11-30') + Math.floor((end - 1) / 1440) * 86_400_000).toISOString().slice(0, 10);
  const { p50, p80 } = finishFrom(prepared, [part]);
  expect([p50, p80]).toEqual([day(sorted[500]!), day(sorted[800]!)]);
});
