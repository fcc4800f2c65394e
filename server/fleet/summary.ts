import { type Day, directive } from '../../engine/index.ts';
import { type FleetLine, type FleetReading, partInSentence } from '../../sheets/index.ts';
import type { NewAnswer, NewDeskState } from '../../store/index.ts';
import type { Answers } from '../answers.ts';
import { PROGRAM } from '../version.ts';

/** What the desk keeps of one aircraft, besides the whole answers. */
export interface FleetSummary {
  readonly sparwright: 'desk/1';
  /** It could not be computed: it is tried again after the next entry and the next start. */
  readonly fault?: true;
  readonly lines: readonly FleetLine[];
  readonly reading: FleetReading | null;
  readonly reads: { readonly meter: string | null; readonly landings: boolean };
  readonly notComputed: readonly string[];
  /** The next day on which an entry or a directive that is recorded already comes into force. */
  readonly changesOn: Day | null;
}

/** How a summary of this version begins, as it is kept; and one of an aircraft that met a fault. */
export const BEGINS = '{"sparwright":"desk/1"';
export const BEGINS_WHOLE = '{"sparwright":"desk/1","lines"';
export const BEGINS_FAULT = '{"sparwright":"desk/1","fault":true';

/** Findings that leave something uncomputed: it is treated as due. */
const UNCOMPUTED: readonly string[] = ['directive.part-not-on-record', 'directive.does-not-read'];

const keyOf = (a: directive.Assessment): string => `${a.subject}|${a.directive}|${a.action.id}`;
/** What may bite now or on a later day; what is ended by an alternative that runs out may. */
const mayBite = (l: FleetLine): boolean =>
  l.notComputed || !['ended', 'not affected'].includes(l.treatAs.standing) || l.alternative?.expires != null;

/** An answer, whole and slim. */
export interface AnswerKept {
  readonly assessment: directive.Assessment;
  readonly line: FleetLine;
}
function linesOf(g: Answers): AnswerKept[] {
  return g.assessments.map((a) => ({
    assessment: a,
    line: {
      ...directive.lineOf(a, g.outlooks.get(keyOf(a)) ?? null),
      partName: partInSentence(g.model.things.get(a.subject), a.subject).replace(/^the /, ''),
    },
  }));
}

/** What the owner can read: the meter fitted last, and landings where they were counted or a limit counts them. */
function readsOf(g: Answers): FleetSummary['reads'] {
  const meters = g.model.entries.flatMap((e) => (e.kind === 'meter' && e.subject === g.thing.id ? [e.body.meter] : []));
  const counted = g.lives.get(g.thing.id)?.lastReading?.landings != null;
  return {
    meter: meters.at(-1) ?? null,
    landings: counted || g.assessments.some((a) => a.treatAs.left?.landings != null),
  };
}

/** What the store knew when an aircraft was read. */
export interface Known {
  readonly entry: number;
  readonly touches: readonly string[];
  readonly changesOn: Day | null;
}
export interface Kept {
  readonly state: NewDeskState;
  readonly answers: readonly NewAnswer[];
}

/** The next day on which a directive that is adopted already begins or ends. */
const directiveChanges = (g: Answers): Day[] =>
  g.documents.flatMap((d) => [d.effective, d.withdrawnOn]).filter((d): d is Day => d !== undefined && d > g.day);

/** As a whole computation would give them: by part, directive and action. */
function inOrder(all: readonly AnswerKept[], g: Answers): AnswerKept[] {
  const things = [...g.model.things.keys()];
  const rules = directive.inForce([...g.documents], g.day);
  const place = ({ assessment: a }: AnswerKept): number[] => {
    const rule = rules.findIndex((d) => d.number === a.directive && d.issue === a.issue);
    return [things.indexOf(a.subject), rule, rules[rule]?.actions.findIndex((x) => x.id === a.action.id) ?? 0];
  };
  return all
    .map((x) => ({ x, at: place(x) }))
    .sort((a, b) => a.at[0]! - b.at[0]! || a.at[1]! - b.at[1]! || a.at[2]! - b.at[2]!)
    .map(({ x }) => x);
}

/** All that is kept of an aircraft: its state, and each answer whole and slim. `still`: answers that hold besides. */
export function keptOf(fresh: Answers, known: Known, still: readonly AnswerKept[] = []): Kept {
  const all = still.length ? inOrder([...still, ...linesOf(fresh)], fresh) : linesOf(fresh);
  const g = { ...fresh, assessments: all.map((x) => x.assessment) };
  const last = g.lives.get(g.thing.id)?.lastReading ?? null;
  const summary: FleetSummary = {
    sparwright: 'desk/1',
    lines: all.map((x) => x.line).filter(mayBite),
    reading: last && { day: last.day, total_s: last.total_s, landings: last.landings },
    reads: readsOf(g),
    notComputed: g.model.findings.filter((x) => UNCOMPUTED.includes(x.code)).map((x) => x.text),
    changesOn: [...directiveChanges(g), ...(known.changesOn ? [known.changesOn] : [])].sort()[0] ?? null,
  };
  const under = { entry: known.entry, program: PROGRAM, day: g.day, touches: known.touches };
  return {
    state: { aircraft: g.thing.id, ...under, summary },
    answers: all.map(({ assessment: a, line }) => ({
      part: a.subject,
      directive: a.directive,
      issue: a.issue,
      action: a.action.id,
      ...under,
      result: a,
      line,
    })),
  };
}

/** What is kept of an aircraft that could not be computed at all: the fault, as a finding on its row. */
export const keptFault = (
  aircraft: string,
  day: Day,
  known: Pick<Known, 'entry' | 'touches'>,
  words: string,
  last: FleetSummary | null,
): NewDeskState => ({
  aircraft,
  entry: known.entry,
  program: PROGRAM,
  day,
  touches: known.touches,
  summary: {
    sparwright: 'desk/1',
    fault: true,
    lines: last?.lines ?? [],
    reading: last?.reading ?? null,
    reads: last?.reads ?? { meter: null, landings: false },
    notComputed: [words],
    changesOn: null,
  } satisfies FleetSummary,
});

/** A summary as this version writes it, or null: what does not read is computed again. */
export function readSummary(kept: unknown): FleetSummary | null {
  const s = kept as FleetSummary | null;
  const whole = s?.sparwright === 'desk/1' && Array.isArray(s.lines) && Array.isArray(s.notComputed) && !!s.reads;
  return whole ? s : null;
}
