import { useEffect, useRef, useState } from 'react';
import type { Table } from './json.ts';
import { forget, type Kept, keepIn, keptFrom } from './keep.ts';

const TAB = typeof crypto !== 'undefined' ? crypto.randomUUID() : 'tab';

export interface InBrowser {
  /** When it was last kept here; null: nothing was changed yet; false: this browser keeps nothing. */
  readonly at: string | null | false;
  /** What another tab of this browser wrote meanwhile. */
  readonly other: Kept | null;
  readonly setAside: () => void;
  readonly forget: () => void;
}

const asItIs = (draft: Table): Table => draft;

/** Keeps every change of a draft in this browser, and tells what another tab wrote to the same one. */
export function useKept(
  key: string,
  draft: Table,
  untouched: Table,
  entry: number | null,
  documentOf: (draft: Table) => Table = asItIs,
): InBrowser {
  const [at, setAt] = useState<InBrowser['at']>(null);
  const [other, setOther] = useState<Kept | null>(null);
  const done = useRef(false);
  useEffect(() => {
    if (draft === untouched || done.current) return;
    const now = new Date().toISOString();
    setAt(keepIn(localStorage, key, { document: documentOf(draft), at: now, tab: TAB, entry }) ? now : false);
  }, [draft, untouched, key, entry, documentOf]);
  useEffect(() => {
    const heard = (e: StorageEvent) => {
      const kept = e.key === key ? keptFrom(e.newValue) : null;
      if (kept && kept.tab !== TAB) setOther(kept);
    };
    window.addEventListener('storage', heard);
    return () => window.removeEventListener('storage', heard);
  }, [key]);
  return {
    at,
    other,
    setAside: () => setOther(null),
    forget: () => {
      done.current = true;
      forget(localStorage, key);
    },
  };
}
