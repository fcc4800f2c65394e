import type { ApprovalChoices } from '../../api/approvals.ts';
import { Area, Input } from '../../parts/field.tsx';
import { AlternativeFields, alternativesFrom } from '../aircraft/forms/alternative-fields.tsx';
import { Paper } from '../aircraft/forms/common.tsx';
import { EntryForm } from '../aircraft/forms/entry-form.tsx';
import { subjectsOf } from './subjects.ts';

/** One alternative for several serials: one entry for each aircraft, all under its reference. */
export function ManyAlternativesForm({ shop, choices }: { shop: string; choices: ApprovalChoices }) {
  if (choices.directives.length === 0) return null;
  return (
    <EntryForm
      shop={shop}
      title="An alternative means was approved for several aircraft"
      button="Write the alternative for each"
      entries={(v) => alternativesFrom(v, subjectsOf(v.text('for') ?? '', choices.aircraft))}
    >
      <AlternativeFields directives={choices.directives} />
      <Area label="For" name="for" required hint="Registrations or serials, a comma between them" />
      <Input label="Approved on" name="day" type="date" required max={choices.day} value={choices.day} />
      <Paper />
    </EntryForm>
  );
}
