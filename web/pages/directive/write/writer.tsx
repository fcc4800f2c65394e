import { useQuery } from '@tanstack/react-query';
import { useCallback, useMemo, useReducer, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { ServerGone } from '../../../api/client.ts';
import { type Checked, checkDraft, type Words } from '../../../api/directives.ts';
import { Answer } from '../../../parts/answer.tsx';
import { ErrorNotice } from '../../../parts/error-notice.tsx';
import { Field } from '../../../parts/field.tsx';
import { listOf, tableOf, textOf } from '../../../parts/write/json.ts';
import { keyOf } from '../../../parts/write/keep.ts';
import { KeptLine } from '../../../parts/write/kept-line.tsx';
import { PasteDocument } from '../../../parts/write/paste-document.tsx';
import { ProblemList } from '../../../parts/write/problem-list.tsx';
import { useSettled } from '../../../parts/write/settled.ts';
import { useKept } from '../../../parts/write/use-kept.ts';
import { ActionFields } from './action-fields.tsx';
import { Adopt } from './adopt.tsx';
import { CasesColumn } from './cases-column.tsx';
import { WriterContext } from './context.tsx';
import { type Draft, documentOf, draftOf, nextAction } from './draft.ts';
import { KeepOnServer } from './keep-on-server.tsx';
import { placeInWords } from './places.ts';
import { Changes, ReadBackView } from './read-back-view.tsx';
import { refuseQuestion } from './read-rule.ts';
import { begin, write } from './reducer.ts';
import { RuleFields } from './rule-fields.tsx';
import { changesOf, type Said, stateOf } from './said.ts';
import { TryFleet } from './try-fleet.tsx';

/** What the form opens with. */
export interface Start {
  readonly draft: Draft;
  /** A document that was read elsewhere; undoing it leads back to the draft. */
  readonly opened?: Draft;
  /** The entry of the server's draft that it goes on from. */
  readonly entry: number | null;
}
export interface InForce {
  readonly name: string;
  readonly said: readonly Said[];
}

/** The draft as the server reads it, a moment after it stood still. While it does not answer, what it said last stays. */
function useChecked(shop: string, draft: Draft) {
  const document = useSettled(draft, 300);
  return useQuery({
    queryKey: ['directive check', shop, document],
    queryFn: () => checkDraft(shop, documentOf(document)),
    placeholderData: (last) => last,
    gcTime: 0,
    retry: false,
  });
}

/** Writing a directive: the form, the rule read back, its cases; then the fleet, then adopting. */
export function WriterView({
  shop,
  name,
  start,
  note,
  words,
  inForce,
}: {
  shop: string;
  /** Under what this browser keeps it: its number, or `new`. */
  name: string;
  start: Start;
  note: string;
  words: Words;
  inForce: InForce | null;
}) {
  const [{ draft, past }, send] = useReducer(write, start, (s) =>
    s.opened ? write(begin(s.draft), { does: 'open', draft: s.opened }) : begin(s.draft),
  );
  const [opening] = useState(start.draft);
  const [entry, setEntry] = useState(start.entry);
  const [, go] = useLocation();
  const [touched, setTouched] = useState<ReadonlySet<string>>(new Set());
  const [chosen, setAircraft] = useState<string | null>(null);
  const aircraft = chosen ?? likelyAircraft(draft, words);
  const touch = useCallback((place: string) => setTouched((t) => (t.has(place) ? t : new Set([...t, place]))), []);
  const checking = useChecked(shop, draft);
  const checked = checking.data;
  const kept = useKept(keyOf('directive', shop, name), draft, opening, entry, documentOf);
  const said = useLast(checked);
  const called = textOf(draft.number) ? `${textOf(draft.number)} issue ${textOf(draft.issue)}` : 'This rule';
  const state = stateOf(called, checked);
  const writer = useMemo(
    () => ({
      shop,
      draft,
      send,
      problems: checked?.problems ?? [],
      facts: checked?.factNames ?? words.facts,
      words,
      touched,
      touch,
      aircraft,
    }),
    [shop, draft, checked, words, touched, touch, aircraft],
  );
  return (
    <WriterContext value={writer}>
      <Answer answer={state.answer} because={note} />
      <KeptLine kept={kept} send={send} draftOf={draftOf} otherwise="keep the draft on the server" />
      {checking.error instanceof ServerGone ? (
        <div className="notice" role="alert">
          <p>
            <strong>Sparwright does not answer, so nothing is checked at the moment.</strong> Go on writing: this
            browser keeps every change, and the checks come back with the program.
          </p>
        </div>
      ) : (
        <ErrorNotice error={checking.error} again={() => void checking.refetch()} />
      )}
      <PasteDocument what="directive" send={send} draftOf={draftOf} refuse={refuseQuestion} />
      <div className="writing">
        <form className="form-column" aria-label="The rule" onSubmit={(e) => e.preventDefault()}>
          <div className="picture-head">
            <Field label="Values shown for">
              {(ids) => (
                <select {...ids} value={aircraft} onChange={(e) => setAircraft(e.target.value)}>
                  <option value="">no aircraft</option>
                  {words.aircraft.map((a) => (
                    <option key={a.id} value={a.id}>
                      {a.registration}, {a.model}
                    </option>
                  ))}
                </select>
              )}
            </Field>
            <button type="button" className="quiet" disabled={past.length === 0} onClick={() => send({ does: 'undo' })}>
              Undo the last change
            </button>
          </div>
          <RuleFields />
          {listOf(draft.actions).map((_, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: an action is its place in the document
            <ActionFields key={i} index={i} />
          ))}
          <div className="actions">
            <button type="button" onClick={() => send({ does: 'add', path: ['actions'], item: nextAction(draft) })}>
              Add an action
            </button>
          </div>
        </form>
        <aside className="sheet read-column" aria-label="The rule read back">
          <ProblemList problems={checked?.problems ?? []} touch={touch} inWords={placeInWords} />
          <h2>Read back</h2>
          <ReadBackView said={said} old={checked !== undefined && checked.readBack === null} />
          {inForce && said ? (
            <>
              <h2>Against {inForce.name}</h2>
              <Changes {...changesOf(inForce.said, said)} of={inForce.name} />
            </>
          ) : null}
        </aside>
        <section className="sheet case-column" aria-labelledby="its-cases" data-place="cases" tabIndex={-1}>
          <h2 id="its-cases">Its test cases</h2>
          <CasesColumn checked={checked} />
        </section>
      </div>
      <TryFleet shop={shop} draft={draft} state={state} />
      <KeepOnServer
        shop={shop}
        draft={draft}
        known={entry}
        send={send}
        kept={(number, at) => {
          setEntry(at);
          if (number === name) return;
          kept.forget();
          go(`/${shop}/directive/${encodeURIComponent(number)}/write`, { replace: true });
        }}
        thrownAway={() => setEntry(null)}
      />
      <Adopt shop={shop} draft={draft} state={state} adopted={kept.forget} />
    </WriterContext>
  );
}

/** The first aircraft of a model that the rule names; else the first there is. */
function likelyAircraft(draft: Draft, words: Words): string {
  const models = new Set(listOf(tableOf(draft.affects).models).map((m) => textOf(tableOf(m).model)));
  return (words.aircraft.find((a) => models.has(a.model)) ?? words.aircraft[0])?.id ?? '';
}

/** The last reading there was: while a field is half typed the sentences stay. */
function useLast(checked: Checked | undefined): readonly Said[] | null {
  const last = useRef<readonly Said[] | null>(null);
  if (checked?.readBack) last.current = checked.readBack;
  return last.current;
}
