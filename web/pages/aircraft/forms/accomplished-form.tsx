import { useState } from 'react';
import { latestIssues } from '../../../api/choices.ts';
import { Input, Select } from '../../../parts/field.tsx';
import { Day, Paper } from './common.tsx';
import { EntryForm } from './entry-form.tsx';
import type { EntryFormProps } from './props.ts';
import { accomplishments, chosenParts, workable } from './worked-on.ts';

/** An action was done: on one side or on both, chosen by the person, with a finding for each. */
export function AccomplishedForm({ shop, aircraft, choices }: EntryFormProps) {
  const directives = latestIssues(choices?.directives ?? []);
  const [number, setNumber] = useState(directives[0]?.number ?? '');
  const [chosenAction, setAction] = useState('');
  const [worked, setWorked] = useState('');
  const directive = directives.find((d) => d.number === number);
  if (!directive) return null;
  const action = directive.actions.find((a) => a.id === chosenAction) ?? directive.actions[0];
  const options = workable(choices, action?.looks_at, aircraft);
  const whole = action?.looks_at === 'aircraft';
  const on = whole
    ? [{ id: aircraft, name: 'aircraft', hand: 'none' as const }]
    : chosenParts(choices, action?.looks_at, worked);
  return (
    <EntryForm
      shop={shop}
      title="An action of a directive was done"
      button="Write the accomplishment"
      entries={(v) => accomplishments(v, on, { directive: directive.number, issue: directive.issue })}
      done={() => setWorked('')}
    >
      <Select
        label="Directive"
        name="directive"
        value={number}
        set={(n) => {
          setNumber(n);
          setAction('');
          setWorked('');
        }}
        options={directives.map((d) => ({ value: d.number, text: `${d.number} issue ${d.issue}, ${d.title}` }))}
      />
      <Select
        label="Action"
        name="action"
        required
        value={action?.id ?? ''}
        set={(a) => {
          setAction(a);
          setWorked('');
        }}
        options={directive.actions.map((a) => ({ value: a.id, text: a.title }))}
      />
      <Select
        label="Worked on"
        name="worked_on"
        required
        value={whole ? aircraft : worked}
        set={setWorked}
        options={options}
        hint={
          options.length < 2 && !whole ? 'No such part is on record in this aircraft' : 'Each side stands for itself'
        }
      />
      <Day choices={choices} label="Done on" />
      {on.map((p) => (
        <Input
          key={p.id}
          label={on.length > 1 ? `Found, ${p.hand} side` : 'Found'}
          name={`finding ${p.id}`}
          value="none"
          required
          hint="none is an answer; else for example crack"
        />
      ))}
      <Input label="Method" name="method" hint="As the paper says it was done" />
      <Input
        label="Total then"
        unit="h"
        name="total_h"
        type="number"
        step="0.01"
        min="0"
        hint="As the paper states it"
      />
      <Input label="Landings then" name="landings" type="number" step="1" min="0" hint="With the total" />
      <Input label="Signed by" name="signer" />
      <Input label="Certificate number" name="certificate" />
      <Paper />
    </EntryForm>
  );
}
