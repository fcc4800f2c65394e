import { addDays } from '../../foundation/day.ts';
import type { MapFinding } from '../model.ts';
import type { ScheduleQuestion } from './ask.ts';
import { DAY_MIN } from './calendar.ts';
import type { Decoder } from './decode.ts';
import { dayOf, dayOfEnd } from './finish.ts';
import type { Problem } from './problem.ts';

/** What the jigs make wait, or keep out. */
export function jigFindings(question: ScheduleQuestion, problem: Problem, made: Decoder): MapFinding[] {
  return problem.stays.flatMap((stay, s) => {
    const job = question.jobs[stay.job]!.name;
    const opener = stay.members.reduce((a, b) => (made.start[b]! < made.start[a]! ? b : a));
    const about = [problem.work[opener]!.operation.id];
    const wanted = Math.max(problem.ready[opener]!, ...Array.from(problem.before[opener]!, (p) => made.end[p]!));
    if (made.unchecked[s]) return [pastCheck(question, problem, made, s, job, about)];
    const mine = made.stayJig[s]!;
    const out: MapFinding[] = [];
    for (const j of stay.jigs) {
      const { id, name, from, to, because, good, goodUntil } = problem.jigs[j]!;
      if (j !== mine && made.stayEnd[s]! > good && made.stayStart[s]! >= wanted && goodUntil)
        out.push({
          code: 'jig-past-check',
          text: `The check of ${name} is good until ${goodUntil}; the stay of ${job} ends on ${dayOfEnd(question.day, made.stayEnd[s]!)}. It is not used for it.`,
          about: [id, ...about],
          remedy: `Have ${name} checked again if it is to be used`,
        });
      else
        for (let k = 0; k < from.length; k++) {
          if (from[k]! >= made.stayEnd[s]! || to[k]! <= wanted) continue;
          out.push({
            code: 'jig-booked',
            text: `${name} is taken until ${dayOf(question.day, to[k]! - 1)} (${because[k]}); its first free day is ${freeDay(question, problem, j, k)}. ${job} ${j === mine ? 'waits for it' : 'takes another'}.`,
            about: [id, ...about],
            remedy: 'Agree on other days with whoever booked it, or let the work before it take its time',
          });
        }
    }
    problem.stays.forEach((other, o) => {
      if (o === s || other.job === stay.job || made.stayJig[o] !== mine) return;
      if (made.stayEnd[o]! <= wanted || made.stayEnd[o]! > made.stayStart[s]!) return;
      out.push({
        code: 'job-waits',
        text: `${job} waits for ${problem.jigs[mine]!.name}, which ${question.jobs[other.job]!.name} holds until ${dayOfEnd(question.day, made.stayEnd[o]!)}.`,
        about: [problem.jigs[mine]!.id, ...about],
        remedy: 'Let the other job go first where its day matters more, or hire a jig',
      });
    });
    return out;
  });
}

/** The day after a booked span on which the jig is not booked by another. */
function freeDay({ day }: ScheduleQuestion, { jigs }: Problem, j: number, k: number): string {
  return addDays(day, Math.floor(jigs[j]!.to[k]! / DAY_MIN));
}

function pastCheck(
  { day }: ScheduleQuestion,
  { jigs, stays }: Problem,
  made: Decoder,
  s: number,
  job: string,
  about: readonly string[],
): MapFinding {
  const names = stays[s]!.jigs.map((j) => `${jigs[j]!.name} (good until ${jigs[j]!.goodUntil ?? 'no day'})`);
  return {
    code: 'jig-past-check',
    text: `No jig that fits ${job} is within its check to the end of the stay on ${dayOfEnd(day, made.stayEnd[s]!)}: ${names.join(', ')}. None is used; the days are those with a jig that is checked again by ${dayOf(day, made.stayStart[s]!)}.`,
    about: [...stays[s]!.jigs.map((j) => jigs[j]!.id), ...about],
    remedy: `Have a jig checked again before ${dayOf(day, made.stayStart[s]!)}`,
  };
}

export function lifeFindings(problem: Problem, made: Decoder): MapFinding[] {
  return problem.groups.flatMap((group) =>
    group.lives
      .filter(({ a, b, most }) => made.start[b]! - made.start[a]! > most)
      .map(({ a, b, most }): MapFinding => {
        const [first, then] = [problem.work[a]!, problem.work[b]!];
        return {
          code: 'life-not-kept',
          text: `"${then.operation.title}" of ${then.job} should begin within ${most} min of the start of "${first.operation.title}"; no time was found at which hands and shifts allow it. It begins ${made.start[b]! - made.start[a]!} min after.`,
          about: [first.operation.id, then.operation.id],
          remedy: 'Take a sealant with a longer working life, more hands for that day, or seal in two lots',
        };
      }),
  );
}
