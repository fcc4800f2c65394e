import { useEffect, useRef, useState } from 'react';
import type { Table } from './json.ts';
import { forget, type Kept, keepIn, keepsSmall, keptFrom, keptIn } from './keep.ts';

/** A draft that takes longer than this to keep is kept once it stands still, and when the page is left. */
const SLOW_MS = 10;
const STILL_MS = 700;
const TAB = typeof crypto !== 'undefined' ? crypto.randomUUID() : 'tab';

export interface InBrowser {
  /** When it was last kept here; null: nothing was changed yet; false: this browser keeps nothing. */
  readonly at: string | null | false;
  /** The draft has grown too large for this browser; when what it still keeps of it was written, if it keeps any. */
  readonly tooLarge?: { readonly last: string | null } | null;
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
  const [tooLarge, setTooLarge] = useState<InBrowser['tooLarge']>(null);
  const done = useRef(false);
  const slow = useRef(false);
  /** Keeps the newest state that is not kept yet. */
  const pending = useRef<() => void>(() => {});
  useEffect(() => {
    if (draft === untouched || done.current) return;
    let waits = true;
    const keep = () => {
      if (!waits || done.current) return;
      waits = false;
      const since = performance.now();
      const now = new Date().toISOString();
      const fits = keepIn(localStorage, key, { document: documentOf(draft), at: now, tab: TAB, entry });
      setAt(fits ? now : false);
      setTooLarge((before) =>
        fits || !keepsSmall(localStorage) ? null : (before ?? { last: keptIn(localStorage, key)?.at ?? null }),
      );
      slow.current = performance.now() - since > SLOW_MS;
    };
    pending.current = keep;
    if (!slow.current) {
      keep();
      return;
    }
    const timer = setTimeout(keep, STILL_MS);
    window.addEventListener('pagehide', keep);
    return () => {
      clearTimeout(timer);
      window.removeEventListener('pagehide', keep);
    };
  }, [draft, untouched, key, entry, documentOf]);
  useEffect(() => () => pending.current(), []);
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
    tooLarge,
    other,
    setAside: () => setOther(null),
    forget: () => {
      done.current = true;
      forget(localStorage, key);
    },
  };
}
