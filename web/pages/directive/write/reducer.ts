import { type Change as AnyChange, type Writing, write as writeAny } from '../../../parts/write/reducer.ts';
import { renameAction, renameNumber } from './rename.ts';

export { begin } from '../../../parts/write/reducer.ts';
export type Change =
  | AnyChange
  | { readonly does: 'rename action'; readonly index: number; readonly id: string }
  | { readonly does: 'rename number'; readonly number: string };

/** Every change of a rule: names that other places bear too follow. */
export function write(s: Writing, c: Change): Writing {
  switch (c.does) {
    case 'rename action':
      return writeAny(s, { does: 'open', draft: renameAction(s.draft, c.index, c.id) });
    case 'rename number':
      return writeAny(s, { does: 'open', draft: renameNumber(s.draft, c.number) });
    default:
      return writeAny(s, c);
  }
}
