import { useRef, useState } from 'react';
import type { Sheet } from '../../../sheets/model.ts';
import { type Question, useWhatIf, useWhatIfChoices } from '../../api/what-if.ts';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { Questions } from './questions.tsx';

/** Side by side with today, and nothing is stored. */
export function WhatIfPage({ shop, id }: { shop: string; id: string }) {
  const choices = useWhatIfChoices(shop, id);
  const asked = useWhatIf(shop, id);
  const [last, setLast] = useState<Sheet>();
  const [form, setForm] = useState('');
  const answer = useRef<HTMLDivElement>(null);
  const name = choices.data?.registration ?? 'Aircraft';
  // While the next answer is computed the last one stays: the forms below do not jump.
  const shown = asked.error ? undefined : (asked.data ?? last);
  const toAnswer = () => {
    answer.current?.focus({ preventScroll: true });
    answer.current?.scrollIntoView({ block: 'start' });
  };
  // The last question asked is the one answered: what an earlier one still brings is passed over.
  const ask = (question: Question, title: string) => {
    if (asked.isPending && JSON.stringify(asked.variables) === JSON.stringify(question)) return;
    setForm(title);
    const from = document.activeElement;
    asked.mutate(question, {
      onSettled: (sheet) => {
        setLast(sheet);
        requestAnimationFrame(() => {
          // Who has gone on to another field meanwhile is not taken out of it.
          if (document.activeElement === from || document.activeElement === document.body) toAnswer();
        });
      },
    });
  };
  return (
    <Page shop={shop} title={`What if: ${name}`} aircraft={{ id, name }}>
      <div ref={answer} tabIndex={-1} className="answered" aria-busy={asked.isPending}>
        <ErrorNotice error={asked.error} />
        {shown ? <SheetView sheet={shown} /> : null}
      </div>
      {shown ? <h2 className="say">Ask otherwise</h2> : <Opening name={name} />}
      <p role="status">{asked.isPending ? 'Computing both sides ...' : ''}</p>
      <Loaded query={choices}>
        {(c) => <Questions choices={c} computing={asked.isPending ? form : ''} ask={ask} />}
      </Loaded>
    </Page>
  );
}

function Opening({ name }: { name: string }) {
  return (
    <>
      <h1 className="say">What if {name} were flown, fitted or documented otherwise?</h1>
      <p className="because">Today beside what would be. Nothing here is written to the log.</p>
    </>
  );
}
