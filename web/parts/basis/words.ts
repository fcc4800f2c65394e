import type { BasisWord } from '../../api/kept-at.ts';
import { type Table, textOf } from '../write/json.ts';

interface Names {
  readonly this: string;
  readonly the: string;
  readonly one: string;
  readonly all: string;
  /** What becomes of it once it is kept. */
  readonly kept: string;
  /** Said above an empty form. */
  readonly begin: string;
}
const SOURCED = 'Every figure with its source. The answer stands beside the form as soon as it is whole.';
const RESTS = 'From then on the pages of aircraft can rest on it.';
const ALL = 'All jobs, maps and floors';
/** The kinds of document as a sentence names them. */
export const WORD_NAMES: Readonly<Record<BasisWord, Names>> = {
  usage: {
    this: 'This usage document',
    the: 'The usage document',
    one: 'usage document',
    all: 'All usage documents',
    kept: RESTS,
    begin: SOURCED,
  },
  growth: {
    this: 'This growth document',
    the: 'The growth document',
    one: 'growth document',
    all: 'All growth documents',
    kept: RESTS,
    begin: SOURCED,
  },
  structure: {
    this: 'This structure map',
    the: 'The structure map',
    one: 'structure map',
    all: ALL,
    kept: 'From then on jobs can be planned on it.',
    begin: SOURCED,
  },
  floor: {
    this: 'This floor',
    the: 'The floor',
    one: 'floor',
    all: ALL,
    kept: 'From then on jobs can be scheduled and quoted on it.',
    begin: SOURCED,
  },
  teardown: {
    this: 'This job',
    the: 'The job',
    one: 'teardown job',
    all: ALL,
    kept: 'From then on it stands in the calendar, has its cards, and work is recorded on it.',
    begin: 'Choose the map and what has to be reached: the first plan stands beside the form at once.',
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
