import { Refusal } from '../../foundation/refusal.ts';
import type { Floor } from '../floor-document.ts';
import type { MapFinding, Operation } from '../model.ts';
import { plannedMinutes, takesHands } from './times.ts';

/** Who may do an operation, and how many of them do. */
export interface Hands {
  /** 0: none of ours. */
  readonly persons: number;
  /** By number on the crew; those that the rest of the work misses least come first. */
  readonly able: Int32Array;
  /** All who could do it if nobody had to be kept away, rising. */
  readonly holders: Int32Array;
  /** Operations that it checks. Whoever did none of them may do it as well as those in `able`. */
  readonly checks: readonly number[];
  /** Kept away, since they are to check it. */
  readonly away: readonly number[];
  /** So many of the first must be among them: fewer hold the skill than persons are needed. */
  readonly must: number;
}
export interface OperationToDo {
  readonly job: string;
  readonly operation: Operation;
  /** Numbers of what must be finished, of those that are not done. */
  readonly before: readonly number[];
  /** Of a duplicate inspection: names of those who did what it checks, as far as that is done and recorded. */
  readonly doneBy?: readonly string[];
}

/**
 * Who may do what.
 *
 * What: all persons of an operation hold its skill, as long as enough of the crew do. Where fewer do, all of these and
 * others who help; where the crew is smaller than the persons needed, all of it: both are findings. A duplicate
 * inspection is done by persons who did none of the operations right before it, over drying and the installer's work back
 * to the hands that did it; so many as it takes are kept away from these, those whom they miss least.
 * Not valid for: finished work of which no record says who did it.
 * @throws Refusal `teardown.nobody-can`
 */
export function handsOf(
  work: readonly OperationToDo[],
  crew: Floor['crew'],
): { hands: Hands[]; findings: MapFinding[] } {
  const findings: MapFinding[] = [];
  const everybody = crew.map((_, p) => p);
  const holders = work.map(({ operation: o, job }) => {
    if (!takesHands(o)) return [];
    const able = everybody.filter((p) => o.skill === null || crew[p]!.skills.includes(o.skill));
    if (able.length === 0) refuseNobody(o, job);
    return able;
  });
  const missed = new Float64Array(crew.length);
  work.forEach(({ operation: o }, i) => {
    for (const p of holders[i]!) missed[p]! += (plannedMinutes(o) * o.persons) / holders[i]!.length;
  });
  const sorted = (list: readonly number[]) => [...list].sort((a, b) => missed[a]! - missed[b]! || a - b);
  const hands = work.map(({ operation: o }, i): Hands => {
    const able = holders[i]!;
    if (!takesHands(o))
      return { persons: 0, able: new Int32Array(0), holders: new Int32Array(0), checks: [], away: [], must: 0 };
    if (able.length >= o.persons)
      return {
        persons: o.persons,
        able: Int32Array.from(sorted(able)),
        holders: Int32Array.from(able),
        checks: [],
        away: [],
        must: 0,
      };
    findings.push(tooFew(work[i]!, able.length, crew));
    const rest = everybody.filter((p) => !able.includes(p));
    return {
      persons: Math.min(o.persons, crew.length),
      able: Int32Array.from([...sorted(able), ...sorted(rest)]),
      holders: Int32Array.from(everybody),
      checks: [],
      away: [],
      must: able.length,
    };
  });
  work.forEach(({ operation }, i) => {
    if (!operation.duplicate || !takesHands(operation)) return;
    hands[i] = withoutThose(work[i]!, hands[i]!, crew, findings);
    keepApart(work, hands, i, crew, findings);
  });
  return { hands, findings };
}

/** Without those who did the finished work, as long as enough are left. */
function withoutThose(w: OperationToDo, own: Hands, crew: Floor['crew'], findings: MapFinding[]): Hands {
  const did = new Set(crew.flatMap(({ name }, p) => (w.doneBy?.includes(name) ? [p] : [])));
  const able = own.able.filter((p) => !did.has(p));
  if (able.length === own.able.length) return own;
  if (own.must === 0 && able.length >= own.persons)
    return { ...own, able, holders: own.holders.filter((p) => !did.has(p)) };
  findings.push(
    notIndependent(
      w,
      Array.from(did, (p) => crew[p]!.name),
    ),
  );
  return own;
}

/** Operations whose work a duplicate inspection checks: the last with hands before it. */
export function checkedBy(work: readonly OperationToDo[], at: number): number[] {
  const found = new Set<number>();
  const seen = new Set<number>();
  const back = (i: number) => {
    for (const b of work[i]!.before) {
      if (seen.has(b)) continue;
      seen.add(b);
      if (takesHands(work[b]!.operation)) found.add(b);
      else back(b);
    }
  };
  back(at);
  return [...found].sort((a, b) => a - b);
}

/** The persons whom the checked work misses least inspect, and take no part in it. */
function keepApart(
  work: readonly OperationToDo[],
  hands: Hands[],
  at: number,
  crew: Floor['crew'],
  findings: MapFinding[],
): void {
  const checked = checkedBy(work, at);
  const own = hands[at]!;
  const trouble = (p: number) =>
    checked.filter((c) => {
      const { able, persons, must } = hands[c]!;
      const rank = able.indexOf(p);
      return rank >= 0 && (able.length <= persons || rank < must);
    }).length;
  const wanted = (p: number) =>
    checked.reduce((sum, c) => {
      const { able } = hands[c]!;
      return able.includes(p) ? sum + plannedMinutes(work[c]!.operation) / able.length : sum;
    }, 0);
  const must = Array.from(own.able.slice(0, own.must));
  const order = Array.from(own.able.slice(own.must)).sort((a, b) => trouble(a) - trouble(b) || wanted(a) - wanted(b));
  const inspectors = [...must, ...order].slice(0, own.persons);
  hands[at] = { ...own, able: Int32Array.from(inspectors), checks: own.must > 0 ? [] : checked };
  const shared = new Set<string>();
  for (const c of checked)
    for (const p of inspectors) {
      const { able, persons, must: first } = hands[c]!;
      const rank = able.indexOf(p);
      if (rank < 0) hands[c] = { ...hands[c]!, away: [...hands[c]!.away, p] };
      else if (able.length <= persons || rank < first) shared.add(crew[p]!.name);
      else hands[c] = { ...hands[c]!, able: able.filter((x) => x !== p), away: [...hands[c]!.away, p] };
    }
  if (shared.size > 0) findings.push(notIndependent(work[at]!, [...shared]));
}

function refuseNobody(o: Operation, job: string): never {
  throw new Refusal('teardown.nobody-can', {
    given: `"${o.title}" (${o.id}, ${job}) asks for the skill ${o.skill}; nobody on the crew holds it`,
    allowed: 'a crew in which somebody holds every skill that the work asks for',
    remedy: `Add ${o.skill} to the skills of whoever may do it, or somebody who holds it to the crew`,
  });
}
function tooFew({ operation: o, job }: OperationToDo, holders: number, crew: Floor['crew']): MapFinding {
  const short = crew.length < o.persons;
  const who = o.skill === null ? `the crew counts ${crew.length}` : `${holders} of the crew hold the skill ${o.skill}`;
  return {
    code: 'crew-too-small',
    text: `"${o.title}" of ${job} takes ${o.persons} persons; ${who}. It is planned ${
      short ? 'as if the hands that are missing came from outside' : 'with others of the crew helping'
    }.`,
    about: [o.id],
    remedy: short ? 'Engage a further hand for these days' : `Let somebody further qualify for ${o.skill ?? 'it'}`,
  };
}
function notIndependent({ operation: o, job }: OperationToDo, names: readonly string[]): MapFinding {
  return {
    code: 'no-second-person',
    text: `"${o.title}" of ${job} is to be done by a person who did none of the work it checks; ${names.join(
      ' and ',
    )} cannot be spared from that work.`,
    about: [o.id],
    remedy: 'Engage an inspector from outside for it, or a further hand for the work',
  };
}
