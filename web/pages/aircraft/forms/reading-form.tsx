import { Input } from '../../../parts/field.tsx';
import { Day, Paper, paperOf } from './common.tsx';
import { EntryForm } from './entry-form.tsx';
import type { EntryFormProps } from './props.ts';
import { newId, readingOf } from './read.ts';

export function ReadingForm({ shop, aircraft, choices }: EntryFormProps) {
  return (
    <EntryForm
      shop={shop}
      title="A reading"
      button="Write the reading"
      entries={(v) => [
        {
          id: newId(),
          subject: aircraft,
          day: v.text('day') ?? '',
          kind: 'reading',
          ...paperOf(v),
          body: readingOf(v),
        },
      ]}
    >
      <Day choices={choices} />
      <Input label="Total in the book" unit="h" name="total_h" type="number" step="0.01" min="0" max="1000000" />
      <Input label="Landings" name="landings" type="number" step="1" min="0" />
      <Input label="Meter" name="meter" hint="Only with what it shows" list="meters" />
      <Input label="Meter shows" unit="h" name="shows_h" type="number" step="0.01" min="0" max="1000000" />
      <datalist id="meters">
        {choices?.meters.map((m) => (
          <option key={m} value={m} />
        ))}
      </datalist>
      <Paper />
    </EntryForm>
  );
}
