import { Input, Select } from '../../../parts/field.tsx';
import { EVIDENCE, paperOf } from './common.tsx';
import { EntryForm } from './entry-form.tsx';
import type { EntryFormProps } from './props.ts';
import { given, newId } from './read.ts';

const USUAL = ['private', 'hire', 'instruction', 'tow', 'survey', 'aerobatic', 'utility'];

/** A paper turned up that says what was flown in a stretch. */
export function PaperFoundForm({ shop, aircraft, choices }: EntryFormProps) {
  const uses = choices?.uses.length ? choices.uses : USUAL;
  return (
    <EntryForm
      shop={shop}
      title="A missing paper was found"
      button="Write what the paper says"
      entries={(v) => {
        const common = { subject: aircraft, ...paperOf(v) };
        const hours = v.number('hours_h');
        const from = v.text('from') ?? '';
        const to = v.text('to');
        if (to !== undefined && to < from)
          throw new Error('The paper ends before it begins: put the earlier day first.');
        if (hours === undefined && v.number('landings') !== undefined)
          throw new Error('Landings need the hours flown with them: fill in both, or leave the landings empty.');
        if (hours === undefined)
          return [{ ...common, id: newId(), day: from, kind: 'use', body: given({ from, to, use: v.text('use') }) }];
        const body = given({ from, hours_h: hours, landings: v.number('landings'), use: v.text('use') });
        return [{ ...common, id: newId(), day: to ?? from, kind: 'flights', body }];
      }}
    >
      <Input label="From" name="from" type="date" required max={choices?.day ?? ''} />
      <Input label="To" name="to" type="date" required max={choices?.day ?? ''} />
      <Select label="Use" name="use" options={uses.map((u) => ({ value: u, text: u.replaceAll('_', ' ') }))} />
      <Input label="Hours flown" unit="h" name="hours_h" type="number" step="0.01" min="0" hint="If it lists them" />
      <Input label="Landings" name="landings" type="number" step="1" min="0" hint="With the hours" />
      <Select label="Known from" name="evidence" options={EVIDENCE} />
      <Input label="Paper" name="paper" required hint="Title of the book or list" />
      <Input label="Page" name="page" />
    </EntryForm>
  );
}
