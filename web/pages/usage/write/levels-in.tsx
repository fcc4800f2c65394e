import { useState } from 'react';
import { Field } from '../../../parts/field.tsx';
import { useForm } from '../../../parts/write/context.tsx';
import { at, type Json, listOf, type Path } from '../../../parts/write/json.ts';
import { PasteTable } from '../../../parts/write/paste-table.tsx';
import { TableOf } from '../../../parts/write/table-of.tsx';

const COLUMNS = [
  { field: 'at', title: 'Level' },
  { field: 'times', title: 'Times' },
];
const FORMS = [
  { names: ['level', 'times'], say: 'Two columns: the level, and how often it is passed.' },
  { names: ['level', 'times up', 'times down'], say: 'three: the level, times up, times down.' },
];
type Way = 'both' | 'up' | 'down';

/** Levels and how often each is passed: pasted, then corrected cell by cell. */
export function LevelsIn({ path, of }: { path: Path; of: string }) {
  const { draft, send } = useForm();
  const [way, setWay] = useState<Way>('both');
  const empty = listOf(at(draft, [...path, 'up'])).length + listOf(at(draft, [...path, 'down'])).length === 0;
  const take = (rows: readonly (readonly number[])[]) => {
    const column = (i: number): Json =>
      rows.flatMap((r) => (r[i] === undefined ? [] : [{ at: Math.abs(r[0]!), times: r[i]! }]));
    const put = (direction: 'up' | 'down', value: Json) => send({ does: 'put', path: [...path, direction], value });
    const three = rows[0]!.length > 2;
    if (three || way !== 'down') put('up', column(1));
    if (three || way !== 'up') put('down', column(three ? 2 : 1));
  };
  return (
    <div className="levels" data-place={`${path.join('.')}.up`} tabIndex={-1}>
      <div className="fields">
        <Field label="Two columns are">
          {(ids) => (
            <select {...ids} value={way} onChange={(e) => setWay(e.target.value as Way)}>
              <option value="both">up and down alike</option>
              <option value="up">upward only</option>
              <option value="down">downward only</option>
            </select>
          )}
        </Field>
        <PasteTable label={`Paste its table`} forms={FORMS} take={take} />
      </div>
      <div className="side-by-side">
        <TableOf path={[...path, 'up']} title={`Upward, ${of}`} columns={COLUMNS} />
        <TableOf path={[...path, 'down']} title={`Downward, ${of}`} columns={COLUMNS} />
      </div>
      {empty ? (
        <button
          type="button"
          className="quiet add"
          onClick={() => send({ does: 'put', path: [...path, 'up'], value: [{}, {}] })}
        >
          Type it row by row<span className="hidden-text">: {of}</span>
        </button>
      ) : null}
    </div>
  );
}
