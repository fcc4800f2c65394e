import { addDays, type Day, dayNumber } from '../../../foundation/day.ts';
import type { Operation, Schedule, ScheduledOperation } from '../../model.ts';
import type { ScheduleQuestion } from '../ask.ts';

/**
 * Goes through a schedule minute by minute, with nothing of the program that made it: nobody in two places, skills held,
 * work only in shifts and on days at work, each operation its whole time, after what it needs, jigs for one job at a
 * time, in their check and not booked, working lives kept. What a finding excuses is left to whoever calls.
 * @returns what is wrong, in words
 */
export function checkSchedule(question: ScheduleQuestion, schedule: Schedule): string[] {
  const wrong: string[] = [];
  const { floor, day } = question;
  const minuteOf = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
  const excused = new Set(schedule.findings.map((f) => f.code));
  /** Lives that no plan can keep, by what they are of. */
  const tooShort = new Set(schedule.findings.flatMap((f) => (f.code === 'life-too-short' ? f.about : [])));
  const dayAt = (minute: number): Day => addDays(day, Math.floor(minute / 1440));
  const shiftAt = (minute: number): string | null => {
    const d = dayAt(minute);
    const weekday = ((((dayNumber(d) + 3) % 7) + 7) % 7) + 1;
    if (floor.closed.some((s) => s.from <= d && d <= s.to)) return null;
    const m = minute % 1440;
    for (const s of floor.shifts)
      if (s.weekdays.includes(weekday) && m >= minuteOf(s.from) && m < minuteOf(s.to))
        if (!(s.break && m >= minuteOf(s.break.from) && m < minuteOf(s.break.to))) return d;
    return null;
  };
  const there = (name: string, minute: number): boolean => {
    const d = dayAt(minute);
    const person = floor.crew.find((c) => c.name === name)!;
    return !person.off.some((s) => s.from <= d && d <= s.to);
  };
  const done = new Map<string, ScheduledOperation>(schedule.operations.map((o) => [`${o.job}/${o.id}`, o]));
  const busy = new Set<string>();
  const holding = new Map<string, string>();
  for (const job of question.jobs) {
    const ready = job.ready ? Math.max(0, (dayNumber(job.ready) - dayNumber(day)) * 1440) : 0;
    for (const o of job.operations) {
      if (o.done) continue;
      const name = `${job.name}/${o.id}`;
      const s = done.get(name);
      if (!s) {
        wrong.push(`${name} is not on the schedule`);
        continue;
      }
      if (s.start_min < ready) wrong.push(`${name} begins before the job is ready`);
      for (const id of o.after) {
        const b = done.get(`${job.name}/${id}`);
        if (b && b.end_min > s.start_min) wrong.push(`${name} begins before ${id} has ended`);
      }
      if (o.within) {
        const a = done.get(`${job.name}/${o.within.of}`);
        if (a && s.start_min - a.start_min > o.within.min && !tooShort.has(o.id))
          wrong.push(`${name} begins ${s.start_min - a.start_min} min after ${o.within.of}, ${o.within.min} allowed`);
      }
      checkHands(name, o, s);
    }
  }

  /** What was done by hands right before, over what takes none. */
  function workBefore(o: Operation): string[] {
    const all = question.jobs.find((j) => j.operations.includes(o))!.operations;
    return o.after.flatMap((id) => {
      const b = all.find((x) => x.id === id);
      if (!b || b.done) return [];
      return b.unattended || b.who === 'installer' ? workBefore(b) : [id];
    });
  }

  function checkHands(name: string, o: Operation, s: ScheduledOperation): void {
    const exact = (o.minutes.low_min + 4 * o.minutes.likely_min + o.minutes.high_min) / 6;
    const minutes = Math.ceil(exact / 5 - 1e-6) * 5;
    if (o.unattended || o.who === 'installer') {
      if (s.end_min - s.start_min !== minutes) wrong.push(`${name} lasts ${s.end_min - s.start_min}, not ${minutes}`);
      if (s.crew.length > 0) wrong.push(`${name} takes hands`);
      return;
    }
    if (minutes === 0) return;
    if (new Set(s.crew).size !== s.crew.length) wrong.push(`${name} has a person twice`);
    if (s.crew.length !== o.persons && !excused.has('crew-too-small'))
      wrong.push(`${name} has ${s.crew.length} persons`);
    const skilled = s.crew.filter(
      (c) => o.skill === null || floor.crew.find((p) => p.name === c)!.skills.includes(o.skill),
    );
    if (skilled.length === 0 || (skilled.length < s.crew.length && !excused.has('crew-too-small')))
      wrong.push(`${name} lacks the skill ${o.skill}`);
    if (o.duplicate && !excused.has('no-second-person'))
      for (const id of workBefore(o))
        if (done.get(`${s.job}/${id}`)!.crew.some((c) => s.crew.includes(c)))
          wrong.push(`${name} is done by somebody who did ${id}`);
    let worked = 0;
    const days = new Set<string>();
    for (let m = s.start_min; m < s.end_min; m++) {
      const shift = shiftAt(m);
      if (!shift || !s.crew.every((c) => there(c, m))) continue;
      worked++;
      days.add(shift);
    }
    for (let m = s.start_min; m < s.end_min; m++)
      for (const c of s.crew) {
        if (busy.has(`${c} ${m}`)) {
          wrong.push(`${c} is in two places at ${m}, one of them ${name}`);
          m = s.end_min;
          break;
        }
        busy.add(`${c} ${m}`);
      }
    if (worked !== minutes) wrong.push(`${name} is worked on for ${worked} min, not ${minutes}`);
    if (!shiftAt(s.start_min) || !shiftAt(s.end_min - 1)) wrong.push(`${name} begins or ends outside a shift`);
    if (!o.may_pause && days.size > 1 && !excused.has('longer-than-a-shift')) wrong.push(`${name} is left overnight`);
  }

  for (const job of question.jobs)
    for (const [a, b] of staysOf(job.operations, done, job.name))
      for (let m = a.start; m < b; m++) {
        const key = `${a.jig} ${m}`;
        if (holding.has(key) && holding.get(key) !== `${job.name} ${a.start}`) {
          wrong.push(`${a.jig} holds two stays at ${m}`);
          break;
        }
        holding.set(key, `${job.name} ${a.start}`);
        const d = dayAt(m);
        const jig = floor.jigs.find((j) => j.id === a.jig)!;
        const taken = [...jig.booked, ...question.others.filter((x) => x.jig === jig.id)];
        if (taken.some((t) => t.from <= d && d <= t.to)) {
          wrong.push(`${a.jig} is booked on ${d}`);
          break;
        }
        if (jig.check_good_until && d > jig.check_good_until) {
          wrong.push(`${a.jig} is past its check on ${d}`);
          break;
        }
      }
  return wrong;
}

const STAGES = ['arrive', 'prepare', 'take_down', 'bare', 'dry', 'apart', 'wet', 'finish', 'hand_over'];
/** Spans in which a job holds a jig: from the first to the last use in stages that follow one another. */
function staysOf(
  operations: readonly Operation[],
  done: ReadonlyMap<string, ScheduledOperation>,
  job: string,
): [{ jig: string; start: number }, number][] {
  const spans: [{ jig: string; start: number }, number][] = [];
  for (const kind of new Set(operations.map((o) => o.jig).filter((k) => k !== null))) {
    let run: ScheduledOperation[] = [];
    const close = () => {
      if (run.length > 0 && run[0]!.jig)
        spans.push([
          { jig: run[0]!.jig, start: Math.min(...run.map((r) => r.start_min)) },
          Math.max(...run.map((r) => r.end_min)),
        ]);
      run = [];
    };
    for (const stage of STAGES) {
      const here = operations.filter((o) => o.stage === stage);
      if (here.length === 0) continue;
      const using = here.filter((o) => o.jig === kind);
      if (using.length === 0) close();
      run.push(...using.flatMap((o) => done.get(`${job}/${o.id}`) ?? []));
    }
    close();
  }
  return spans;
}
