import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { formulaValue } from '../../../api/directives.ts';
import { BusyButton } from '../../../parts/busy-button.tsx';
import { ErrorNotice } from '../../../parts/error-notice.tsx';
import { Select } from '../../../parts/write/inputs.tsx';
import { listOf, type Table, tableOf, textOf } from '../../../parts/write/json.ts';
import { Placed } from '../../../parts/write/placed.tsx';
import { caseFromLife, factsAsked } from './case-from-life.ts';
import { useWriter } from './context.tsx';

/** A case with the figures of a real part, so that the answer can be held against what the shop knows of it. */
export function CaseFromAircraft({ add }: { add: (item: Table) => void }) {
  const { shop, draft, words, aircraft } = useWriter();
  const [said, setSaid] = useState('');
  const [action, setAction] = useState('');
  const actions = listOf(draft.actions).map(tableOf);
  const chosen = actions.find((a) => a.id === action) ?? actions[0];
  const name = words.aircraft.find((a) => a.id === aircraft)?.registration;
  const ask = useMutation({
    mutationFn: async () => {
      const part = textOf(chosen?.looks_at);
      const asked = { expression: factsAsked(draft), aircraft, is: 'number' as const };
      return formulaValue(shop, part ? { ...asked, part } : asked);
    },
    onSuccess: (shown) => {
      for (const part of shown.parts) add(caseFromLife(shown, part, textOf(chosen?.id)));
      setSaid(
        shown.parts.length
          ? `${shown.parts.length} added: say what must come out.`
          : (shown.problem?.given ?? shown.empty),
      );
    },
  });
  if (!name || !chosen) return null;
  return (
    <div className="from-aircraft">
      {actions.length > 1 ? (
        <Placed place="case-from.action" label={`Figures of ${name} for`} problems={[]}>
          {(ids) => (
            <Select
              ids={ids}
              value={textOf(chosen.id)}
              options={actions.map((a) => ({ value: textOf(a.id), text: textOf(a.title) || textOf(a.id) }))}
              set={setAction}
            />
          )}
        </Placed>
      ) : null}
      <div className="actions">
        <BusyButton type="button" busy={ask.isPending} onClick={() => ask.mutate()}>
          {ask.isPending ? 'Reading its record ...' : `Add a case from ${name}`}
        </BusyButton>
        <span role="status" className="soft">
          {said}
        </span>
      </div>
      <ErrorNotice error={ask.error} />
    </div>
  );
}
