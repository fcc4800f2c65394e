import { useId, useState } from 'react';
import { BusyButton } from '../../../parts/busy-button.tsx';
import { BigField } from './big-field.tsx';
import { type Typed, wrongCount } from './record.ts';

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
  const said = useId();
  const [pressed, setPressed] = useState(false);
  const wrong = wrongCount(typed.elongated) ?? wrongCount(typed.oversize);
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
          aria-invalid={pressed && wrongCount(typed[field]) ? true : undefined}
          aria-describedby={pressed && wrongCount(typed[field]) ? said : undefined}
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
        <BusyButton
          type="button"
          busy={busy}
          disabled={empty}
          onClick={() => {
            setPressed(true);
            if (!wrong) record();
          }}
        >
          Record the holes
        </BusyButton>
        <p className="wrong" id={said} role="alert" hidden={!(pressed && wrong)}>
          {wrong}
        </p>
      </div>
    </details>
  );
}
