import type { BasisWord } from '../../api/usage.ts';
import { type Table, textOf } from '../write/json.ts';

/** The two kinds of document as a sentence names them. */
export const WORD_NAMES: Readonly<
  Record<BasisWord, { readonly this: string; readonly the: string; readonly one: string; readonly all: string }>
> = {
  usage: {
    this: 'This usage document',
    the: 'The usage document',
    one: 'usage document',
    all: 'All usage documents',
  },
  growth: {
    this: 'This growth document',
    the: 'The growth document',
    one: 'growth document',
    all: 'All growth documents',
  },
};

/** Throws, in words, where a text is a document of another question. */
export function refuseOther(word: BasisWord, given: Table): void {
  const says = textOf(given.sparwright);
  const other = says.split('/')[0];
  if (says === '' || other === word) return;
  throw new Error(
    `This is a document of "${says}", not a ${WORD_NAMES[word].one}. Open it on the page of its own question.`,
  );
}
