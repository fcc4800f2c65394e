import { type ReactNode, useId, useRef } from 'react';
import { flushSync } from 'react-dom';
import { useForm } from './context.tsx';
import { addFresh } from './focus-place.ts';
import { type Json, listOf, type Path, at as placeOf, tableOf, textOf } from './json.ts';
import { WrongAt } from './wrong-at.tsx';

/** A long list of things of which one is shown in full: chosen by name, added, taken away. */
export function OneOf({
  path,
  one,
  item,
  chosen,
  choose,
  further,
  children,
}: {
  path: Path;
  /** "part", "row of fasteners" */
  one: string;
  /** A new one. */
  item: () => Json;
  chosen: number;
  choose: (index: number) => void;
  /** What else can be done with the chosen one. */
  further?: ReactNode;
  children: (path: Path) => ReactNode;
}) {
  const { draft, send, problems } = useForm();
  const id = useId();
  const panel = useRef<HTMLDivElement>(null);
  const rows = listOf(placeOf(draft, path));
  const place = path.join('.');
  const wrongIn = new Set(
    problems.filter((p) => p.path.startsWith(`${place}.`)).map((p) => Number(p.path.split('.')[path.length])),
  );
  const nameOf = (i: number) => {
    const thing = tableOf(rows[i]);
    return textOf(thing.name) || textOf(thing.id) || `${one} ${i + 1}, without a name`;
  };
  const here = Math.min(Math.max(0, chosen), rows.length - 1);
  const show = (i: number) => {
    flushSync(() => choose(i));
    const field = panel.current?.querySelector<HTMLElement>('[aria-invalid], input, select');
    field?.focus();
  };
  return (
    <div className="one-of" data-place={place} tabIndex={-1}>
      <WrongAt path={path} />
      {[...wrongIn].map((i) =>
        i === here ? null : (
          <button
            key={i}
            type="button"
            className="hidden-text"
            tabIndex={-1}
            data-place={`${place}.${i}`}
            onFocus={() => show(i)}
          >
            Show {nameOf(i)}
          </button>
        ),
      )}
      <div className="one-of-head">
        {rows.length ? (
          <div className="field">
            <label className="label" htmlFor={id}>
              Shown {one}, of {rows.length}
            </label>
            <select id={id} value={here} onChange={(e) => choose(Number(e.target.value))}>
              {rows.map((_, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a thing is its place in the document
                <option key={i} value={i}>
                  {nameOf(i)}
                  {wrongIn.has(i) ? ' (something is to do)' : ''}
                </option>
              ))}
            </select>
          </div>
        ) : (
          <p className="soft">No {one} yet.</p>
        )}
        <button
          type="button"
          className="quiet add"
          onClick={() =>
            addFresh([...path, rows.length], () => {
              send({ does: 'add', path, item: item() });
              choose(rows.length);
            })
          }
        >
          Add a {one}
        </button>
        {rows.length ? (
          <button
            type="button"
            className="quiet"
            onClick={() => {
              send({ does: 'drop', path: [...path, here] });
              choose(Math.max(0, here - 1));
            }}
          >
            Take away<span className="hidden-text"> {nameOf(here)}</span>
          </button>
        ) : null}
        {rows.length ? further : null}
      </div>
      {rows.length ? (
        <div ref={panel} key={here} data-place={`${place}.${here}`} tabIndex={-1}>
          <WrongAt path={[...path, here]} />
          {children([...path, here])}
        </div>
      ) : null}
    </div>
  );
}
