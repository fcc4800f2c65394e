import { keepFile } from '../../../api/entries.ts';
import { Field, Input, Select } from '../../../parts/field.tsx';
import { Day, Part } from './common.tsx';
import { EntryForm } from './entry-form.tsx';
import type { EntryFormProps } from './props.ts';
import { given, newId, pictureOf } from './read.ts';

const WHAT = [
  { value: 'stamp', text: 'stamp' },
  { value: 'part_number', text: 'part number' },
  { value: 'serial', text: 'serial' },
  { value: 'kit', text: 'kit' },
  { value: 'repair', text: 'repair' },
  { value: 'condition', text: 'condition' },
];

export function SeenForm({ shop, aircraft, choices }: EntryFormProps) {
  return (
    <EntryForm
      shop={shop}
      title="Something seen on the aircraft"
      button="Write what was seen"
      entries={async (v) => {
        const photograph = pictureOf(v.file('photograph'));
        const kept = photograph ? await keepFile(shop, photograph) : undefined;
        return [
          {
            id: newId(),
            subject: v.text('subject') ?? aircraft,
            day: v.text('day') ?? '',
            kind: 'seen',
            evidence: 'seen',
            body: given({
              what: v.text('what'),
              value: v.text('value'),
              by: v.text('by'),
              photograph_sha256: kept?.sha256,
            }),
          },
        ];
      }}
    >
      <Part choices={choices} aircraft={aircraft} />
      <Select label="What" name="what" options={WHAT} />
      <Input label="As it reads" name="value" required />
      <Input label="Seen by" name="by" required />
      <Day choices={choices} />
      <Field label="Photograph">{(ids) => <input {...ids} type="file" name="photograph" accept="image/*" />}</Field>
    </EntryForm>
  );
}
