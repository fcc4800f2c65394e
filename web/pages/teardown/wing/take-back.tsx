import { useState } from 'react';
import { BusyButton } from '../../../parts/busy-button.tsx';
import { ErrorNotice } from '../../../parts/error-notice.tsx';
import { BigField } from './big-field.tsx';

/** A record that was a mistake: taken back with a reason; it stays in the log. */
export function TakeBack({ send }: { send: (because: string) => Promise<unknown> }) {
  const [because, setBecause] = useState('');
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const take = async () => {
    setBusy(true);
    setError(null);
    try {
      await send(because.trim());
    } catch (e) {
      setError(e);
    }
    setBusy(false);
  };
  return (
    <details className="form">
      <summary>Recorded by mistake</summary>
      <div className="big-actions">
        <BigField label="Reason">
          {(id) => (
            <input
              id={id}
              type="text"
              autoComplete="off"
              maxLength={2000}
              value={because}
              onChange={(e) => setBecause(e.target.value)}
            />
          )}
        </BigField>
        <BusyButton type="button" busy={busy} disabled={because.trim() === ''} onClick={() => void take()}>
          {busy ? 'Taking it back ...' : 'Take it back'}
        </BusyButton>
      </div>
      <ErrorNotice error={error} />
    </details>
  );
}
