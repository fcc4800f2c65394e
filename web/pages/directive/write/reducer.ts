import type { Draft } from './draft.ts';
import { add, drop, type Json, move, type Path, put, tableOf } from './json.ts';
import { renameAction, renameNumber } from './rename.ts';

export interface Writing {
  readonly draft: Draft;
  /** Earlier states, the last one last; typing in one field is one state. */
  readonly past: readonly Draft[];
  readonly last: string;
}
export type Change =
  | { readonly does: 'put'; readonly path: Path; readonly value: Json | undefined }
  | { readonly does: 'drop'; readonly path: Path }
  | { readonly does: 'add'; readonly path: Path; readonly item: Json }
  | { readonly does: 'move'; readonly path: Path; readonly from: number; readonly to: number }
  | { readonly does: 'rename action'; readonly index: number; readonly id: string }
  | { readonly does: 'rename number'; readonly number: string }
  | { readonly does: 'open'; readonly draft: Draft }
  | { readonly does: 'undo' };

const REMEMBERED = 100;
export const begin = (draft: Draft): Writing => ({ draft, past: [], last: '' });

function changed(draft: Draft, c: Exclude<Change, { does: 'undo' }>): Draft {
  switch (c.does) {
    case 'put':
      return tableOf(put(draft, c.path, c.value));
    case 'drop':
      return tableOf(drop(draft, c.path));
    case 'add':
      return tableOf(add(draft, c.path, c.item));
    case 'move':
      return tableOf(move(draft, c.path, c.from, c.to));
    case 'rename action':
      return renameAction(draft, c.index, c.id);
    case 'rename number':
      return renameNumber(draft, c.number);
    case 'open':
      return c.draft;
  }
}

/** Every change of the form, and the way back. */
export function write(s: Writing, c: Change): Writing {
  if (c.does === 'undo') {
    const before = s.past.at(-1);
    return before ? { draft: before, past: s.past.slice(0, -1), last: '' } : s;
  }
  const draft = changed(s.draft, c);
  if (draft === s.draft) return s;
  const place = c.does === 'put' ? c.path.join('.') : '';
  const goesOn = place !== '' && place === s.last;
  return { draft, past: goesOn ? s.past : [...s.past, s.draft].slice(-REMEMBERED), last: place };
}
