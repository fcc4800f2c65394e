import { jsonText } from './json-text.ts';

/** A draft as this browser keeps it, so that a reload, a crash or a server that is gone loses nothing. */
export interface Kept {
  readonly document: unknown;
  /** When it was last changed, ISO. */
  readonly at: string;
  /** The tab that wrote it. */
  readonly tab: string;
  /** The entry of the server's draft that it goes on from; null: of none. */
  readonly entry: number | null;
}
type Box = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

/** Under what a draft of a word (directive, usage, growth) is kept. */
export const keyOf = (word: string, shop: string, draft: string): string => `sparwright.${word}.${shop}.${draft}`;

/** What this browser kept, or nothing; what does not read is nothing. */
export function keptIn(box: Box, key: string): Kept | null {
  try {
    return keptFrom(box.getItem(key));
  } catch {
    return null;
  }
}
export function keptFrom(text: string | null): Kept | null {
  if (text === null) return null;
  try {
    const v = JSON.parse(text) as Partial<Kept> | null;
    return v &&
      typeof v.at === 'string' &&
      typeof v.tab === 'string' &&
      typeof v.document === 'object' &&
      v.document !== null
      ? { document: v.document, at: v.at, tab: v.tab, entry: typeof v.entry === 'number' ? v.entry : null }
      : null;
  } catch {
    return null;
  }
}
/** True if it is kept; where it is not, what was kept before stays. */
export function keepIn(box: Box, key: string, kept: Kept): boolean {
  try {
    box.setItem(key, jsonText(kept));
    return true;
  } catch {
    return false;
  }
}
/** Whether the browser keeps anything at all: then a draft that it does not keep is too large for it. */
export function keepsSmall(box: Box): boolean {
  const key = 'sparwright.probe';
  try {
    box.setItem(key, '1');
    box.removeItem(key);
    return true;
  } catch {
    return false;
  }
}
export function forget(box: Box, key: string): void {
  try {
    box.removeItem(key);
  } catch {
    // A browser that keeps nothing has nothing to forget.
  }
}
