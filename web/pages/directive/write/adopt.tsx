import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { adopt } from '../../../api/directives.ts';
import { today } from '../../../api/today.ts';
import { BusyButton } from '../../../parts/busy-button.tsx';
import { ErrorNotice } from '../../../parts/error-notice.tsx';
import { Input } from '../../../parts/field.tsx';
import { useOnce } from '../../../parts/use-once.ts';
import { type Draft, documentOf } from './draft.ts';
import type { State } from './said.ts';

/** Adopting: with name and day. What does not read, or whose case fails, is not adopted, and the sentence says why. */
export function Adopt({
  shop,
  draft,
  state,
  adopted,
}: {
  shop: string;
  draft: Draft;
  state: State;
  adopted: () => void;
}) {
  const [by, setBy] = useState('');
  const [on, setOn] = useState(today());
  const queries = useQueryClient();
  const [, go] = useLocation();
  const adopting = useMutation({
    mutationFn: () => adopt(shop, documentOf(draft), by, on),
    onSuccess: async ({ number }) => {
      adopted();
      go(`/${shop}/directive/${encodeURIComponent(number)}`);
      await queries.invalidateQueries();
    },
  });
  const send = useOnce(() => adopting.mutateAsync().catch(() => undefined));
  return (
    <section className="sheet" aria-labelledby="adopt">
      <h2 id="adopt">Adopt it</h2>
      <p className="soft">
        From then on it counts for every aircraft of this shop. Nothing adopted is overwritten: a change is a next
        issue.
      </p>
      <form
        onSubmit={(e) => {
          e.preventDefault();
          if (state.ready) void send();
        }}
      >
        <div className="fields">
          <Input label="Adopted by" name="by" required value={by} set={setBy} />
          <Input label="On" name="on" type="date" required value={on} set={setOn} max={today()} />
        </div>
        <ErrorNotice error={adopting.error} />
        <div className="actions">
          <BusyButton className="first" disabled={!state.ready && !adopting.isPending} busy={adopting.isPending}>
            {adopting.isPending ? 'Adopting ...' : 'Adopt it'}
          </BusyButton>
          {state.ready ? null : <span className="soft">{state.because}</span>}
        </div>
      </form>
    </section>
  );
}
