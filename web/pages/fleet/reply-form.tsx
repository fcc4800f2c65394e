import { useId, useState } from 'react';
import { useChoices } from '../../api/choices.ts';
import { useWriteEntries } from '../../api/entries.ts';
import { BusyButton } from '../../parts/busy-button.tsx';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Input } from '../../parts/field.tsx';
import { useOnce } from '../../parts/use-once.ts';
import { newId, readingOf, type Values, valuesOf } from '../aircraft/forms/read.ts';
import { ReadingFields } from '../aircraft/forms/reading-fields.tsx';
import type { WantedRowProps } from './wanted-row-props.ts';

const entryOf = (aircraft: string, v: Values) => ({
  id: newId(),
  subject: aircraft,
  day: v.text('day') ?? '',
  kind: 'reading',
  evidence: 'statement',
  paper: { title: v.text('paper') ?? 'Reply of the owner' },
  body: readingOf(v),
});

/** The owner's reply as a reading: what he said, on which day he read it. */
export function ReplyForm({ shop, row, name, day, tell }: WantedRowProps & { name: string }) {
  const choices = useChoices(shop, row.id);
  const list = useId();
  const [failed, setFailed] = useState<unknown>(null);
  const write = useWriteEntries(shop, () =>
    tell(`The reading of ${name} is written. Where it stands is computed anew from it.`),
  );
  const send = useOnce(async (form: HTMLFormElement) => {
    setFailed(null);
    try {
      await write.mutateAsync([entryOf(row.id, valuesOf(form))]);
    } catch (e) {
      setFailed(e);
    }
  });
  return (
    <form
      onChange={() => setFailed(null)}
      onSubmit={(e) => {
        e.preventDefault();
        void send(e.currentTarget);
      }}
    >
      <div className="fields">
        <Input label="Read on" name="day" type="date" required max={day} value={day} />
        <ReadingFields meters={choices.data?.meters ?? []} id={list} />
        <Input label="Said by" name="paper" hint="Letter, telephone, who" value="Reply of the owner" />
      </div>
      <ErrorNotice error={failed} />
      <div className="actions">
        <BusyButton className="first" busy={write.isPending}>
          {write.isPending ? 'Writing ...' : 'Write the reading'}
        </BusyButton>
      </div>
    </form>
  );
}
