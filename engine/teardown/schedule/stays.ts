import { type Day, dayNumber } from '../../foundation/day.ts';
import type { Floor } from '../floor-document.ts';
import type { MapFinding } from '../model.ts';
import { STAGES } from '../structure-document.ts';
import type { JobToDo, ScheduleQuestion } from './ask.ts';
import { DAY_MIN } from './calendar.ts';

/** A jig with the spans in which it is taken, minutes of the clock, rising and apart. */
export interface JigTime {
  readonly id: string;
  /** As a finding says it: its name; of two by one name the id beside it. */
  readonly name: string;
  readonly from: readonly number[];
  readonly to: readonly number[];
  readonly because: readonly string[];
  /** Its check is good until here; Infinity where it has none. */
  readonly good: number;
  readonly goodUntil: Day | null;
}
/** A job stands in a jig from the first of these operations until the last of them has ended. */
export interface Stay {
  readonly job: number;
  readonly kind: string;
  /** Numbers of its operations. */
  readonly members: readonly number[];
  /** Jigs that fit, by number. */
  readonly jigs: readonly number[];
  /** An operation of it is done already: the job stands in the jig from the first minute. */
  readonly begun: boolean;
}

export function jigTimes(floor: Floor, others: ScheduleQuestion['others'], day: Day): JigTime[] {
  const first = dayNumber(day);
  return floor.jigs.map((jig) => {
    const spans = [
      ...jig.booked.map((s) => ({ ...s, because: s.because ?? 'booked' })),
      ...others.filter((o) => o.jig === jig.id).map((o) => ({ from: o.from, to: o.to, because: o.name })),
    ]
      .map((s) => ({
        from: Math.max(0, (dayNumber(s.from) - first) * DAY_MIN),
        to: (dayNumber(s.to) - first + 1) * DAY_MIN,
        because: s.because,
      }))
      .filter((s) => s.to > 0 && s.to > s.from)
      .sort((a, b) => a.from - b.from || a.to - b.to);
    const from: number[] = [];
    const to: number[] = [];
    const because: string[] = [];
    for (const s of spans) {
      const last = to.length - 1;
      if (last >= 0 && s.from <= to[last]!) {
        if (s.to > to[last]!) because[last] = `${because[last]}, ${s.because}`;
        to[last] = Math.max(to[last]!, s.to);
      } else {
        from.push(s.from);
        to.push(s.to);
        because.push(s.because);
      }
    }
    const until = jig.check_good_until ?? null;
    const good = until === null ? Number.POSITIVE_INFINITY : (dayNumber(until) - first + 1) * DAY_MIN;
    const alone = floor.jigs.every((j) => j === jig || j.name !== jig.name);
    return {
      id: jig.id,
      name: alone ? jig.name : `${jig.name} (${jig.id})`,
      from,
      to,
      because,
      good,
      goodUntil: until,
    };
  });
}

/** One for each kind and job where stays by stage would wait for each other; not begun where that is still so. */
export type Staying = 'by stage' | 'one' | 'one, not begun';

/**
 * The stays in jigs of one job.
 *
 * What: operations that ask for the same kind of jig, on the same wing, in stages of the work that follow one another, are one stay: the
 * wing stands in the jig from the first to the last of them, nights and what is done beside included. A stage with work
 * of the job and none of it in that jig ends the stay: the wing leaves, and the next such operation begins another.
 * @param numberOf the number of an operation that is to be done, by its place in the job
 */
export function staysOf(
  job: JobToDo,
  at: number,
  numberOf: (place: number) => number | null,
  floor: Floor,
  staying: Staying = 'by stage',
): { stays: Stay[]; findings: MapFinding[] } {
  const findings: MapFinding[] = [];
  const stays: Stay[] = [];
  const worked = STAGES.filter((stage) => job.operations.some((o) => o.stage === stage));
  const kinds = [...new Set(job.operations.flatMap((o) => (o.jig === null ? [] : [o.jig])))];
  for (const { kind, hand } of kinds.flatMap((kind) => handsIn(job, kind).map((hand) => ({ kind, hand })))) {
    const inIt = inJigOf(job, kind, hand);
    const jigs = fitting(floor, kind, hand);
    for (const run of runsOf(
      worked,
      (stage) => staying !== 'by stage' || job.operations.some((o) => o.stage === stage && inIt(o)),
    )) {
      const mine = job.operations.flatMap((o, place) => (inIt(o) && run.includes(o.stage) ? [place] : []));
      const members = mine.flatMap((place) => numberOf(place) ?? []);
      if (members.length === 0) continue;
      if (jigs.length === 0) {
        findings.push(noJig(job, kind, hand, job.operations[mine[0]!]!.id));
        continue;
      }
      stays.push({
        job: at,
        kind,
        members,
        jigs,
        begun: staying !== 'one, not begun' && mine.some((place) => job.operations[place]!.done),
      });
    }
  }
  return { stays, findings };
}

function runsOf<T>(row: readonly T[], holds: (item: T) => boolean): T[][] {
  const runs: T[][] = [];
  let open = false;
  for (const item of row) {
    const in_ = holds(item);
    if (in_ && open) runs.at(-1)!.push(item);
    else if (in_) runs.push([item]);
    open = in_;
  }
  return runs;
}

type Hand = 'left' | 'right' | 'both';
/** The wings that stand in a jig of this kind: each takes one of its own. What is on no one wing goes with the first. */
function handsIn(job: JobToDo, kind: string): Hand[] {
  const hands = new Set(job.operations.flatMap((o) => (o.jig === kind ? [o.hand ?? job.side ?? 'both'] : [])));
  const wings = (['left', 'right'] as const).filter((h) => hands.has(h));
  return wings.length > 0 ? wings : ['both'];
}
function inJigOf(job: JobToDo, kind: string, hand: Hand): (o: JobToDo['operations'][number]) => boolean {
  const [first] = handsIn(job, kind);
  return (o) => {
    const own = o.hand ?? job.side ?? 'both';
    return o.jig === kind && (own === hand || (own === 'both' && hand === first));
  };
}

/** Jigs of the kind for this hand. A wing of both hands takes a jig for both where there is one. */
function fitting(floor: Floor, kind: string, side: Hand): number[] {
  const ofKind = floor.jigs.flatMap((j, n) => (j.kind === kind ? [n] : []));
  if (side !== 'both') return ofKind.filter((n) => floor.jigs[n]!.hand === side || floor.jigs[n]!.hand === 'both');
  const both = ofKind.filter((n) => floor.jigs[n]!.hand === 'both');
  return both.length > 0 ? both : ofKind;
}

function noJig(job: JobToDo, kind: string, of: Hand, id: string): MapFinding {
  const hand = of === 'both' ? '' : ` for the ${of} hand`;
  return {
    code: 'no-jig',
    text: `The floor has no jig of the kind ${kind}${hand}. ${job.name} is planned as if one were brought in.`,
    about: [id],
    remedy: 'Add the jig to the floor, or hire one for these days',
  };
}
