import type { Table } from '../../../parts/write/json.ts';

/** A question holds a record too: its directives are read one by one. */
export function refuseQuestion(given: Table): void {
  if (given.sparwright === 'directive-question/1')
    throw new Error('This is a question with directives and a record. Paste one item of its list "directives".');
}
