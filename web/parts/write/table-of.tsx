import { useState } from 'react';
import { useForm } from './context.tsx';
import { FigureOf } from './figure-of.tsx';
import { at, listOf, type Path } from './json.ts';

const SHOWN = 12;

/** Rows of figures as a small table that can be corrected cell by cell; long ones are folded. */
export function TableOf({
  path,
  title,
  columns,
}: {
  path: Path;
  title: string;
  columns: readonly { readonly field: string; readonly title: string }[];
}) {
  const { draft, send } = useForm();
  const [all, setAll] = useState(false);
  const rows = listOf(at(draft, path));
  if (rows.length === 0) return null;
  const shown = all ? rows.length : Math.min(rows.length, SHOWN);
  return (
    <div className="table-of" data-place={path.join('.')} tabIndex={-1}>
      <table>
        <caption>
          {title}, {rows.length === 1 ? '1 row' : `${rows.length} rows`}
        </caption>
        <thead>
          <tr>
            {columns.map((c) => (
              <th key={c.field} scope="col">
                {c.title}
              </th>
            ))}
            <th scope="col">
              <span className="hidden-text">Take away</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, shown).map((_, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place in the document
            <tr key={i}>
              {columns.map((c) => (
                <td key={c.field}>
                  <FigureOf path={[...path, i, c.field]} label={`${title}, ${c.title}, row ${i + 1}`} />
                </td>
              ))}
              <td>
                <button type="button" className="quiet" onClick={() => send({ does: 'drop', path: [...path, i] })}>
                  Take away
                  <span className="hidden-text">
                    {' '}
                    row {i + 1} of {title}
                  </span>
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {shown < rows.length ? (
        <button type="button" className="quiet" onClick={() => setAll(true)}>
          Show all {rows.length} rows
        </button>
      ) : null}
      <span className="grow">
        <button type="button" className="quiet" onClick={() => send({ does: 'add', path, item: {} })}>
          Add a row<span className="hidden-text"> to {title}</span>
        </button>
        <button type="button" className="quiet" onClick={() => send({ does: 'put', path, value: undefined })}>
          Take all rows away<span className="hidden-text">: {title}</span>
        </button>
      </span>
    </div>
  );
}
