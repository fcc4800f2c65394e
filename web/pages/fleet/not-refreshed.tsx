import { ServerGone } from '../../api/client.ts';
import { ErrorNotice } from '../../parts/error-notice.tsx';

/** The rows stay when the program is gone, with the day they are of. */
export function NotRefreshed({
  error,
  day,
  again,
}: {
  error: unknown;
  day: string | undefined;
  again: (() => void) | undefined;
}) {
  if (!error) return null;
  if (!(error instanceof ServerGone)) return <ErrorNotice error={error} again={again} />;
  return (
    <div className="notice" role="alert">
      <p>
        <strong>These are the last rows that were read{day ? `, as on ${day}` : ''}.</strong> Sparwright does not
        answer; the list renews itself when it does.
      </p>
    </div>
  );
}
