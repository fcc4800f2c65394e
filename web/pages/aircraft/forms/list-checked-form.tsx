import { Input } from '../../../parts/field.tsx';
import { Day } from './common.tsx';
import { EntryForm } from './entry-form.tsx';
import type { EntryFormProps } from './props.ts';
import { given, newId } from './read.ts';

/** The authority's list of directives was checked for this aircraft. */
export function ListCheckedForm({ shop, aircraft, choices }: EntryFormProps) {
  return (
    <EntryForm
      shop={shop}
      title="The authority’s list was checked"
      button="Write the check"
      entries={(v) => [
        {
          id: newId(),
          subject: aircraft,
          day: v.text('day') ?? '',
          kind: 'list_checked',
          evidence: 'seen',
          body: given({ authority: v.text('authority'), by: v.text('by') }),
        },
      ]}
    >
      <Input label="Authority" name="authority" required />
      <Input label="Checked by" name="by" required />
      <Day choices={choices} label="Checked on" />
    </EntryForm>
  );
}
