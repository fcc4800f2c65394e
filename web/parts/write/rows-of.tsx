import type { ReactNode } from 'react';
import { useField, useForm } from './context.tsx';
import { addFresh } from './focus-place.ts';
import { type Json, listOf, type Path } from './json.ts';
import { Wrong } from './placed.tsx';

/** Lines of the form that can be added and taken away. */
export function RowsOf({
  path,
  title,
  add,
  item,
  one,
  children,
}: {
  path: Path;
  title: string;
  add: string;
  /** A new line. */
  item: Json;
  /** What one line is called. */
  one: string;
  children: (path: Path, index: number) => ReactNode;
}) {
  const { send } = useForm();
  const f = useField(path);
  const rows = listOf(f.value);
  return (
    <div className="rows whole" data-place={f.place} tabIndex={-1}>
      {rows.length ? <p className="label">{title}</p> : null}
      {rows.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place in the document
        <fieldset className="row" key={i} data-place={[...path, i].join('.')} tabIndex={-1}>
          <legend className="hidden-text">
            {title}, {one} {i + 1}
          </legend>
          {children([...path, i], i)}
          <button type="button" className="quiet" onClick={() => send({ does: 'drop', path: [...path, i] })}>
            Take away
            <span className="hidden-text">
              {' '}
              {one} {i + 1}
            </span>
          </button>
        </fieldset>
      ))}
      <button
        type="button"
        className="quiet add"
        onClick={() => addFresh([...path, rows.length], () => send({ does: 'add', path, item }))}
      >
        {add}
      </button>
      <Wrong id={`${f.place}-wrong`} problems={f.problems} />
    </div>
  );
}
