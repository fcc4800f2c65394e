import { useEffect, useRef, useState } from 'react';

const inBookFields = (at: Element | null): boolean => at instanceof HTMLInputElement && at.name.startsWith('book');

/** Files that were dropped before the book is named: they wait, and go on when its fields are filled and left. */
export function useWaiting(named: boolean, take: (files: readonly File[]) => void) {
  const [files, setFiles] = useState<readonly File[]>([]);
  const go = useRef(() => {});
  go.current = () => {
    if (!named || files.length === 0) return;
    setFiles([]);
    take(files);
  };
  const some = files.length > 0;
  useEffect(() => {
    if (!some) return;
    // Only when the focus has moved on is it known that the name is typed to its end.
    const onLeave = (e: FocusEvent) => {
      if (!inBookFields(e.target as Element)) return;
      setTimeout(() => {
        if (!inBookFields(document.activeElement)) go.current();
      });
    };
    document.addEventListener('focusout', onLeave);
    return () => document.removeEventListener('focusout', onLeave);
  }, [some]);
  return {
    files,
    wait: (more: readonly File[]) => setFiles((f) => [...f, ...more]),
    forget: () => setFiles([]),
    go: () => go.current(),
  };
}
