import { useId, useRef, useState } from 'react';
import type { WingStep } from '../../../../sheets/teardown/steps-of.ts';
import { BusyButton } from '../../../parts/busy-button.tsx';
import { BigField } from './big-field.tsx';
import { Finding, type PartNamed } from './finding.tsx';
import { Holes } from './holes.tsx';
import { doneRecord, holesRecord, lookRecord, type Recorded, type Typed, wrongMinutes } from './record.ts';

/** What can be recorded at a step: that it is done, what a look found, which holes were spoiled. */
export function Recording({
  step,
  typed,
  type,
  holes,
  typeHoles,
  who,
  on,
  parts,
  busy,
  record,
  needName,
}: {
  step: WingStep;
  typed: Typed;
  type: (change: Partial<Typed>) => void;
  /** What is typed of the holes of its row. */
  holes: Typed;
  typeHoles: (change: Partial<Typed>) => void;
  who: string;
  on: string;
  parts: readonly PartNamed[];
  busy: boolean;
  record: (record: Recorded) => void;
  /** Called where no name stands: a record bears one. */
  needName: () => void;
}) {
  const id = useId();
  const [finding, setFinding] = useState(typed.note !== '' || typed.targets.length > 0);
  const note = useRef<HTMLTextAreaElement>(null);
  const minutes = useRef<HTMLInputElement>(null);
  const [pressed, setPressed] = useState(false);
  const wrong = pressed ? wrongMinutes(typed.minutes) : null;
  const operation = step.operation;
  if (!operation) return null;
  const by = who.trim();
  const named = (make: () => Recorded) => {
    if (by === '') needName();
    else record(make());
  };
  return (
    <div className="recording">
      {step.look && !step.done ? (
        <>
          <div className="big-actions">
            <BusyButton
              type="button"
              className="first"
              busy={busy}
              onClick={() => named(() => lookRecord(step.look!, 'nothing', typed, { by, on }))}
            >
              Nothing seen
            </BusyButton>
            <button
              type="button"
              aria-expanded={finding}
              aria-controls={`${id}-finding`}
              onClick={() => {
                setFinding(!finding);
                setTimeout(() => note.current?.focus());
              }}
            >
              Finding
            </button>
          </div>
          <div id={`${id}-finding`} hidden={!finding}>
            <Finding typed={typed} type={type} parts={parts} note={note}>
              <BusyButton
                type="button"
                className="first"
                busy={busy}
                onClick={() => named(() => lookRecord(step.look!, 'finding', typed, { by, on }))}
              >
                Record the finding
              </BusyButton>
            </Finding>
          </div>
        </>
      ) : null}
      {!step.look && !step.done ? (
        <div className="big-actions">
          <BusyButton
            type="button"
            className="first"
            busy={busy}
            onClick={() => {
              setPressed(true);
              if (wrongMinutes(typed.minutes)) minutes.current?.focus();
              else named(() => doneRecord(operation, typed, { by, on }));
            }}
          >
            Done
          </BusyButton>
          <BigField label="Minutes">
            {(field) => (
              <input
                id={field}
                ref={minutes}
                type="text"
                inputMode="decimal"
                autoComplete="off"
                maxLength={40}
                value={typed.minutes}
                aria-invalid={wrong ? true : undefined}
                aria-describedby={wrong ? `${id}-wrong` : undefined}
                onChange={(e) => type({ minutes: e.target.value })}
              />
            )}
          </BigField>
          <p className="wrong" id={`${id}-wrong`} role="alert" hidden={!wrong}>
            {wrong}
          </p>
        </div>
      ) : null}
      {step.join ? (
        <Holes
          typed={holes}
          type={typeHoles}
          busy={busy}
          record={() => named(() => holesRecord(step.join!, holes, { by, on }))}
        />
      ) : null}
    </div>
  );
}
