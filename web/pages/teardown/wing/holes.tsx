import { BusyButton } from '../../../parts/busy-button.tsx';
import type { Typed } from './record.ts';

/** Holes of a row that drilling out spoiled. */
export function Holes({
  typed,
  type,
  busy,
  record,
}: {
  typed: Typed;
  type: (change: Partial<Typed>) => void;
  busy: boolean;
  record: () => void;
}) {
  const empty = typed.elongated.trim() === '' && typed.oversize.trim() === '';
  const count = (field: 'elongated' | 'oversize', label: string) => (
    <label className="big-field">
      {label}
      <input
        type="text"
        inputMode="numeric"
        autoComplete="off"
        maxLength={5}
        value={typed[field]}
        onChange={(e) => type({ [field]: e.target.value })}
      />
    </label>
  );
  return (
    <details className="form holes">
      <summary>Spoiled holes</summary>
      <div className="big-actions">
        {count('elongated', 'Elongated')}
        {count('oversize', 'Oversize')}
        <BusyButton type="button" busy={busy} disabled={empty} onClick={record}>
          Record the holes
        </BusyButton>
      </div>
    </details>
  );
}
