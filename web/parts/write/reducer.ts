import { add, drop, type Json, move, type Path, put, type Table, tableOf } from './json.ts';

export interface Writing {
  readonly draft: Table;
  /** Earlier states, the last one last; typing in one field is one state. */
  readonly past: readonly Table[];
  readonly last: string;
}
export type Change =
  | { readonly does: 'put'; readonly path: Path; readonly value: Json | undefined }
  | { readonly does: 'drop'; readonly path: Path }
  | { readonly does: 'add'; readonly path: Path; readonly item: Json }
  | { readonly does: 'move'; readonly path: Path; readonly from: number; readonly to: number }
  | { readonly does: 'open'; readonly draft: Table }
  | { readonly does: 'undo' };

const REMEMBERED = 100;
export const begin = (draft: Table): Writing => ({ draft, past: [], last: '' });

function changed(draft: Table, c: Exclude<Change, { does: 'undo' }>): Table {
  switch (c.does) {
    case 'put':
      return tableOf(put(draft, c.path, c.value));
    case 'drop':
      return tableOf(drop(draft, c.path));
    case 'add':
      return tableOf(add(draft, c.path, c.item));
    case 'move':
      return tableOf(move(draft, c.path, c.from, c.to));
    case 'open':
      return c.draft;
  }
}

/** Every change of a document in its form, and the way back. */
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
