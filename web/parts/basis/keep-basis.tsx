import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { ServerSaidNo } from '../../api/client.ts';
import { ownPage } from '../../api/kept-at.ts';
import { type BasisWord, keepBasis, standingBasis } from '../../api/usage.ts';
import { BusyButton } from '../busy-button.tsx';
import { ErrorNotice } from '../error-notice.tsx';
import { Input } from '../field.tsx';
import { useOnce } from '../use-once.ts';
import { type Json, type Table, tableOf, textOf } from '../write/json.ts';
import { KeptMeanwhile } from './kept-meanwhile.tsx';
import type { Over } from './start-from.ts';
import { WORD_NAMES } from './words.ts';

/** The document that was kept meanwhile, as the refusal names it. */
function movedOn(error: unknown): { readonly name: string; readonly given: string } | null {
  if (!(error instanceof ServerSaidNo) || error.refusal.code !== 'store.changed-meanwhile') return null;
  const { given } = error.refusal;
  return { name: /"([^"]+)"/.exec(given)?.[1] ?? '', given };
}

/** Keeping a document, with the name of who does. Nothing kept is overwritten: a change is a new issue. */
export function KeepBasis({
  shop,
  word,
  draft,
  over,
  ready,
  because,
  kept,
  take,
}: {
  shop: string;
  word: BasisWord;
  draft: Table;
  /** The kept document that this one is written over; null for a new one. */
  over: Over | null;
  ready: boolean;
  because: string;
  kept: () => void;
  /** Goes on from what somebody else kept meanwhile. */
  take: (document: Table, over: Over) => void;
}) {
  const [by, setBy] = useState('');
  const queries = useQueryClient();
  const [, go] = useLocation();
  const renamed = over !== null && textOf(draft.title).trim() !== over.title;
  const keeping = useMutation({
    mutationFn: (after: number) => keepBasis(shop, word, { document: draft, by: by.trim(), after }),
    onSuccess: async ({ name }) => {
      kept();
      go(ownPage(shop, word, name));
      await queries.invalidateQueries();
    },
  });
  const taking = useMutation({
    mutationFn: (name: string) => standingBasis(shop, word, name),
    onSuccess: ({ document, entry }) => {
      const other = tableOf(document as Json);
      take(other, { title: textOf(other.title), entry });
      keeping.reset();
    },
  });
  const send = useOnce((after: number) => keeping.mutateAsync(after).catch(() => undefined));
  const keepOver = useOnce(async (name: string) => {
    const { entry } = await standingBasis(shop, word, name);
    await send(entry);
  });
  const other = movedOn(keeping.error);
  return (
    <section className="sheet" aria-labelledby="keep">
      <h2 id="keep">Keep it</h2>
      <p className="soft">
        {over === null
          ? `${WORD_NAMES[word].kept} It stands in the log under your name.`
          : renamed
            ? `Under another title it stands beside "${over.title}", which stays as it is.`
            : `It becomes the new issue of "${over.title}". The earlier one stays in the log.`}
      </p>
      <form
        onSubmit={(e) => {
          e.preventDefault();
          if (ready) void send(renamed ? 0 : (over?.entry ?? 0));
        }}
      >
        <div className="fields">
          <Input label="Kept by" name="by" required value={by} set={setBy} />
        </div>
        {other ? (
          <KeptMeanwhile
            given={other.given}
            take={() => taking.mutate(other.name)}
            over={() => void keepOver(other.name).catch(() => undefined)}
          />
        ) : null}
        <ErrorNotice error={taking.error ?? (other ? null : keeping.error)} />
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
