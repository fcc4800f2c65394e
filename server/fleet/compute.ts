import { type Day, directive, isRefusal, type record } from '../../engine/index.ts';
import { type Answers, answersFor, flyingOf, NO_DATE, outlookOn } from '../answers.ts';
import { modelFrom } from '../desk.ts';
import { type AnswerKept, type Kept, type Known, keptOf } from './summary.ts';

/** All that the answers of one aircraft rest on: it goes to another thread as it is. */
export interface FleetTask {
  readonly aircraft: string;
  readonly day: Day;
  readonly source: record.RecordSource;
  readonly unread: readonly record.Finding[];
  /** The directives of the shop as one text: the same text is read once. */
  readonly documents: string;
  readonly known: Known;
  /** What was computed for this day from these entries, under the directives of then; absent: nothing that helps. */
  readonly before?: Before;
}
export interface Before {
  readonly documents: string;
  readonly answers: readonly AnswerKept[];
}

type Documents = readonly directive.DirectiveDocument[];
const MOST = 4;
const read = new Map<string, Documents>();
function documentsIn(text: string): Documents {
  const known = read.get(text) ?? (JSON.parse(text) as Documents);
  if (read.size >= MOST) read.clear();
  read.set(text, known);
  return known;
}

/** Numbers of which another text is in force than before: their answers may change, those of the others do not. */
export function numbersChanged(before: Documents, now: Documents, day: Day): ReadonlySet<string> {
  const texts = (all: Documents) => {
    const by = new Map<string, string>();
    for (const d of directive.inForce([...all], day)) by.set(d.number, (by.get(d.number) ?? '') + JSON.stringify(d));
    return by;
  };
  const [was, is] = [texts(before), texts(now)];
  return new Set([...was.keys(), ...is.keys()].filter((n) => was.get(n) !== is.get(n)));
}

/** True if a date that stands, or is missing, beside a kept standing is what would be named now. */
function sameDates(g: Answers, still: readonly AnswerKept[]): boolean {
  if (g.model.findings.some((x) => x.text.startsWith(NO_DATE))) return false;
  const without = still.filter((x) => x.line.dates === null);
  if (!without.length) return true;
  try {
    const flying = flyingOf(g.lives.get(g.thing.id)?.readings ?? [], g.day);
    return !flying || without.every((x) => outlookOn(flying, x.assessment, g.day) === null);
  } catch (e) {
    if (!isRefusal(e)) throw e;
    return false;
  }
}

/** Only the answers of what changed, beside those that still hold; null where all must be computed. */
function computePartly(task: FleetTask, { documents, answers }: Before): Kept | null {
  const now = documentsIn(task.documents);
  const changed = numbersChanged(documentsIn(documents), now, task.day);
  const still = answers.filter((x) => !changed.has(x.assessment.directive));
  const model = modelFrom(task.source, task.unread);
  const g = answersFor(model, now, task.aircraft, task.day, {}, undefined, changed);
  return sameDates(g, still) ? keptOf(g, task.known, still) : null;
}

/** The answers of one aircraft, whole and slim. @throws Refusal */
export function computeKept(task: FleetTask): Kept {
  const partly = task.before && computePartly(task, task.before);
  if (partly) return partly;
  const model = modelFrom(task.source, task.unread);
  return keptOf(answersFor(model, documentsIn(task.documents), task.aircraft, task.day), task.known);
}
