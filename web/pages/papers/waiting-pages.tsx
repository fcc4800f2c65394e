/** Pages that were dropped before the book was named: what is still missing, and the way on or back. */
export function WaitingPages({
  names,
  named,
  go,
  forget,
}: {
  names: readonly string[];
  named: boolean;
  go: () => void;
  forget: () => void;
}) {
  return (
    <div role="status">
      {names.length > 0 ? (
        <>
          <p>
            <strong>{names.join(', ')}</strong> {names.length === 1 ? 'waits' : 'wait'} here.{' '}
            {named
              ? 'The book is named now.'
              : 'Say which book it is and who saw it, beside what it says: then the pages are kept.'}
          </p>
          <div className="actions">
            {named ? (
              <button type="button" onClick={go}>
                Keep them now
              </button>
            ) : null}
            <button type="button" className="quiet" onClick={forget}>
              Do not keep them
            </button>
          </div>
        </>
      ) : null}
    </div>
  );
}
