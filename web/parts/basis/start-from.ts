import { type Json, type Table, tableOf, textOf } from '../write/json.ts';
import type { Kept } from '../write/keep.ts';

/** What a form opens with, and the sentence that says so. */
export interface BasisStart {
  readonly draft: Table;
  /** A document that was read elsewhere; undoing it leads back to the draft. */
  readonly opened?: Table;
  /** Title of the kept document that is written over; null for a new one. */
  readonly over: string | null;
  readonly note: string;
}

/** This browser's copy, else the document that is kept, else an empty one; a document that was handed over stands on top. */
export function basisStart({
  kept,
  standing,
  opened,
  empty,
}: {
  readonly kept: Kept | null;
  readonly standing: Json | null;
  readonly opened: Json | null;
  readonly empty: Table;
}): BasisStart {
  const over = standing === null ? null : textOf(tableOf(standing).title);
  const draft = kept ? tableOf(kept.document as Json) : standing === null ? empty : tableOf(standing);
  if (opened)
    return { draft, opened: tableOf(opened), over, note: 'The form holds the document that you gave. Look it over.' };
  if (kept) {
    const at = new Date(kept.at).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
    return { draft, over, note: `Taken up as this browser kept it on ${at}.` };
  }
  return {
    draft,
    over,
    note:
      over === null
        ? 'Every figure with its source. The answer stands beside the form as soon as it is whole.'
        : `Starts from "${over}" as it is kept. Change what changed.`,
  };
}
