import { addDays, type Day } from '../../foundation/day.ts';
import type { Schedule } from '../model.ts';
import type { ScheduleQuestion } from './ask.ts';
import { DAY_MIN, DAYS } from './calendar.ts';
import { Decoder } from './decode.ts';
import type { Problem } from './problem.ts';
import { problemOf } from './problem-of.ts';
import { drawMinutes, type Times, timesOf } from './times.ts';

/** A question and the order found for it: all that runs need, as plain data. */
export interface FinishTask {
  readonly question: ScheduleQuestion;
  /** Operations that are not done, by number: the order in which every run is planned again. */
  readonly list: readonly number[];
  readonly chance: NonNullable<ScheduleQuestion['chance']>;
}
export interface PreparedFinish {
  readonly problem: Problem;
  readonly list: Int32Array;
  readonly times: readonly Times[];
  readonly chance: FinishTask['chance'];
  readonly day: Day;
}
/** Runs `from` up to, not with, `to`. */
export interface FinishPart {
  readonly from: number;
  readonly to: number;
  /** End of the last operation in each run, minutes of the clock. */
  readonly ends: Float64Array;
}

/** @throws Refusal `teardown.nobody-can` */
export function prepareFinish({ question, list, chance }: FinishTask): PreparedFinish {
  const { problem } = problemOf(question);
  return finishOver(problem, Int32Array.from(list), chance, question.day);
}
export const finishOver = (
  problem: Problem,
  list: Int32Array,
  chance: FinishTask['chance'],
  day: Day,
): PreparedFinish => ({ problem, list, times: problem.work.map((w) => timesOf(w.operation)), chance, day });

/**
 * Ends of the runs `from` up to, not with, `to`.
 *
 * What: in each run the times are drawn anew and the same order is planned with them: the floor goes on by the list it
 * has. A run that ten years do not hold ends with them.
 * How: draws are keyed (seed, run), so that it does not matter who computes which part.
 */
export function finishPart(prepared: PreparedFinish, from: number, to: number): FinishPart {
  const { problem, list, times, chance } = prepared;
  const decoder = new Decoder(problem);
  const minutes = new Float64Array(problem.count);
  const ends = new Float64Array(to - from);
  for (let run = from; run < to; run++) {
    drawMinutes(times, chance.common, chance.seed, run, minutes);
    ends[run - from] = Math.min(DAYS * DAY_MIN, decoder.decode(list, minutes));
  }
  return { from, to, ends };
}

/** Days by which half and four in five of the runs have ended. Parts must cover the runs. */
export function finishFrom(prepared: PreparedFinish, parts: readonly FinishPart[]): NonNullable<Schedule['finish']> {
  const { chance, day } = prepared;
  const rising = endsOf(parts, chance.runs).sort();
  const at = (share: number) => dayOfEnd(day, rising[Math.max(0, Math.ceil(chance.runs * share) - 1)]!);
  return { p50: at(0.5), p80: at(0.8), seed: chance.seed, runs: chance.runs };
}
function endsOf(parts: readonly FinishPart[], runs: number): Float64Array {
  const all = new Float64Array(runs);
  let next = 0;
  for (const part of [...parts].sort((a, b) => a.from - b.from)) {
    if (part.from !== next) throw new Error(`runs ${next} to ${part.from} are missing or given twice`);
    all.set(part.ends, part.from);
    next = part.to;
  }
  if (next !== runs) throw new Error(`${next} runs of ${runs} were computed`);
  return all;
}

export const dayOf = (day: Day, clock: number): Day => addDays(day, Math.floor(clock / DAY_MIN));
/** What ends at midnight ends on the day before it. */
export const dayOfEnd = (day: Day, clock: number): Day => dayOf(day, Math.max(0, clock - 1));
