import { latestIssues } from '../../../api/choices.ts';
import { Area, Input, Select } from '../../../parts/field.tsx';
import { Day, Paper, paperOf } from './common.tsx';
import { EntryForm } from './entry-form.tsx';
import type { EntryFormProps } from './props.ts';
import { given, newId } from './read.ts';

/** A permit to ferry the aircraft. It is shown, and changes no standing. */
export function PermitForm({ shop, aircraft, choices }: EntryFormProps) {
  const directives = latestIssues(choices?.directives ?? []);
  return (
    <EntryForm
      shop={shop}
      title="A ferry permit"
      button="Write the permit"
      entries={(v) => {
        const [day, from, expires] = [v.text('day') ?? '', v.text('from'), v.text('expires') ?? ''];
        if (expires < (from ?? day)) throw new Error('The permit ends before it begins: put the earlier day first.');
        const body = given({
          reference: v.text('reference'),
          issued_by: v.text('issued_by'),
          conditions: v.text('conditions'),
          directive: v.text('directive'),
          from,
          expires,
        });
        return [{ id: newId(), subject: aircraft, day, kind: 'permit', ...paperOf(v), body }];
      }}
    >
      <Input label="Reference" name="reference" required />
      <Input label="Issued by" name="issued_by" required />
      <Area label="Conditions" name="conditions" required hint="Every one of them: they are shown with the permit" />
      <Select
        label="Because of directive"
        name="directive"
        options={[{ value: '', text: 'none named' }, ...directives.map((d) => ({ value: d.number, text: d.number }))]}
      />
      <Day choices={choices} label="Issued on" />
      <Input label="Holds from" name="from" type="date" hint="Empty: from the day of issue" />
      <Input label="Last day" name="expires" type="date" required />
      <Paper />
    </EntryForm>
  );
}
