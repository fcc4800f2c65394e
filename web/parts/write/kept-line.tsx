import { type Json, type Table, tableOf } from './json.ts';
import type { Change } from './reducer.ts';
import type { InBrowser } from './use-kept.ts';

const clock = (iso: string): string =>
  new Date(iso).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });

/** What is kept where, in a sentence; and what another tab wrote meanwhile. */
export function KeptLine({
  kept,
  send,
  draftOf = tableOf,
  otherwise,
}: {
  kept: InBrowser;
  send: (c: Change) => void;
  draftOf?: (document: Json) => Table;
  /** What to do where the browser keeps nothing. */
  otherwise: string;
}) {
  const here =
    kept.at === false
      ? `This browser keeps nothing: ${otherwise} before you leave.`
      : kept.at === null
        ? ''
        : `Kept in this browser at ${clock(kept.at)}; a reload loses nothing.`;
  return (
    <>
      <p className="because" role="status">
        {here}
      </p>
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
