import type { Ref } from 'react';
import { BigField } from './big-field.tsx';

/** Who records, remembered on this machine, and for which day. */
export function Who({
  name,
  setName,
  on,
  setOn,
  lacks,
  field,
}: {
  name: string;
  setName: (name: string) => void;
  on: string;
  setOn: (day: string) => void;
  /** A record was wanted while no name stood. */
  lacks: boolean;
  field: Ref<HTMLInputElement>;
}) {
  return (
    <div className="big-actions who">
      <BigField label="Your name">
        {(id) => (
          <input
            id={id}
            ref={field}
            type="text"
            autoComplete="off"
            maxLength={200}
            value={name}
            aria-invalid={lacks || undefined}
            aria-describedby={lacks ? 'name-lacks' : undefined}
            onChange={(e) => setName(e.target.value)}
          />
        )}
      </BigField>
      <BigField label="Done on">
        {(id) => (
          <input
            id={id}
            type="date"
            min="1900-01-01"
            max="2199-12-31"
            value={on}
            onChange={(e) => setOn(e.target.value)}
          />
        )}
      </BigField>
      {lacks ? (
        <p className="wrong" id="name-lacks" role="alert">
          Every record bears a name. Fill it in, then press again.
        </p>
      ) : null}
    </div>
  );
}
