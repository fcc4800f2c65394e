import { useEffect, useRef } from 'react';

/** Nothing of the page has the focus: as after Back, or before anything was touched. */
const onPage = (at: EventTarget | null): boolean =>
  at === document.body || at === document.documentElement || (at instanceof HTMLElement && at.id === 'main');

/** Keys of the list that work while the focus is on the page itself. A key that nothing is done with stays the browser's. */
export function usePageKeys(keys: Readonly<Record<string, () => boolean | undefined>>): void {
  const now = useRef(keys);
  now.current = keys;
  useEffect(() => {
    const onKeyDown = (e: KeyboardEvent) => {
      if (e.defaultPrevented || e.altKey || e.ctrlKey || e.metaKey || e.shiftKey || !onPage(e.target)) return;
      if (now.current[e.key]?.()) e.preventDefault();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, []);
}
