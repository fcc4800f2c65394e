import { addDays, type Day, dayNumber, daysBetween } from '../../foundation/day.ts';
import type { Engaged, TeardownDocument } from '../document.ts';
import type { Schedule, ScheduledOperation } from '../model.ts';
import type { ScheduleQuestion } from './ask.ts';
import { boundOf } from './bound.ts';
import { DAY_MIN } from './calendar.ts';
import { problemOf } from './problem-of.ts';
import { staysOf } from './stays.ts';

/** What a job leaves to those planned after it: days of jigs that it takes, and minutes of hands. */
export interface Taken {
  readonly others: TeardownDocument['others'];
  readonly engaged: readonly Engaged[];
}

/** A job stands in a jig: work that is done was done in it, and work is left. It is planned before those that do not. */
export const standsInJig = ({ jobs, floor }: ScheduleQuestion): boolean =>
  jobs.some((job, at) =>
    staysOf(job, at, (place) => (job.operations[place]!.done ? null : place), floor).stays.some((s) => s.begun),
  );

/** What the schedule of a job takes, under the name that those after it read. */
export function takenBy({ from, operations, jigDays }: Schedule, name: string): Taken {
  const persons = new Map<string, { start: number; end: number }[]>();
  for (const { crew, start_min: start, end_min: end } of operations)
    for (const person of crew) {
      const spans = persons.get(person) ?? [];
      const last = spans.at(-1);
      if (last && last.end === start) last.end = end;
      else if (end > start) spans.push({ start, end });
      persons.set(person, spans);
    }
  const engaged = [...persons].flatMap(([person, spans]) =>
    spans.map(({ start, end }): Engaged => {
      const [a, b] = [momentOf(from, start), momentOf(from, end)];
      return { name, person, from: a.day, from_at: a.clock, to: b.day, to_at: b.clock };
    }),
  );
  return { others: jigDays.map((j) => ({ name, jig: j.jig, from: j.from, to: j.to })), engaged };
}
function momentOf(from: Day, min: number): { day: Day; clock: string } {
  const of = Math.round(min) % DAY_MIN;
  const two = (n: number) => String(n).padStart(2, '0');
  return {
    day: addDays(from, Math.floor(Math.round(min) / DAY_MIN)),
    clock: `${two(Math.floor(of / 60))}:${two(of % 60)}`,
  };
}

/** The schedule of one job among several that are planned in turn. */
export interface Turn {
  /** What it is called among them. */
  readonly job: string;
  readonly schedule: Schedule;
}

/**
 * Schedules of jobs planned in turn, as one from a day on.
 *
 * What: days and hands as they are in each. The critical chain is that of the job that ends last.
 * @param day none begins before it
 * @param bound_min what no schedule of all of them together ends before, in any turn
 */
export function together(day: Day, turns: readonly Turn[], bound_min: number): Schedule {
  const shift = (s: Schedule) => daysBetween(day, s.from) * DAY_MIN;
  const ends = turns.flatMap(({ job, schedule }) =>
    schedule.ends.map((e) => ({ ...e, job, end_min: e.end_min + shift(schedule) })),
  );
  const end_min = ends.reduce((last, e) => Math.max(last, e.end_min), 0);
  const last = turns.find(({ schedule }) => schedule.end_min + shift(schedule) === end_min);
  return {
    from: day,
    operations: turns
      .flatMap((turn) =>
        turn.schedule.operations.map(
          (o): ScheduledOperation => ({
            ...o,
            job: turn.job,
            start_min: o.start_min + shift(turn.schedule),
            end_min: o.end_min + shift(turn.schedule),
            critical: o.critical && turn === last,
          }),
        ),
      )
      .sort((a, b) => a.start_min - b.start_min || a.end_min - b.end_min),
    ends,
    end_min,
    bound_min: Math.min(bound_min, end_min),
    chain: last?.schedule.chain ?? [],
    finish: null,
    jigDays: turns.flatMap(({ schedule }) => schedule.jigDays).sort((a, b) => dayNumber(a.from) - dayNumber(b.from)),
    findings: turns.flatMap(({ schedule }) => schedule.findings),
  };
}

/** Minute before which no schedule of a question ends; what other work takes of the hands is left out. @throws Refusal `teardown.nobody-can` */
export const leastEnd = (question: ScheduleQuestion): number => boundOf(problemOf(question).problem);
