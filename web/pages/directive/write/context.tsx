import { createContext, type Dispatch, useContext, useState } from 'react';
import type { Problem, Words } from '../../../api/directives.ts';
import type { Draft } from './draft.ts';
import type { FactName } from './facts.ts';
import { at, type Json, type Path } from './json.ts';
import type { Change } from './reducer.ts';

export interface Writer {
  readonly shop: string;
  readonly draft: Draft;
  readonly send: Dispatch<Change>;
  readonly problems: readonly Problem[];
  readonly facts: readonly FactName[];
  readonly words: Words;
  /** Fields that were left, or whose problem was asked for: only these say that they are still empty. */
  readonly touched: ReadonlySet<string>;
  readonly touch: (place: string) => void;
  readonly aircraft: string;
}
export const WriterContext = createContext<Writer | null>(null);

export function useWriter(): Writer {
  const writer = useContext(WriterContext);
  if (!writer) throw new Error('a field of a directive stands outside its form');
  return writer;
}

/** A place of the document as a field: what stands there, how to change it, what is wrong with it. */
export function useField(path: Path, within = false, place = path.join('.')) {
  const { draft, send, problems, touched, touch } = useWriter();
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
