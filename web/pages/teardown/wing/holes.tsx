import { BusyButton } from '../../../parts/busy-button.tsx';
import { BigField } from './big-field.tsx';
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
    <BigField label={label}>
      {(id) => (
        <input
          id={id}
          type="text"
          inputMode="numeric"
          autoComplete="off"
          maxLength={40}
          value={typed[field]}
          onChange={(e) => type({ [field]: e.target.value })}
        />
      )}
    </BigField>
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
