import { Refusal } from '../../foundation/refusal.ts';
import type { MapFinding, Schedule, ScheduledOperation } from '../model.ts';
import type { ScheduleQuestion } from './ask.ts';
import { boundOf } from './bound.ts';
import { criticalChain } from './critical.ts';
import { Decoder } from './decode.ts';
import { jigFindings, lifeFindings } from './findings.ts';
import { dayOf, dayOfEnd, finishFrom, finishOver, finishPart } from './finish.ts';
import type { Problem } from './problem.ts';
import { mirrorOf, problemOf } from './problem-of.ts';
import { EFFORT, searchOrder } from './search.ts';

/**
 * Who does what when, in which jig, and when is it finished?
 *
 * What: operations of one or several jobs on the days of a floor. Hands work in the shifts, without breaks, closed days
 * and their own days off, the same persons from the start of an operation to its end; one that may pause goes on the
 * next day, one that may not lies within one shift. Drying, curing and what the installer does run on the clock, day and
 * night. Jigs are taken by stays (`staysOf`), working lives are kept (`within`).
 * How: times are the mean of three points, rounded up to 5 min. A search over lists (`searchOrder`), each made a schedule
 * by `Decoder`; beside it a bound (`boundOf`) and the chain that holds the end (`criticalChain`). Work that is done takes no time.
 * Not valid for: crews that work in different shifts: everybody on the floor works in all of them.
 * @param question effort and seed decide how long is looked; the same question gives the same answer
 * @returns minutes since midnight of the first day. Where something lacks the schedule is made as if it were there, and
 *   a finding says so
 * @throws Refusal `teardown.nobody-can`
 * @see shopfloor reference, sections 2.2 and 5.1
 */
export function scheduleOf(question: ScheduleQuestion): Schedule {
  const { schedule } = plannedOrder(question);
  return schedule;
}

/** The same, with the order of the list that was found: what runs of the chance need in other threads. */
export function plannedOrder(question: ScheduleQuestion): { schedule: Schedule; list: readonly number[] } {
  const { floor, day, seed, chance } = question;
  const { problem, findings } = problemOf(question);
  const bound = boundOf(problem);
  if (bound === Number.POSITIVE_INFINITY) refuseNever(problem);
  const { list } = searchOrder(problem, mirrorOf(problem, floor, day), bound, seed, question.effort ?? EFFORT);
  const made = new Decoder(problem);
  const end = problem.count > 0 ? made.decode(list) : 0;
  if (end === Number.POSITIVE_INFINITY) refuseNever(problem);
  const chain = criticalChain(problem, made);
  const finish = chance ? finishOver(problem, list, chance, day) : null;
  const schedule: Schedule = {
    from: day,
    operations: operationsOf(question, problem, made, new Set(chain.map((c) => c.op))),
    ends: question.jobs.map((job, j) => {
      let last = 0;
      for (let i = 0; i < problem.count; i++) if (problem.job[i] === j) last = Math.max(last, made.end[i]!);
      return { job: job.name, day: dayOfEnd(day, last), end_min: last };
    }),
    end_min: end,
    bound_min: bound,
    chain: chain.map(({ op }) => problem.work[op]!.operation.id),
    finish: finish ? finishFrom(finish, [finishPart(finish, 0, finish.chance.runs)]) : null,
    jigDays: jigDaysOf(question, problem, made),
    findings: saidOnce([...findings, ...jigFindings(question, problem, made), ...lifeFindings(problem, made)]),
  };
  return { schedule, list: Array.from(list) };
}

function operationsOf(
  { floor, day }: ScheduleQuestion,
  problem: Problem,
  made: Decoder,
  critical: ReadonlySet<number>,
): ScheduledOperation[] {
  return problem.work
    .map(({ job, operation }, i): ScheduledOperation => {
      const s = problem.stayOf[i]!;
      return {
        id: operation.id,
        job,
        start_min: made.start[i]!,
        end_min: made.end[i]!,
        startDay: dayOf(day, made.start[i]!),
        endDay: made.end[i]! > made.start[i]! ? dayOfEnd(day, made.end[i]!) : dayOf(day, made.end[i]!),
        crew: Array.from(made.crew[i]!).flatMap((p) => (p >= 0 ? [floor.crew[p]!.name] : [])),
        jig: s >= 0 && !made.unchecked[s] ? problem.jigs[made.stayJig[s]!]!.id : null,
        critical: critical.has(i),
      };
    })
    .map((o, i) => ({ o, i }))
    .sort((a, b) => a.o.start_min - b.o.start_min || a.o.end_min - b.o.end_min || a.i - b.i)
    .map(({ o }) => o);
}

/** Days on which a jig is held, first and last and nights between included. */
function jigDaysOf({ day }: ScheduleQuestion, problem: Problem, made: Decoder): Schedule['jigDays'] {
  return Array.from(problem.stays.keys())
    .sort((a, b) => made.stayStart[a]! - made.stayStart[b]!)
    .map((s) => {
      const from = Math.floor(made.stayStart[s]! / 1440);
      const to = Math.max(from, Math.floor((made.stayEnd[s]! - 1) / 1440));
      return {
        jig: problem.jigs[made.stayJig[s]!]!.id,
        from: dayOf(day, from * 1440),
        to: dayOf(day, to * 1440),
        days: to - from + 1,
        used: !made.unchecked[s],
      };
    })
    .flatMap(({ used, ...days }) => (used ? [days] : []));
}

function refuseNever(problem: Problem): never {
  const op = problem.work.find((_, i) => problem.hands[i]!.persons > 0)!.operation;
  throw new Refusal('teardown.nobody-can', {
    given: `within ten years the floor has no days on which "${op.title}" (${op.id}) and what follows it could be done`,
    allowed: 'shifts on days that are not closed, with those who hold the skill there',
    remedy: 'Look at the closed days of the floor and the days off of the crew',
  });
}

/** Two stays may meet the same jig: what is said of it is said once. */
const saidOnce = (all: readonly MapFinding[]): MapFinding[] =>
  all.filter((f, i) => all.findIndex((g) => g.code === f.code && g.text === f.text) === i);
