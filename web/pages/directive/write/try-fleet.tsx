import { useMutation } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import type { Sheet } from '../../../../sheets/model.ts';
import { type Trial, tryOnFleet } from '../../../api/directives.ts';
import { Answer } from '../../../parts/answer.tsx';
import { BusyButton } from '../../../parts/busy-button.tsx';
import { Warnings } from '../../../parts/caution.tsx';
import { ErrorNotice } from '../../../parts/error-notice.tsx';
import { Blocks } from '../../../parts/sheet-view.tsx';
import { type Draft, documentOf } from './draft.ts';
import type { State } from './said.ts';

/** The rule held against every aircraft before it is adopted. Nothing is kept of it. */
export function TryFleet({ shop, draft, state }: { shop: string; draft: Draft; state: State }) {
  const [far, setFar] = useState<Trial | null>(null);
  const stopped = useRef(false);
  const stop = () => {
    stopped.current = true;
  };
  useEffect(
    () => () => {
      stopped.current = true;
    },
    [],
  );
  const trial = useMutation({
    mutationFn: async (tried: Draft) => {
      stopped.current = false;
      setFar(null);
      const sheet = await tryOnFleet(shop, documentOf(tried), setFar, () => stopped.current);
      return sheet && { sheet, tried };
    },
  });
  const found = trial.data ?? null;
  return (
    <section className="sheet" aria-labelledby="try">
      <h2 id="try">Try it on the fleet</h2>
      <p className="soft">
        Every aircraft of this shop is held against it, beside what is in force now. Nothing is kept.
      </p>
      <div className="actions">
        <BusyButton
          type="button"
          disabled={!state.ready && !trial.isPending}
          busy={trial.isPending}
          onClick={() => trial.mutate(draft)}
        >
          {trial.isPending ? 'Trying ...' : 'Try it on the fleet'}
        </BusyButton>
        {trial.isPending ? (
          <>
            <Progress far={far} />
            <button type="button" className="quiet" onClick={stop}>
              Stop
            </button>
          </>
        ) : null}
        {state.ready ? null : <span className="soft">{state.because}</span>}
      </div>
      <ErrorNotice error={trial.error} />
      {found && !trial.isPending ? <Tried sheet={found.sheet} old={found.tried !== draft} /> : null}
    </section>
  );
}

function Progress({ far }: { far: Trial | null }) {
  if (!far) return <span role="status">The first aircraft is being read.</span>;
  return (
    <span role="status" className="progress">
      <progress max={far.of} value={far.done} aria-label="Aircraft tried" /> {far.done} of {far.of} aircraft
    </span>
  );
}

/** What came of a trial. */
export function Tried({ sheet, old }: { sheet: Sheet; old: boolean }) {
  return (
    <div role="status">
      {old ? <p className="notice">The rule was changed since: try it again to see what it now does.</p> : null}
      <Answer answer={sheet.answer} because={sheet.because} level={2} />
      <Warnings warnings={sheet.warnings} />
      <Blocks blocks={sheet.blocks} />
    </div>
  );
}
