import { ServerGone } from '../../../api/client.ts';
import { ErrorNotice } from '../../../parts/error-notice.tsx';
import type { PlanChange } from './changes.ts';

const SHOWN = 8;
const counted = (n: number) => (n === 1 ? '1 step' : `${n} steps`);

function Titles({ what, titles }: { what: string; titles: readonly string[] }) {
  if (titles.length === 0) return null;
  const all = titles.map((t, i) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: two steps may bear one title
    <li key={i}>{t}</li>
  ));
  return (
    <>
      <p>
        <strong>{what}</strong>
      </p>
      <ul>{all.slice(0, SHOWN)}</ul>
      {all.length > SHOWN ? (
        <details className="form">
          <summary>{all.length - SHOWN} more</summary>
          <ul>{all.slice(SHOWN)}</ul>
        </details>
      ) : null}
    </>
  );
}

/** After a finding, or what another person did: which steps came on the plan and which are gone. */
export function PlanIsNew({ change, seen }: { change: PlanChange; seen: () => void }) {
  const { added, gone } = change;
  return (
    <div className="notice" role="status">
      <p>
        <strong>The plan is new.</strong> What is done stays done.
      </p>
      <Titles what={`${counted(added.length)} more:`} titles={added} />
      <Titles what={`${counted(gone.length)} no longer asked for:`} titles={gone} />
      <div className="actions">
        <button type="button" onClick={seen}>
          Seen
        </button>
      </div>
    </div>
  );
}

/** A finding for which neither the map nor who found it names a part: it is recorded, and nothing more comes off. */
export function PlanStays({ lines, seen }: { lines: readonly string[]; seen: () => void }) {
  return (
    <div className="notice" role="status">
      <p>
        <strong>Recorded, and the plan did not change:</strong>
      </p>
      <ul>
        {lines.map((l) => (
          <li key={l}>{l}</li>
        ))}
      </ul>
      <p>The same steps stand as before. If it asks for work on a part, correct the record below and name the part.</p>
      <div className="actions">
        <button type="button" onClick={seen}>
          Seen
        </button>
      </div>
    </div>
  );
}

/** What another person recorded while this page was open. */
export function Meanwhile({ lines, seen }: { lines: readonly string[]; seen: () => void }) {
  return (
    <div className="notice" role="status">
      <p>
        <strong>Recorded meanwhile by others:</strong>
      </p>
      <ul>
        {lines.map((l) => (
          <li key={l}>{l}</li>
        ))}
      </ul>
      <div className="actions">
        <button type="button" onClick={seen}>
          Seen
        </button>
      </div>
    </div>
  );
}

/** What was pressed and is not recorded: the program is gone, or it said no. Nothing of it is lost. */
export function NotRecorded({
  lines,
  error,
  busy,
  again,
  takeBack,
}: {
  lines: readonly string[];
  error: unknown;
  busy: boolean;
  again: () => void;
  takeBack: (index: number) => void;
}) {
  if (lines.length === 0) return null;
  const gone = error instanceof ServerGone || error === null;
  return (
    <div className="notice not-recorded" role="alert">
      <p>
        <strong>
          {lines.length === 1 ? 'This is not recorded yet.' : `These ${lines.length} are not recorded yet.`}
        </strong>{' '}
        {gone
          ? 'Sparwright does not answer. This machine keeps them and sends them when it answers again.'
          : 'What you typed stays.'}
      </p>
      <ul className="waiting">
        {lines.map((l, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: in the order they were pressed
          <li key={i}>
            <span>{l}</span>
            <button type="button" onClick={() => takeBack(i)}>
              Leave it out<span className="hidden-text">: {l}</span>
            </button>
          </li>
        ))}
      </ul>
      {gone ? null : <ErrorNotice error={error} />}
      <div className="big-actions">
        <button type="button" aria-disabled={busy || undefined} onClick={() => (busy ? undefined : again())}>
          {busy ? 'Recording ...' : 'Try again'}
        </button>
      </div>
    </div>
  );
}
