import type { ServerDraft } from '../../../api/directives.ts';
import { type Json, tableOf, textOf } from '../../../parts/write/json.ts';
import type { Kept } from '../../../parts/write/keep.ts';
import { draftOf, emptyDraft, nextIssue } from './draft.ts';
import { daysInWords } from './said.ts';
import type { Start } from './writer.tsx';

export interface Sources {
  readonly kept: Kept | null;
  readonly server: ServerDraft | null;
  readonly adopted: Json | null;
  readonly number: string;
  readonly day: string;
}

/** What the form opens with, and the sentence that says so: this browser's copy, else the server's, else the issue in force. */
export function startFrom({ kept, server, adopted, number, day }: Sources): { start: Start; note: string } {
  if (kept)
    return {
      start: { draft: draftOf(kept.document as Json), entry: kept.entry },
      note: `Taken up as this browser kept it on ${new Date(kept.at).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' })}.`,
    };
  if (server)
    return {
      start: { draft: draftOf(server.document as Json), entry: server.entry },
      note: `Taken up from the draft that ${server.by} kept on the server on ${daysInWords(server.on)}.`,
    };
  if (adopted)
    return {
      start: { draft: nextIssue(adopted), entry: null },
      note: `Starts from issue ${textOf(tableOf(adopted).issue)}, the latest that was adopted. Fill in the dates of the next one and change what changed.`,
    };
  return {
    start: { draft: number === '' ? emptyDraft(day) : { ...emptyDraft(day), number }, entry: null },
    note: 'Write what the text of the authority says; the rule reads itself back beside it.',
  };
}
