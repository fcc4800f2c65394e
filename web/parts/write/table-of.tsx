import { useState } from 'react';
import { useForm } from './context.tsx';
import { FigureOf } from './figure-of.tsx';
import { addFresh } from './focus-place.ts';
import { at, type Json, listOf, type Path, tableOf } from './json.ts';
import { nameIn, standsAs, unitWord, useUnits } from './units.ts';
import { WrongAt } from './wrong-at.tsx';

const SHOWN = 12;

/** The unit of a column, where all its figures stand in one. */
function ColumnUnit({ rows, field }: { rows: readonly Json[]; field: string }) {
  const otherwise = nameIn(field, useUnits());
  const units = new Set(rows.map((r) => unitWord(standsAs(tableOf(r), field, otherwise))));
  return units.size === 1 ? <span className="unit">{[...units][0]}</span> : null;
}

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
  const { draft, send, problems } = useForm();
  const [all, setAll] = useState(false);
  const rows = listOf(at(draft, path));
  if (rows.length === 0) return null;
  const wrong = problems.some((p) => p.path.startsWith(`${path.join('.')}.`));
  const shown = all || wrong ? rows.length : Math.min(rows.length, SHOWN);
  return (
    <div className="table-of" data-place={path.join('.')} tabIndex={-1}>
      <WrongAt path={path} />
      <table>
        <caption>
          {title}, {rows.length === 1 ? '1 row' : `${rows.length} rows`}
        </caption>
        <thead>
          <tr>
            {columns.map((c) => (
              <th key={c.field} scope="col">
                {c.title} <ColumnUnit rows={rows} field={c.field} />
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
            <tr key={i} data-place={[...path, i].join('.')} tabIndex={-1}>
              {columns.map((c) => (
                <td key={c.field}>
                  <FigureOf path={[...path, i, c.field]} within label={`${title}, ${c.title}, row ${i + 1}`} />
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
                <WrongAt path={[...path, i]} />
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
        <button
          type="button"
          className="quiet"
          onClick={() =>
            addFresh([...path, rows.length], () => {
              setAll(true);
              send({ does: 'add', path, item: {} });
            })
          }
        >
          Add a row<span className="hidden-text"> to {title}</span>
        </button>
        <button type="button" className="quiet" onClick={() => send({ does: 'put', path, value: undefined })}>
          Take all rows away<span className="hidden-text">: {title}</span>
        </button>
      </span>
    </div>
  );
}
