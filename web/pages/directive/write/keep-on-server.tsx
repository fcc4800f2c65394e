import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { keepDraft, type ServerDraft, serverDraft, throwDraftAway } from '../../../api/directives.ts';
import { BusyButton } from '../../../parts/busy-button.tsx';
import { ErrorNotice } from '../../../parts/error-notice.tsx';
import { Input } from '../../../parts/field.tsx';
import { type Json, textOf } from '../../../parts/write/json.ts';
import { type Draft, documentOf, draftOf } from './draft.ts';
import type { Change } from './reducer.ts';
import { daysInWords } from './said.ts';

const AGAIN_MS = 10_000;

/** The draft on the server: kept with one button; what another kept meanwhile is seen before anything is written over. */
export function KeepOnServer({
  shop,
  draft,
  known,
  send,
  kept,
  thrownAway,
}: {
  shop: string;
  draft: Draft;
  /** The entry of the draft that this one was opened from or last kept as; null: none. */
  known: number | null;
  send: (c: Change) => void;
  kept: (number: string, entry: number) => void;
  thrownAway: () => void;
}) {
  const number = textOf(draft.number).trim();
  const [by, setBy] = useState('');
  const queries = useQueryClient();
  const key = ['directive draft', shop, number];
  const there = useQuery({
    queryKey: key,
    queryFn: () => serverDraft(shop, number),
    enabled: number !== '',
    refetchInterval: AGAIN_MS,
    retry: false,
  });
  const other = there.data && there.data.entry !== known ? there.data : null;
  const keeping = useMutation({
    mutationFn: async (over: number | null) => {
      const now = await serverDraft(shop, number);
      queries.setQueryData(key, now);
      if (now && now.entry !== over) return null;
      const { entry } = await keepDraft(shop, number, by.trim(), documentOf(draft));
      return { entry };
    },
    onSuccess: async (done) => {
      if (done) kept(number, done.entry);
      await queries.invalidateQueries({ queryKey: key });
    },
  });
  const throwing = useMutation({
    mutationFn: () => throwDraftAway(shop, number),
    onSuccess: async () => {
      thrownAway();
      await queries.invalidateQueries();
    },
  });
  return (
    <section className="sheet" aria-labelledby="keep">
      <h2 id="keep">Keep it for later</h2>
      <p className="soft">
        This browser keeps every change by itself. On the server the draft can be taken up from any place; it counts
        nowhere until it is adopted.
      </p>
      <form
        onSubmit={(e) => {
          e.preventDefault();
          keeping.mutate(known);
        }}
      >
        <div className="fields">
          <Input label="Your name" name="kept-by" required value={by} set={setBy} />
        </div>
        {other ? (
          <Other
            draft={other}
            take={() => take(other)}
            over={() => keeping.mutate(other.entry)}
            named={by.trim() !== ''}
          />
        ) : null}
        <ErrorNotice error={keeping.error ?? throwing.error} />
        <div className="actions">
          <BusyButton disabled={number === '' || other !== null} busy={keeping.isPending}>
            {keeping.isPending ? 'Keeping ...' : 'Keep the draft on the server'}
          </BusyButton>
          {there.data && !other ? (
            <button type="button" className="quiet" onClick={() => throwing.mutate()}>
              Throw the server's draft away
            </button>
          ) : null}
          <span className="soft" role="status">
            {number === '' ? 'It needs its number first.' : there.data && !other ? onServer(there.data) : ''}
          </span>
        </div>
      </form>
    </section>
  );

  function take(d: ServerDraft) {
    send({ does: 'open', draft: draftOf(d.document as Json) });
    kept(number, d.entry);
  }
}

const onServer = (d: ServerDraft): string => `The server holds the draft that ${d.by} kept on ${daysInWords(d.on)}.`;

function Other({
  draft,
  take,
  over,
  named,
}: {
  draft: ServerDraft;
  take: () => void;
  over: () => void;
  named: boolean;
}) {
  return (
    <div className="notice" role="alert">
      <p>
        <strong>
          {draft.by} kept a draft of {draft.number} on the server that this page has not seen ({daysInWords(draft.on)}).
        </strong>{' '}
        Nothing is written over it unless you say so; both stay in the log.
      </p>
      <div className="actions">
        <button type="button" onClick={take}>
          Take over that draft
        </button>
        <button type="button" disabled={!named} onClick={over}>
          Keep this one in its place
        </button>
        {named ? null : <span className="soft">To keep this one, fill in your name.</span>}
      </div>
    </div>
  );
}
