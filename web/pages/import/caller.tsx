import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { Link } from 'wouter';
import type { Sheet } from '../../../sheets/model.ts';
import { post } from '../../api/client.ts';
import { shopPath } from '../../api/shops.ts';
import { BusyButton } from '../../parts/busy-button.tsx';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { callOf } from './call.ts';
import { CallQuestions } from './call-form.tsx';

interface Answered {
  readonly aircraft: string;
  readonly sheet: Sheet;
}

export function CallerPage({ shop }: { shop: string }) {
  const queries = useQueryClient();
  const answerPlace = useRef<HTMLDivElement>(null);
  const call = useMutation({
    mutationFn: (document: Record<string, unknown>) => post<Answered>(shopPath(shop, 'call'), document),
    onSuccess: () => queries.invalidateQueries(),
  });
  useEffect(() => {
    if (call.data) answerPlace.current?.focus();
  }, [call.data]);
  if (call.data)
    return (
      <Page shop={shop} title="Answer for the caller">
        <div ref={answerPlace} tabIndex={-1}>
          <SheetView sheet={call.data.sheet} />
        </div>
        <div className="actions">
          <Link className="button first" href={`/${shop}/aircraft/${encodeURIComponent(call.data.aircraft)}`}>
            Open the aircraft
          </Link>
          <button type="button" onClick={() => call.reset()}>
            Answer another caller
          </button>
        </div>
      </Page>
    );
  return (
    <Page shop={shop} title="Answer a caller">
      <h1 className="say">Six questions, then an answer on the worse side.</h1>
      <p className="because">
        Ask while the caller is on the telephone. What he says is kept as a statement; papers that come later replace
        it.
      </p>
      <form
        onSubmit={(e) => {
          e.preventDefault();
          call.mutate(callOf(e.currentTarget));
        }}
      >
        <CallQuestions />
        <ErrorNotice error={call.error} />
        <div className="actions">
          <BusyButton className="first" busy={call.isPending}>
            {call.isPending ? 'Looking at the worse side ...' : 'Answer'}
          </BusyButton>
        </div>
      </form>
    </Page>
  );
}
