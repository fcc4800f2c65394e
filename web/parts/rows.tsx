import { type ReactNode, useState } from 'react';

/** Lines of a form that a person can add and take away; each line is drawn with its own key for the names of its fields. */
export function Rows({
  add,
  what,
  start = 0,
  children,
}: {
  add: string;
  what: string;
  start?: number;
  children: (key: string) => ReactNode;
}) {
  const [keys, setKeys] = useState<readonly number[]>(() => Array.from({ length: start }, (_, i) => i));
  const [next, setNext] = useState(start);
  const more = () => {
    setKeys([...keys, next]);
    setNext(next + 1);
  };
  return (
    <>
      {keys.map((k) => (
        <div className="row" key={k}>
          <input type="hidden" name="row" value={`${what}.${k}`} />
          {children(`${what}.${k}`)}
          <button type="button" className="quiet" onClick={() => setKeys(keys.filter((other) => other !== k))}>
            Take away<span className="hidden-text"> this line of {what}</span>
          </button>
        </div>
      ))}
      <div className="actions">
        <button type="button" onClick={more}>
          {add}
        </button>
      </div>
    </>
  );
}

/** The keys of the lines that stand in a form. */
export const rowKeys = (form: HTMLFormElement, what: string): readonly string[] =>
  new FormData(form)
    .getAll('row')
    .map(String)
    .filter((key) => key.startsWith(`${what}.`));
