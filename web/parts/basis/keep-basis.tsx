import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { type BasisWord, keepBasis } from '../../api/usage.ts';
import { BusyButton } from '../busy-button.tsx';
import { ErrorNotice } from '../error-notice.tsx';
import { Input } from '../field.tsx';
import { useOnce } from '../use-once.ts';
import { type Table, textOf } from '../write/json.ts';
import type { Over } from './start-from.ts';

/** Keeping a document, with the name of who does. Nothing kept is overwritten: a change is a new issue. */
export function KeepBasis({
  shop,
  word,
  draft,
  over,
  ready,
  because,
  kept,
}: {
  shop: string;
  word: BasisWord;
  draft: Table;
  /** The kept document that this one is written over; null for a new one. */
  over: Over | null;
  ready: boolean;
  because: string;
  kept: () => void;
}) {
  const [by, setBy] = useState('');
  const queries = useQueryClient();
  const [, go] = useLocation();
  const renamed = over !== null && textOf(draft.title).trim() !== over.title;
  const keeping = useMutation({
    mutationFn: () =>
      keepBasis(shop, word, { document: draft, by: by.trim(), after: renamed ? 0 : (over?.entry ?? 0) }),
    onSuccess: async ({ name }) => {
      kept();
      go(`/${shop}/${word}/${encodeURIComponent(name)}`);
      await queries.invalidateQueries();
    },
  });
  const send = useOnce(() => keeping.mutateAsync().catch(() => undefined));
  return (
    <section className="sheet" aria-labelledby="keep">
      <h2 id="keep">Keep it</h2>
      <p className="soft">
        {over === null
          ? 'From then on the pages of aircraft can rest on it. It stands in the log under your name.'
          : renamed
            ? `Under another title it stands beside "${over.title}", which stays as it is.`
            : `It becomes the new issue of "${over.title}". The earlier one stays in the log.`}
      </p>
      <form
        onSubmit={(e) => {
          e.preventDefault();
          if (ready) void send();
        }}
      >
        <div className="fields">
          <Input label="Kept by" name="by" required value={by} set={setBy} />
        </div>
        <ErrorNotice error={keeping.error} />
        <div className="actions">
          <BusyButton className="first" disabled={!ready && !keeping.isPending} busy={keeping.isPending}>
            {keeping.isPending ? 'Keeping ...' : over === null || renamed ? 'Keep it' : 'Keep the new issue'}
          </BusyButton>
          {ready ? null : <span className="soft">{because}</span>}
        </div>
      </form>
    </section>
  );
}
