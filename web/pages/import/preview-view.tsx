import { useId } from 'react';
import type { Preview } from '../../api/import.ts';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Progress } from './progress.tsx';
import { RowsTable } from './rows-table.tsx';

/** What becomes of the file, before anything is written. */
export function PreviewView({
  preview,
  header,
  writing,
  error,
  write,
}: {
  preview: Preview;
  header: readonly string[];
  writing: boolean;
  error: unknown;
  write: () => void;
}) {
  const id = useId();
  const { counts } = preview;
  const open = preview.open ?? [];
  const warned = preview.rows.filter((r) => r.verdict === 'accepted' && r.warning !== undefined).length;
  const ready = open.length === 0 && counts.accepted > 0;
  return (
    <section className="sheet" aria-labelledby={id}>
      <h2 id={id}>
        {counts.accepted === 1 ? '1 row' : `${counts.accepted} rows`} accepted, {counts.refused} refused
      </h2>
      {open.length > 0 ? (
        <div className="notice" role="alert">
          <p>
            <strong>Before the rows can be taken, answer above:</strong>
          </p>
          <ul>
            {open.map((q) => (
              <li key={q}>{q}</li>
            ))}
          </ul>
        </div>
      ) : null}
      {warned > 0 ? (
        <p>
          <strong>{warned === 1 ? 'One accepted row carries' : `${warned} accepted rows carry`} a warning.</strong> Read{' '}
          {warned === 1 ? 'it' : 'them'} before you write.
        </p>
      ) : null}
      <dl className="pairs">
        {Object.entries(preview.totals ?? {}).map(([key, value]) => (
          <Pair key={key} name={key} value={value} />
        ))}
      </dl>
      {preview.notes?.map((n) => (
        <p className="soft" key={n}>
          {n}
        </p>
      ))}
      <RowsTable preview={preview} header={header} />
      <ErrorNotice error={error} />
      {writing ? <Progress part={null} what="Writing to the log" /> : null}
      <div className="actions">
        <button type="button" className="first" disabled={!ready || writing} onClick={write}>
          Write the accepted rows to the log
        </button>
        {ready ? null : <span className="soft">No row can be taken yet.</span>}
      </div>
    </section>
  );
}

function Pair({ name, value }: { name: string; value: string }) {
  return (
    <>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </>
  );
}
