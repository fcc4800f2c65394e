import { useRef } from 'react';
import { useWhatIf, useWhatIfChoices } from '../../api/what-if.ts';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { Questions } from './questions.tsx';

/** Side by side with today, and nothing is stored. */
export function WhatIfPage({ shop, id }: { shop: string; id: string }) {
  const choices = useWhatIfChoices(shop, id);
  const asked = useWhatIf(shop, id);
  const answer = useRef<HTMLDivElement>(null);
  const name = choices.data?.registration ?? 'Aircraft';
  return (
    <Page shop={shop} title={`What if: ${name}`} aircraft={{ id, name }}>
      <h1 className="say">What if {name} were flown, fitted or documented otherwise?</h1>
      <p className="because">Today beside what would be. Nothing here is written to the log.</p>
      <Loaded query={choices}>
        {(c) => (
          <Questions
            choices={c}
            busy={asked.isPending}
            ask={(question) => asked.mutate(question, { onSettled: () => answer.current?.focus() })}
          />
        )}
      </Loaded>
      <div ref={answer} tabIndex={-1} aria-live="polite" className="answered">
        <ErrorNotice error={asked.error} />
        {asked.isPending ? <p role="status">Computing both sides ...</p> : null}
        {asked.data && !asked.error ? <SheetView sheet={asked.data} level={2} /> : null}
      </div>
    </Page>
  );
}
