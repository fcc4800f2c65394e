import type { ReactNode } from 'react';
import { useForm } from './context.tsx';
import { addFresh } from './focus-place.ts';
import { at, type Json, type Path } from './json.ts';

/** A part of a document that most have not: opened by a button, taken away by another. */
export function OwnPart({
  title,
  path,
  fresh,
  add,
  fixed,
  children,
}: {
  title: string;
  path: Path;
  fresh: Json;
  add: string;
  /** It cannot be taken away now: something of its kind must stay. */
  fixed?: boolean;
  children: ReactNode;
}) {
  const { draft, send } = useForm();
  if (at(draft, path) === undefined)
    return (
      <button
        type="button"
        className="quiet add"
        data-place={path.join('.')}
        onClick={() => addFresh(path, () => send({ does: 'put', path, value: fresh }))}
      >
        {add}
      </button>
    );
  return (
    <div className="own" data-place={path.join('.')} tabIndex={-1}>
      {title ? <h3>{title}</h3> : null}
      {children}
      {fixed ? null : (
        <button type="button" className="quiet add" onClick={() => send({ does: 'put', path, value: undefined })}>
          Not so: take this away<span className="hidden-text">: {add}</span>
        </button>
      )}
    </div>
  );
}
