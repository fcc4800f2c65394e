import { Day, Paper, paperOf } from './common.tsx';
import { EntryForm } from './entry-form.tsx';
import type { EntryFormProps } from './props.ts';
import { newId, readingOf } from './read.ts';
import { ReadingFields } from './reading-fields.tsx';

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
      <ReadingFields meters={choices?.meters ?? []} />
      <Paper />
    </EntryForm>
  );
}
