import { createContext, type Dispatch, type ReactNode, useContext } from 'react';
import type { Words } from '../../../api/directives.ts';
import { FormContext, type InForm } from '../../../parts/write/context.tsx';
import type { FactName } from './facts.ts';
import type { Change } from './reducer.ts';

export interface Writer extends Omit<InForm, 'send'> {
  readonly shop: string;
  readonly send: Dispatch<Change>;
  readonly facts: readonly FactName[];
  readonly words: Words;
  readonly aircraft: string;
}
const Context = createContext<Writer | null>(null);

/** A rule in its form: to the fields that every form has, and to those of a rule. */
export function WriterContext({ value, children }: { value: Writer; children: ReactNode }) {
  return (
    <FormContext value={value}>
      <Context value={value}>{children}</Context>
    </FormContext>
  );
}

export function useWriter(): Writer {
  const writer = useContext(Context);
  if (!writer) throw new Error('a field of a directive stands outside its form');
  return writer;
}
