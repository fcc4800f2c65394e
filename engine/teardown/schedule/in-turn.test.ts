import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Day } from '../../foundation/day.ts';
import { readTeardown } from '../map/index.ts';
import type { Schedule } from '../model.ts';
import { ask, toy } from '../testing/toy.ts';
import type { ScheduleQuestion } from './ask.ts';
import { leastEnd, standsInJig, takenBy, together } from './in-turn.ts';
import { planFrom, scheduleQuestion } from './question-of.ts';
import { scheduleOf } from './schedule.ts';
import { checkSchedule } from './testing/check.ts';
import { floorOf, operationOf, randomQuestion } from './testing/random-floor.ts';

/** Every job of a question by itself, with what those before it take. */
function inTurn(question: ScheduleQuestion): Schedule[] {
  let { others } = question;
  let engaged = question.engaged ?? [];
  return question.jobs.map((job) => {
    const made = scheduleOf({ ...question, jobs: [job], others, engaged, effort: 4 });
    const taken = takenBy(made, job.name);
    others = [...others, ...taken.others];
    engaged = [...engaged, ...taken.engaged];
    return made;
  });
}
const questions = fc
  .tuple(fc.nat(1_000_000), fc.integer({ min: 2, max: 24 }), fc.integer({ min: 2, max: 4 }))
  .map(([seed, operations, jobs]) => randomQuestion(seed, operations, jobs));

describe('jobs planned in turn', () => {
  it('never take the same hands or the same jig at once, gone through minute by minute, and none ends before the bound', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const made = inTurn(question);
        const turns = made.map((schedule, i) => ({ job: question.jobs[i]!.name, schedule }));
        const all = together(question.day, turns, leastEnd(question));
        expect(checkSchedule(question, all)).toEqual([]);
        expect(all.bound_min).toBeLessThanOrEqual(all.end_min);
        expect(all.ends.map((e) => e.day)).toEqual(made.flatMap((s) => s.ends.map((e) => e.day)));
      }),
      { numRuns: 60 },
    );
  });
  it('one that comes later moves none that was there', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const fewer = inTurn({ ...question, jobs: question.jobs.slice(0, -1) });
        expect(inTurn(question).slice(0, -1)).toEqual(fewer);
      }),
      { numRuns: 20 },
    );
  });

  const floor = floorOf({
    crew: [{ name: 'M. Orne', skills: ['helper'], off: [] }],
    shifts: [{ weekdays: [1, 2, 3, 4, 5], from: '08:00', to: '16:00' }],
  });
  const of = (name: string) => ({
    name,
    operations: [operationOf(`off:${name}`, 180, { may_pause: false })],
  });
  it('one hand, three times three hours in shifts of eight: the third is the next morning, or the same day where it may pause', () => {
    const ask = { floor, jobs: [of('a'), of('b'), of('c')], others: [], day: '2026-11-23' as Day, seed: 1 };
    const starts = (q: ScheduleQuestion) => inTurn(q).map((s) => s.operations[0]!.start_min);
    expect(starts(ask)).toEqual([480, 660, 1440 + 480]);
    const pausing = { ...of('c'), operations: [{ ...of('c').operations[0]!, may_pause: true }] };
    expect(starts({ ...ask, jobs: [of('a'), of('b'), pausing] })).toEqual([480, 660, 840]);
    expect(takenBy(inTurn(ask)[1]!, 'b').engaged).toEqual([
      { name: 'b', person: 'M. Orne', from: '2026-11-23', from_at: '11:00', to: '2026-11-23', to_at: '14:00' },
    ]);
  });
  it('between other work there is time, and the critical chain goes over it', () => {
    const taken = (from_at: string, to_at: string) => ({
      ...{ name: 'z', person: 'M. Orne', from: '2026-11-23' as Day, to: '2026-11-23' as Day },
      from_at,
      to_at,
    });
    const engaged = [taken('08:00', '09:00'), taken('12:00', '14:00')];
    const before = operationOf('off:a', 180, { may_pause: false });
    const after = operationOf('off:b', 120, { may_pause: false, after: ['off:a'] });
    const made = scheduleOf({
      ...{ floor, engaged, others: [], day: '2026-11-23' as Day, seed: 1 },
      jobs: [{ name: 'a', operations: [before, after] }],
    });
    expect(made.operations.map((o) => [o.start_min, o.end_min])).toEqual([
      [540, 720],
      [840, 960],
    ]);
    expect(made.chain).toEqual(['off:a', 'off:b']);
  });
  it('of jobs that begin on different days the days stay what they are', () => {
    const base = { floor, others: [], seed: 1 };
    const first = scheduleOf({ ...base, jobs: [of('a')], day: '2026-11-23' as Day });
    const then = scheduleOf({ ...base, jobs: [of('b')], day: '2026-11-26' as Day });
    const all = together(
      '2026-11-20' as Day,
      [
        { job: 'A', schedule: first },
        { job: 'B', schedule: then },
      ],
      0,
    );
    expect(all.operations.map((o) => [o.job, o.startDay, o.start_min])).toEqual([
      ['A', '2026-11-23', 3 * 1440 + 480],
      ['B', '2026-11-26', 6 * 1440 + 480],
    ]);
    expect(all.operations.map((o) => o.critical)).toEqual([false, true]);
    expect(all.ends.map((e) => e.day)).toEqual(['2026-11-23', '2026-11-26']);
  });
  it('stands in a jig: work in it is done and work in it is left', () => {
    const jig = { id: 'jig-1', name: 'Jig', kind: 'wing', hand: 'both' as const, booked: [] };
    const ops = (done: readonly boolean[]) =>
      done.map((d, i) => ({ ...operationOf(`put:${i}`, 180, { jig: 'wing' }), done: d }));
    const asked = (done: readonly boolean[]) =>
      standsInJig({
        ...{ floor: { ...floor, jigs: [jig] }, others: [], day: '2026-11-23' as Day, seed: 1 },
        jobs: [{ name: 'a', operations: ops(done) }],
      });
    expect([asked([false, false]), asked([true, false]), asked([true, true])]).toEqual([false, true, false]);
  });
});

describe('the day from which on a job is planned', () => {
  const document = (more: object) =>
    readTeardown(ask(toy({ parts: { lid: [60] } }), ['lid'], { day: '2026-11-23', ...more }));
  it.each([
    ['its first day', {}, '2026-11-23'],
    ['the day asked where that is later', { as_of: '2026-12-02' }, '2026-12-02'],
    ['its first day where the day asked lies before', { as_of: '2026-10-01' }, '2026-11-23'],
    [
      'the day of the last record',
      { recorded: [{ what: 'done', operation: 'open:row-lid', on: '2026-11-27', by: 'M. Orne' }] },
      '2026-11-27',
    ],
  ])('%s', (_, more, day) => {
    expect(planFrom(document(more))).toBe(day);
    const question = scheduleQuestion({ ...document(more), floor: floorOf({}) }, []);
    expect(question?.day).toBe(day);
  });
});
