import { createContext, type Dispatch, useContext, useState } from 'react';
import { at, type Json, type Path, type Table } from './json.ts';
import type { Problem } from './problem.ts';
import type { Change } from './reducer.ts';

/** A document in a form: what stands in it, how to change it, what is wrong with it. */
export interface InForm {
  readonly draft: Table;
  readonly send: Dispatch<Change>;
  readonly problems: readonly Problem[];
  /** Fields that were left, or whose problem was asked for: only these say that they are still empty. */
  readonly touched: ReadonlySet<string>;
  readonly touch: (place: string) => void;
}
export const FormContext = createContext<InForm | null>(null);

export function useForm(): InForm {
  const form = useContext(FormContext);
  if (!form) throw new Error('a field of a document stands outside its form');
  return form;
}

/** A place of the document as a field: what stands there, how to change it, what is wrong with it. */
export function useField(path: Path, within = false, place = path.join('.')) {
  const { draft, send, problems, touched, touch } = useForm();
  const mine = problems.filter((p) => p.path === place || (within && p.path.startsWith(`${place}.`)));
  const shown = mine.filter((p) => !p.missing || touched.has(place));
  return {
    value: at(draft, path),
    put: (value: Json | undefined) => send({ does: 'put', path, value }),
    place,
    problems: shown,
    leave: () => touch(place),
  };
}

/** Text as it is typed, until the field is left: then the document's own form of it. */
export function useTyped(shown: string, take: (text: string) => void, leave: () => void) {
  const [typed, setTyped] = useState<string | null>(null);
  return {
    value: typed ?? shown,
    onChange: (e: { target: { value: string } }) => {
      setTyped(e.target.value);
      take(e.target.value);
    },
    onBlur: () => {
      setTyped(null);
      leave();
    },
  };
}
