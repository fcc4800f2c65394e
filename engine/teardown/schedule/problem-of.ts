import { type Day, dayNumber } from '../../foundation/day.ts';
import type { Floor } from '../floor-document.ts';
import type { MapFinding } from '../model.ts';
import type { ScheduleQuestion } from './ask.ts';
import { Calendar, DAY_MIN, DAYS, mirrored, stretchesOf } from './calendar.ts';
import { handsOf, type OperationToDo } from './crew.ts';
import { Decoder } from './decode.ts';
import { doneBy } from './done-by.ts';
import { engagedOf } from './engaged.ts';
import { type Life, togetherOf } from './life.ts';
import type { Off, Problem } from './problem.ts';
import { jigTimes, type Stay, type Staying, staysOf } from './stays.ts';
import { plannedMinutes, takesHands } from './times.ts';

/**
 * The same work read from its end: what waited is waited for. It keeps no working lives, and gives an order alone.
 */
export function mirrorOf(problem: Problem, floor: ScheduleQuestion['floor'], day: Day): Problem {
  const whole = problem.calendar.whole;
  const span = DAYS * DAY_MIN;
  const back = (row: ArrayLike<number>, end: number) => Array.from(row, (t) => end - t).reverse();
  const turned = ({ from, to }: Off): Off => ({
    from: Float64Array.from(back(to, whole)),
    to: Float64Array.from(back(from, whole)),
  });
  return {
    ...problem,
    calendar: new Calendar(mirrored(stretchesOf(floor, day))),
    off: problem.off.map(turned),
    engaged: problem.engaged.map(turned),
    hands: problem.hands.map((h) => ({ ...h, checks: [] })),
    before: problem.behind,
    behind: problem.before,
    order: problem.order.slice().reverse(),
    stays: problem.stays.map((s) => ({ ...s, begun: false })),
    jigs: problem.jigs.map((j) => ({
      ...j,
      from: back(j.to, span),
      to: back(j.from, span),
      because: [...j.because].reverse(),
      good: Number.POSITIVE_INFINITY,
    })),
    groupOf: new Int32Array(problem.count).fill(-1),
    groups: [],
  };
}

/**
 * A question as numbers.
 * @throws Refusal `teardown.nobody-can`
 */
export function problemOf(question: ScheduleQuestion): { problem: Problem; findings: MapFinding[] } {
  for (const stays of ['by stage', 'one', 'one, not begun'] as const) {
    const made = numbered(question, stays);
    if (!Number.isNaN(new Decoder(made.problem).jobByJob(made.problem.order))) return made;
  }
  throw new Error('a job waits for a jig that it holds');
}

function numbered(question: ScheduleQuestion, staying: Staying): { problem: Problem; findings: MapFinding[] } {
  const { floor, jobs, day } = question;
  const findings: MapFinding[] = [];
  const numbers = jobs.map(() => new Map<string, number>());
  let count = 0;
  jobs.forEach((job, j) => {
    for (const o of job.operations) if (!o.done) numbers[j]!.set(o.id, count++);
  });
  const work: OperationToDo[] = [];
  const jobOf: number[] = [];
  jobs.forEach((job, j) => {
    const known = new Set(job.operations.map((o) => o.id));
    for (const operation of job.operations) {
      if (operation.done) continue;
      const stray = operation.after.filter((id) => !known.has(id));
      if (stray.length > 0) findings.push(strayNeed(job.name, operation.id, stray));
      const before = operation.after.flatMap((id) => numbers[j]!.get(id) ?? []);
      const own = { job: job.name, operation, before: [...new Set(before)] };
      work.push(operation.duplicate ? { ...own, doneBy: doneBy(job.operations, operation) } : own);
      jobOf.push(j);
    }
  });
  const before = work.map((w) => Int32Array.from(w.before));
  const order = orderOf(work);
  const minutes = Float64Array.from(work, (w) => plannedMinutes(w.operation));
  const stretches = stretchesOf(floor, day);
  const calendar = new Calendar(stretches);
  const { hands, findings: ofCrew } = handsOf(work, floor.crew);
  findings.push(...ofCrew);

  const stays: Stay[] = [];
  jobs.forEach((job, j) => {
    const found = staysOf(job, j, (place) => numbers[j]!.get(job.operations[place]!.id) ?? null, floor, staying);
    stays.push(...found.stays);
    findings.push(...found.findings);
  });
  const stayOf = new Int32Array(count).fill(-1);
  stays.forEach((stay, s) => {
    for (const i of stay.members) stayOf[i] = s;
  });

  const lives = work.flatMap(({ operation: o }, b): Life[] => {
    const a = o.within ? numbers[jobOf[b]!]!.get(o.within.of) : undefined;
    return a === undefined ? [] : [{ a, b, most: o.within!.min }];
  });
  const { together, findings: ofLives } = togetherOf(work, order, lives, minutes);
  findings.push(...ofLives);
  const groupOf = new Int32Array(count).fill(-1);
  together.forEach((group, g) => {
    for (const i of group.members) groupOf[i] = g;
  });

  const longest = calendar.longestShift();
  const pauses = Uint8Array.from(work, ({ operation: o, job }, i) => {
    if (o.may_pause || !takesHands(o)) return 1;
    if (minutes[i]! <= longest) return 0;
    findings.push(tooLong(job, o.title, o.id, minutes[i]!, longest));
    return 1;
  });
  const first = dayNumber(day);
  const ready = Float64Array.from(jobOf, (j) =>
    Math.max(0, (jobs[j]!.ready ? dayNumber(jobs[j]!.ready!) - first : 0) * DAY_MIN),
  );
  const problem: Problem = {
    count,
    calendar,
    work,
    job: Int32Array.from(jobOf),
    jobs: jobs.length,
    turn: [...jobs.keys()].sort((a, b) => begunIn(stays, b) - begunIn(stays, a)),
    minutes,
    hands,
    off: offOf(floor.crew, calendar, day),
    engaged: engagedOf(floor.crew, question.engaged ?? [], calendar, day),
    pauses,
    ready,
    before,
    behind: behindOf(before),
    order: Int32Array.from(order),
    stayOf,
    stays,
    jigs: jigTimes(floor, question.others, day),
    groupOf,
    groups: together,
  };
  return { problem, findings };
}

const begunIn = (stays: readonly Stay[], job: number): number => (stays.some((s) => s.job === job && s.begun) ? 1 : 0);

function behindOf(before: readonly Int32Array[]): Int32Array[] {
  const behind: number[][] = before.map(() => []);
  before.forEach((list, i) => {
    for (const b of list) behind[b]!.push(i);
  });
  return behind.map((list) => Int32Array.from(list));
}

/** Each after what it waits for, else as given. */
function orderOf(work: readonly OperationToDo[]): number[] {
  const placed = new Uint8Array(work.length);
  const order: number[] = [];
  const open = new Uint8Array(work.length);
  const place = (i: number) => {
    if (placed[i]) return;
    if (open[i]) throw new Error(`"${work[i]!.operation.id}" waits for itself`);
    open[i] = 1;
    for (const b of work[i]!.before) place(b);
    placed[i] = 1;
    order.push(i);
  };
  work.forEach((_, i) => {
    place(i);
  });
  return order;
}

function offOf(crew: Floor['crew'], calendar: Calendar, day: Day): Off[] {
  const first = dayNumber(day);
  return crew.map((person) => {
    const off = new Uint8Array(DAYS);
    for (const s of person.off)
      off.fill(1, Math.max(0, dayNumber(s.from) - first), Math.max(0, dayNumber(s.to) - first + 1));
    const from: number[] = [];
    const to: number[] = [];
    for (let d = 0; d < DAYS; d++) {
      if (!off[d]) continue;
      const begin = calendar.toWork(d * DAY_MIN);
      const end = calendar.toWork((d + 1) * DAY_MIN);
      if (end <= begin) continue;
      if (to.at(-1) === begin) to[to.length - 1] = end;
      else {
        from.push(begin);
        to.push(end);
      }
    }
    return { from: Float64Array.from(from), to: Float64Array.from(to) };
  });
}

function strayNeed(job: string, id: string, stray: readonly string[]): MapFinding {
  return {
    code: 'need-unknown',
    text: `${id} of ${job} waits for ${stray.join(', ')}, which is not on the plan. It is planned without waiting.`,
    about: [id, ...stray],
    remedy: 'Put what it waits for on the plan, or take the need away',
  };
}
function tooLong(job: string, title: string, id: string, minutes: number, longest: number): MapFinding {
  return {
    code: 'longer-than-a-shift',
    text: `"${title}" of ${job} may not be left overnight and takes ${minutes} min; the longest shift has ${longest}. It is planned over night.`,
    about: [id],
    remedy: 'Share it out to more hands, lengthen one shift, or say that it may pause',
  };
}
