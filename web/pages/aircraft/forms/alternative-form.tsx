import { latestIssues } from '../../../api/choices.ts';
import { AlternativeFields, alternativesFrom } from './alternative-fields.tsx';
import { Day, Paper, Part } from './common.tsx';
import { EntryForm } from './entry-form.tsx';
import type { EntryFormProps } from './props.ts';

/** An alternative means was approved for this aircraft, or for one of its parts. */
export function AlternativeForm({ shop, aircraft, choices }: EntryFormProps) {
  const directives = latestIssues(choices?.directives ?? []);
  if (directives.length === 0) return null;
  return (
    <EntryForm
      shop={shop}
      title="An alternative means was approved"
      button="Write the alternative"
      entries={(v) => alternativesFrom(v, [v.text('subject') ?? aircraft])}
    >
      <AlternativeFields directives={directives} />
      <Part choices={choices} aircraft={aircraft} whole hint="For the aircraft: for every such part of it" />
      <Day choices={choices} label="Approved on" />
      <Paper />
    </EntryForm>
  );
}
