import type { AircraftChoice, Target } from '../../api/import.ts';
import { Input, Select } from '../../parts/field.tsx';
import type { Values } from '../aircraft/forms/read.ts';

const NEW = '';

/** The aircraft that the logbook belongs to. */
export function TargetFields({
  aircraft,
  chosen,
  choose,
}: {
  aircraft: readonly AircraftChoice[];
  chosen: string;
  choose: (id: string) => void;
}) {
  const options = [
    { value: NEW, text: 'A new aircraft' },
    ...aircraft.map((a) => ({ value: a.id, text: a.registration })),
  ];
  return (
    <fieldset>
      <legend>Whose logbook is it?</legend>
      <div className="fields">
        <Select label="Aircraft" name="target" options={options} value={chosen} set={choose} />
        {chosen === NEW ? (
          <>
            <Input label="Registration" name="registration" required />
            <Input label="Type" name="type" required />
            <Input label="Model" name="model" required />
            <Input label="Serial" name="serial" required />
            <Input label="Built" name="built" type="date" required hint="0 h and 0 landings on this day" />
          </>
        ) : null}
      </div>
    </fieldset>
  );
}

export function targetOf(v: Values): Target {
  const id = v.text('target');
  if (id) return { id };
  return {
    registration: v.text('registration') ?? '',
    type: v.text('type') ?? '',
    model: v.text('model') ?? '',
    serial: v.text('serial') ?? '',
    built: v.text('built') ?? '',
  };
}
