import { useId, useState } from 'react';
import type { WorkShown } from '../../../api/teardown.ts';
import { BusyButton } from '../../../parts/busy-button.tsx';
import { ErrorNotice } from '../../../parts/error-notice.tsx';
import { BigField } from './big-field.tsx';
import { Finding, type PartNamed } from './finding.tsx';
import { putRight, type Recorded, type Typed, typedOf, wrongCount, wrongMinutes } from './record.ts';

const wrongIn = (r: Recorded, typed: Typed): string | null => {
  if (r.what === 'done') return wrongMinutes(typed.minutes);
  return r.what === 'holes' ? (wrongCount(typed.elongated) ?? wrongCount(typed.oversize)) : null;
};

/** A record that is wrong in a figure, a day or a word: another takes its place, and says which one. */
export function Correct({
  shown,
  words,
  parts,
  send,
}: {
  shown: Pick<WorkShown, 'entry' | 'record' | 'by'>;
  /** The record in words. */
  words: string;
  parts: readonly PartNamed[];
  send: (record: Recorded, because: string) => Promise<unknown>;
}) {
  const id = useId();
  const { record, entry } = shown;
  const [typed, setTyped] = useState(() => typedOf(record));
  const [on, setOn] = useState<string>(record.on);
  const [finding, setFinding] = useState(record.what === 'found' ? record.finding : 'nothing');
  const [because, setBecause] = useState('');
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const type = (change: Partial<Typed>) => setTyped((t) => ({ ...t, ...change }));
  const wrong = wrongIn(record, typed);
  const correct = async () => {
    setBusy(true);
    setError(null);
    try {
      await send(putRight(record, typed, on, finding), because.trim());
    } catch (e) {
      setError(e);
    }
    setBusy(false);
  };
  const field = (label: string, key: 'minutes' | 'elongated' | 'oversize') => (
    <BigField label={label}>
      {(at) => (
        <input
          id={at}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          maxLength={40}
          value={typed[key]}
          aria-describedby={wrong ? `${id}-wrong` : undefined}
          onChange={(e) => type({ [key]: e.target.value })}
        />
      )}
    </BigField>
  );
  return (
    <details className="form">
      <summary>
        Correct entry {entry}: {words}
      </summary>
      <p className="soft">
        Done by {record.by}, recorded by {shown.by}. What you enter takes the place of entry {entry}, which stays in the
        log.
      </p>
      <div className="big-actions">
        <BigField label="It was done on">
          {(at) => (
            <input
              id={at}
              type="date"
              min="1900-01-01"
              max="2199-12-31"
              value={on}
              onChange={(e) => setOn(e.target.value)}
            />
          )}
        </BigField>
        {record.what === 'done' ? field('Its minutes', 'minutes') : null}
        {record.what === 'holes' ? field('Elongated, corrected', 'elongated') : null}
        {record.what === 'holes' ? field('Oversize, corrected', 'oversize') : null}
        {record.what === 'found' ? (
          <BigField label="What the look gave">
            {(at) => (
              <select id={at} value={finding} onChange={(e) => setFinding(e.target.value as 'nothing')}>
                <option value="nothing">nothing seen</option>
                <option value="finding">a finding</option>
              </select>
            )}
          </BigField>
        ) : null}
      </div>
      {record.what === 'found' && finding === 'finding' ? <Finding typed={typed} type={type} parts={parts} /> : null}
      <p className="wrong" id={`${id}-wrong`} role="alert" hidden={!wrong}>
        {wrong}
      </p>
      <div className="big-actions">
        <BigField label="Why it is corrected">
          {(at) => (
            <input
              id={at}
              type="text"
              autoComplete="off"
              maxLength={2000}
              value={because}
              onChange={(e) => setBecause(e.target.value)}
            />
          )}
        </BigField>
        <BusyButton
          type="button"
          busy={busy}
          disabled={because.trim() === '' || wrong !== null}
          onClick={() => void correct()}
        >
          {busy ? 'Correcting ...' : `Correct entry ${entry}`}
        </BusyButton>
      </div>
      <ErrorNotice error={error} />
    </details>
  );
}
