import { useState } from 'react';
import type { Checked } from '../../../api/directives.ts';
import { today } from '../../../api/today.ts';
import { listOf, type Table, tableOf, textOf } from '../../../parts/write/json.ts';
import { CaseFields } from './case-fields.tsx';
import { CaseFromAircraft } from './case-from-aircraft.tsx';
import { useWriter } from './context.tsx';
import { newCase } from './draft.ts';

/** The rule's own test cases, answered as one types. */
export function CasesColumn({ checked }: { checked: Checked | undefined }) {
  const { draft, send } = useWriter();
  const cases = listOf(draft.cases);
  const [added, setAdded] = useState(Number.POSITIVE_INFINITY);
  const action = textOf(tableOf(listOf(draft.actions)[0]).id);
  const addCase = (item: Table) => {
    setAdded(Math.min(added, cases.length));
    send({ does: 'add', path: ['cases'], item });
  };
  return (
    <>
      <p className="soft">
        Say what must come out for an aircraft that you know, at the limit and beside it. Each action needs at least one
        case; a rule whose case fails is not adopted.
      </p>
      {cases.length === 0 ? <p className="empty">No case yet.</p> : null}
      {cases.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a case is its place in the document
        <CaseFields key={i} index={i} result={checked?.cases[i]} fresh={i >= added} />
      ))}
      <div className="actions">
        <button type="button" onClick={() => addCase(newCase(action, today()))}>
          Add a case
        </button>
      </div>
      <CaseFromAircraft add={addCase} />
    </>
  );
}
