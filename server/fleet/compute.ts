import type { Day, directive, record } from '../../engine/index.ts';
import { answersFor } from '../answers.ts';
import { modelFrom } from '../desk.ts';
import { type Kept, type Known, keptOf } from './summary.ts';

/** All that the answers of one aircraft rest on: it goes to another thread as it is. */
export interface FleetTask {
  readonly aircraft: string;
  readonly day: Day;
  readonly source: record.RecordSource;
  readonly unread: readonly record.Finding[];
  /** The directives of the shop as one text: the same text is read once. */
  readonly documents: string;
  readonly known: Known;
}

let last: { text: string; documents: directive.DirectiveDocument[] } | null = null;
function documentsIn(text: string): directive.DirectiveDocument[] {
  if (last?.text !== text) last = { text, documents: JSON.parse(text) as directive.DirectiveDocument[] };
  return last.documents;
}

/** The answers of one aircraft, whole and slim. @throws Refusal */
export function computeKept(task: FleetTask): Kept {
  const model = modelFrom(task.source, task.unread);
  return keptOf(answersFor(model, documentsIn(task.documents), task.aircraft, task.day), task.known);
}
