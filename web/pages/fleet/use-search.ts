import { useCallback, useEffect, useRef, useState } from 'react';
import type { Want } from './use-wanted.ts';
import type { Wanted } from './wanted.ts';

const IDLE_MS = 300;

/** The words being typed: the list follows at once, the address when the hand rests or anything else is chosen. */
export function useSearch(written: string, write: Want) {
  const [words, setWords] = useState(written);
  const known = useRef(written);
  const typed = useRef(words);
  typed.current = words;
  useEffect(() => {
    if (written === known.current) return;
    known.current = written;
    setWords(written);
  }, [written]);
  const want = useCallback<Want>(
    (change, how) => {
      const whole: Partial<Wanted> = { search: typed.current, ...change };
      known.current = whole.search ?? '';
      if (known.current !== typed.current) setWords(known.current);
      write(whole, how);
    },
    [write],
  );
  const keep = useCallback(() => {
    if (typed.current !== known.current) want({}, { replace: true });
  }, [want]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the hand rests when the words stay the same
  useEffect(() => {
    const rest = setTimeout(keep, IDLE_MS);
    return () => clearTimeout(rest);
  }, [words, keep]);
  return { words, setWords, keep, want };
}
