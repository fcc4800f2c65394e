import { useState } from 'react';
import type { NewEntry } from '../../../api/entries.ts';
import { Area, Input, Select } from '../../../parts/field.tsx';
import { paperOf } from './common.tsx';
import { given, newId, type Values } from './read.ts';

interface Actions {
  readonly number: string;
  readonly issue: number;
  readonly title: string;
  readonly actions: readonly { readonly id: string; readonly title: string }[];
}

/** What an approved alternative says, whomever it is for. */
export function AlternativeFields({ directives }: { directives: readonly Actions[] }) {
  const [number, setNumber] = useState(directives[0]?.number ?? '');
  const [effect, setEffect] = useState('ends');
  const actions = directives.find((d) => d.number === number)?.actions ?? [];
  return (
    <>
      <Input label="Reference" name="reference" required hint="As the authority’s letter bears it" />
      <Select
        label="Directive"
        name="directive"
        value={number}
        set={setNumber}
        options={directives.map((d) => ({ value: d.number, text: `${d.number} issue ${d.issue}, ${d.title}` }))}
      />
      <Select
        key={number}
        label="Action"
        name="action"
        required
        options={actions.map((a) => ({ value: a.id, text: a.title }))}
      />
      <Select
        label="What it does"
        name="effect"
        value={effect}
        set={setEffect}
        options={[
          { value: 'ends', text: 'stands in the place of the action' },
          { value: 'extends', text: 'moves the limits by hours' },
        ]}
      />
      {effect === 'extends' ? (
        <Input label="Moves the limits by" unit="h" name="extends_by_h" type="number" step="0.1" min="0.1" required />
      ) : null}
      <Area
        label="Conditions"
        name="conditions"
        required
        hint="It counts only while they are met; they are shown with it"
      />
      <Input label="Last day" name="expires" type="date" hint="Empty: it bears none" />
    </>
  );
}

/** One entry for each subject, all under one reference. */
export function alternativesFrom(v: Values, subjects: readonly string[]): NewEntry[] {
  if (subjects.length === 0) throw new Error('Say for which aircraft or part it was given.');
  const day = v.text('day') ?? '';
  const expires = v.text('expires');
  if (expires !== undefined && expires < day) throw new Error('It ends before it begins: put the earlier day first.');
  const body = given({
    reference: v.text('reference'),
    directive: v.text('directive'),
    action: v.text('action'),
    conditions: v.text('conditions'),
    ends_action: v.text('effect') === 'ends' ? true : undefined,
    extends_by_h: v.text('effect') === 'extends' ? v.number('extends_by_h') : undefined,
    expires,
  });
  return subjects.map((subject) => ({ id: newId(), subject, day, kind: 'alternative', ...paperOf(v), body }));
}
