import { type Json, type Table, tableOf, textOf } from '../write/json.ts';
import type { Kept } from '../write/keep.ts';

export interface Over {
  readonly title: string;
  /** The entry that keeps it. */
  readonly entry: number;
}
/** What a form opens with, and the sentence that says so. */
export interface BasisStart {
  readonly draft: Table;
  /** A document that was read elsewhere; undoing it leads back to the draft. */
  readonly opened?: Table;
  /** The kept document that is written over; null for a new one. */
  readonly over: Over | null;
  readonly note: string;
}

/** This browser's copy, else the document that is kept, else an empty one; a document that was handed over stands on top. */
export function basisStart({
  kept,
  standing,
  opened,
  empty,
  begin,
}: {
  readonly kept: Kept | null;
  readonly standing: { readonly document: Json; readonly entry: number } | null;
  readonly opened: Json | null;
  readonly empty: Table;
  /** Said above an empty form. */
  readonly begin: string;
}): BasisStart {
  const over =
    standing === null
      ? null
      : { title: textOf(tableOf(standing.document).title), entry: kept?.entry ?? standing.entry };
  const draft = kept ? tableOf(kept.document as Json) : standing === null ? empty : tableOf(standing.document);
  if (opened)
    return { draft, opened: tableOf(opened), over, note: 'The form holds the document that you gave. Look it over.' };
  if (kept) {
    const at = new Date(kept.at).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
    return { draft, over, note: `Taken up as this browser kept it on ${at}.` };
  }
  return {
    draft,
    over,
    note: over === null ? begin : `Starts from "${over.title}" as it is kept. Change what changed.`,
  };
}
