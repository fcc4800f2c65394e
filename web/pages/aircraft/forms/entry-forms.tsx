import { AccomplishedForm } from './accomplished-form.tsx';
import { PaperFoundForm } from './paper-found-form.tsx';
import { PermitForm } from './permit-form.tsx';
import type { EntryFormProps } from './props.ts';
import { ReadingForm } from './reading-form.tsx';
import { SeenForm } from './seen-form.tsx';

/** What a person can add to the log from the aircraft's page. */
export function EntryForms(props: EntryFormProps) {
  const key = props.choices?.day ?? 'no day yet';
  return (
    <section className="sheet no-print" aria-labelledby="add">
      <h2 id="add">Add to the record</h2>
      <ReadingForm key={`r${key}`} {...props} />
      <SeenForm key={`s${key}`} {...props} />
      <AccomplishedForm key={`a${key}`} {...props} />
      <PermitForm key={`f${key}`} {...props} />
      <PaperFoundForm key={`p${key}`} {...props} />
    </section>
  );
}
