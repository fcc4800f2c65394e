import { type Json, type Table, tableOf } from './json.ts';
import type { Change } from './reducer.ts';
import { saveAsFile } from './save-as-file.ts';
import type { InBrowser } from './use-kept.ts';

const clock = (iso: string): string =>
  new Date(iso).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });

const tooLarge = (last: string | null, wayOut: string): string =>
  `This draft is too large for this browser to keep${last === null ? '' : `, which holds it as it stood at ${clock(last)}`}: ${wayOut} before you leave.`;

/** What is kept where, in a sentence; and what another tab wrote meanwhile. */
export function KeptLine({
  kept,
  send,
  draftOf = tableOf,
  otherwise,
  file,
}: {
  kept: InBrowser;
  send: (c: Change) => void;
  draftOf?: (document: Json) => Table;
  /** What to do where the browser keeps nothing. */
  otherwise: string;
  /** The document as it can be saved where the browser does not keep it. */
  file?: { readonly document: Json; readonly name: string };
}) {
  const here = kept.tooLarge
    ? tooLarge(kept.tooLarge.last, file ? 'save the document as a file' : otherwise)
    : kept.at === false
      ? `This browser keeps nothing: ${otherwise} before you leave.`
      : kept.at === null
        ? ''
        : `Kept in this browser at ${clock(kept.at)}; a reload loses nothing.`;
  return (
    <>
      <p className={kept.tooLarge ? 'wrong' : 'because'} role="status">
        {here}
      </p>
      {file && (kept.tooLarge || kept.at === false) ? (
        <button type="button" onClick={() => saveAsFile(file.document, file.name)}>
          Save the document as a file
        </button>
      ) : null}
      {kept.other ? (
        <div className="notice" role="alert">
          <p>
            <strong>Another tab of this browser wrote to this draft at {clock(kept.other.at)}.</strong> What stands here
            is as you left it.
          </p>
          <div className="actions">
            <button
              type="button"
              onClick={() => {
                send({ does: 'open', draft: draftOf(kept.other!.document as Json) });
                kept.setAside();
              }}
            >
              Take over what it wrote
            </button>
            <button type="button" onClick={kept.setAside}>
              Go on with this one
            </button>
          </div>
        </div>
      ) : null}
    </>
  );
}
