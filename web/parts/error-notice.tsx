import { ServerGone, ServerSaidNo } from '../api/client.ts';

/** What went wrong and what to do: the refusal's three lines, or that the server is gone. */
export function ErrorNotice({ error, again }: { error: unknown; again?: (() => void) | undefined }) {
  if (!error) return null;
  return (
    <div className="notice" role="alert">
      <Lines error={error} />
      {again ? (
        <div className="actions">
          <button type="button" onClick={again}>
            Try again
          </button>
        </div>
      ) : null}
    </div>
  );
}

function Lines({ error }: { error: unknown }) {
  if (error instanceof ServerGone)
    return (
      <>
        <p>
          <strong>Sparwright does not answer.</strong>
        </p>
        <p>Look whether the program still runs in its terminal; start it again with npm start. Nothing was changed.</p>
      </>
    );
  if (error instanceof ServerSaidNo) {
    const r = error.refusal;
    return (
      <>
        <p>
          <strong>{r.remedy}</strong>
        </p>
        <dl>
          <dt>Given</dt>
          <dd>{r.given}</dd>
          <dt>Allowed</dt>
          <dd>{r.allowed}</dd>
          {r.source ? (
            <>
              <dt>Source</dt>
              <dd>{r.source}</dd>
            </>
          ) : null}
        </dl>
        <p className="refs">
          <a href={`/refusals#${r.code}`}>{r.code}</a>
        </p>
      </>
    );
  }
  return (
    <p>
      <strong>{error instanceof Error ? error.message : String(error)}</strong>
    </p>
  );
}
