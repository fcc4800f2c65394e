import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundOf } from './bound.ts';
import { criticalChain } from './critical.ts';
import { Decoder } from './decode.ts';
import { problemOf } from './problem-of.ts';
import { scheduleOf } from './schedule.ts';
import { checkSchedule } from './testing/check.ts';
import { floorOf, operationOf, randomQuestion } from './testing/random-floor.ts';
import { plannedMinutes } from './times.ts';

const questions = fc
  .tuple(fc.nat(1_000_000), fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 3 }))
  .map(([seed, operations, jobs]) => randomQuestion(seed, operations, jobs));
const runs = { numRuns: 60 };

it('nothing is wrong with any schedule, gone through minute by minute', () => {
  fc.assert(
    fc.property(questions, (question) => {
      expect(checkSchedule(question, scheduleOf({ ...question, effort: 8 }))).toEqual([]);
    }),
    runs,
  );
});

it('the end is not below the bound, nor is the end of any job before its start', () => {
  fc.assert(
    fc.property(questions, (question) => {
      const made = scheduleOf({ ...question, effort: 8 });
      expect(made.bound_min).toBeLessThanOrEqual(made.end_min);
      expect(Math.max(0, ...made.ends.map((e) => e.end_min))).toBe(made.end_min);
    }),
    runs,
  );
});

/** On a floor that never closes, with jigs that are always free: one thing after the other is the longest it may take. */
it('takes no longer than the sum of all times', () => {
  fc.assert(
    fc.property(questions, (question) => {
      const open = floorOf({
        crew: question.floor.crew.map((c) => ({ ...c, off: [] })),
        shifts: [{ weekdays: [1, 2, 3, 4, 5, 6, 7], from: '00:00', to: '23:59' }],
      });
      const jobs = question.jobs.map(({ name, operations }) => ({
        name,
        operations: operations.map((o) => ({ ...o, jig: null, within: null, may_pause: true })),
      }));
      const made = scheduleOf({ ...question, floor: open, jobs, others: [], effort: 4 });
      const sum = jobs.flatMap((j) => j.operations).reduce((s, o) => s + plannedMinutes(o), 0);
      expect(made.end_min).toBeLessThanOrEqual(sum + Math.floor(made.end_min / 1440));
    }),
    runs,
  );
});

describe('the critical chain', () => {
  it('leaves none of its operations a minute between the one before it and its own start', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const { problem } = problemOf(question);
        const made = new Decoder(problem);
        made.decode(problem.order);
        const chain = criticalChain(problem, made);
        expect(chain.length).toBeGreaterThan(0);
        expect(made.end[chain.at(-1)!.op]).toBe(Math.max(...made.end));
        chain.slice(1).forEach(({ op, waits }, k) => {
          const by = chain[k]!.op;
          if (waits === 'need') expect(problem.before[op]).toContain(by);
          if (waits === 'hands') expect(made.crew[op]!.some((p) => made.crew[by]!.includes(p))).toBe(true);
          if (waits === 'jig') expect(problem.stayOf[by]).not.toBe(problem.stayOf[op]);
          if (waits !== 'need' && waits !== 'hands') return;
          for (let m = made.end[by]!; m < made.start[op]!; m++)
            expect(couldBegin(question, problem, made, op, m)).toBe(false);
        });
      }),
      { numRuns: 40 },
    );
  });
  it('names nothing else as critical, and everything on it', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const made = scheduleOf({ ...question, effort: 2 });
        expect(
          made.operations
            .filter((o) => o.critical)
            .map((o) => o.id)
            .sort(),
        ).toEqual([...made.chain].sort());
      }),
      { numRuns: 20 },
    );
  });
});

/** Are the hands of an operation all at work at this minute, and does it fit into what is left of the day? By the clock. */
function couldBegin(
  { floor, day }: ReturnType<typeof randomQuestion>,
  problem: ReturnType<typeof problemOf>['problem'],
  made: Decoder,
  op: number,
  minute: number,
): boolean {
  const crew = Array.from(made.crew[op]!).filter((p) => p >= 0);
  if (crew.length === 0) return true;
  const date = (m: number) => new Date(Date.parse(day) + Math.floor(m / 1440) * 86_400_000);
  const at = (m: number, over: 'breaks' | 'no breaks') => {
    const d = date(m).toISOString().slice(0, 10);
    const weekday = date(m).getUTCDay() || 7;
    const clock = `${String(Math.floor((m % 1440) / 60)).padStart(2, '0')}:${String(m % 60).padStart(2, '0')}`;
    const rests = (s: (typeof floor.shifts)[number]) => s.break && s.break.from <= clock && clock < s.break.to;
    return (
      !floor.closed.some((s) => s.from <= d && d <= s.to) &&
      !crew.some((p) => floor.crew[p]!.off.some((s) => s.from <= d && d <= s.to)) &&
      floor.shifts.some(
        (s) =>
          s.weekdays.includes(weekday) && s.from <= clock && clock < s.to && (over === 'breaks' || rests(s) !== true),
      )
    );
  };
  if (!at(minute, 'no breaks')) return false;
  if (problem.pauses[op]) return true;
  let left = problem.minutes[op]!;
  for (let m = minute; at(m, 'breaks') && left > 0; m++) if (at(m, 'no breaks')) left--;
  return left === 0;
}

/** Stated of the bound: the list search is no proof, and what it finds may lie above by chance. */
describe('more hands, more jobs', () => {
  it('a further hand who can do everything never raises the bound', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const { problem, findings } = problemOf(question);
        fc.pre(!findings.some((f) => f.code === 'crew-too-small'));
        const more = {
          ...question.floor,
          crew: [...question.floor.crew, { name: 'More', skills: ['metal', 'jig', 'fuel'], off: [] }],
        };
        expect(boundOf(problemOf({ ...question, floor: more }).problem)).toBeLessThanOrEqual(boundOf(problem));
      }),
      runs,
    );
  });
  it('beside another job none ends before its bound alone', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const together = scheduleOf({ ...question, effort: 4 });
        question.jobs.forEach((job, j) => {
          expect(together.ends[j]!.end_min).toBeGreaterThanOrEqual(
            boundOf(problemOf({ ...question, jobs: [job] }).problem),
          );
        });
      }),
      runs,
    );
  });
  it('two jobs of one hand take as long as both, in any order', () => {
    const work = (name: string, minutes: number) => ({ name, operations: [operationOf('job:a', minutes)] });
    const made = scheduleOf({
      floor: floorOf(),
      jobs: [work('A', 100), work('B', 130)],
      others: [],
      day: '2026-11-30' as never,
      seed: 3,
    });
    expect(made.end_min).toBe(8 * 60 + 230);
    expect(made.ends.map((e) => e.end_min - 480)).toEqual([100, 230]);
  });
});

it('what is done takes no time, and what needs it may begin', () => {
  const operations = [operationOf('job:a', 300, { done: true }), operationOf('job:b', 60, { after: ['job:a'] })];
  const made = scheduleOf({
    floor: floorOf(),
    jobs: [{ name: 'A', operations }],
    others: [],
    day: '2026-11-30' as never,
    seed: 1,
  });
  expect(made.operations.map((o) => [o.id, o.start_min, o.end_min])).toEqual([['job:b', 480, 540]]);
});

it('the same question gives the same answer', () => {
  fc.assert(
    fc.property(questions, (question) => {
      const asked = { ...question, effort: 60, chance: { seed: 4, runs: 100, common: 0.2 } };
      expect(scheduleOf(asked)).toEqual(scheduleOf(asked));
    }),
    { numRuns: 10 },
  );
});
