import { useState } from 'react';
import { latestIssues } from '../../../api/choices.ts';
import { Input, Select } from '../../../parts/field.tsx';
import { Day, Paper, Part, paperOf } from './common.tsx';
import { EntryForm } from './entry-form.tsx';
import type { EntryFormProps } from './props.ts';
import { given, newId, slugOf } from './read.ts';

export function AccomplishedForm({ shop, aircraft, choices }: EntryFormProps) {
  const directives = latestIssues(choices?.directives ?? []);
  const [number, setNumber] = useState(directives[0]?.number ?? '');
  const chosen = directives.find((d) => d.number === number);
  if (directives.length === 0) return null;
  return (
    <EntryForm
      shop={shop}
      title="An action of a directive was done"
      button="Write the accomplishment"
      entries={(v) => {
        const name = v.text('signer');
        const finding = slugOf(v.text('finding') ?? 'none');
        if (finding === '') throw new Error('Say in letters what was found: none, or for example crack.');
        return [
          {
            id: newId(),
            subject: v.text('subject') ?? aircraft,
            day: v.text('day') ?? '',
            kind: 'accomplished',
            ...paperOf(v),
            body: given({
              directive: number,
              issue: chosen?.issue,
              action: v.text('action'),
              finding,
              method: v.text('method'),
              total_h: v.number('total_h'),
              signer: name ? given({ name, certificate: v.text('certificate') }) : undefined,
            }),
          },
        ];
      }}
    >
      <Select
        label="Directive"
        name="directive"
        value={number}
        set={setNumber}
        options={directives.map((d) => ({ value: d.number, text: `${d.number} issue ${d.issue}, ${d.title}` }))}
      />
      <Select
        label="Action"
        name="action"
        required
        options={(chosen?.actions ?? []).map((a) => ({ value: a.id, text: a.title }))}
      />
      <Part choices={choices} aircraft={aircraft} whole />
      <Day choices={choices} />
      <Input label="Found" name="finding" value="none" required hint="none is an answer; else for example crack" />
      <Input label="Total in the book" unit="h" name="total_h" type="number" step="0.01" min="0" />
      <Input label="Method" name="method" />
      <Input label="Signed by" name="signer" />
      <Input label="Certificate" name="certificate" />
      <Paper />
    </EntryForm>
  );
}
