import { useEffect, useRef, useState } from 'react';

const IDLE_MS = 300;

/** The words being typed: the list follows at once, the address when the hand rests. */
export function useSearch(written: string, write: (words: string) => void) {
  const [words, setWords] = useState(written);
  const known = useRef(written);
  const latest = useRef(write);
  latest.current = write;
  useEffect(() => {
    if (written === known.current) return;
    known.current = written;
    setWords(written);
  }, [written]);
  const keep = (now: string) => {
    if (now === known.current) return;
    known.current = now;
    latest.current(now);
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: the hand rests when the words stay the same
  useEffect(() => {
    const rest = setTimeout(() => keep(words), IDLE_MS);
    return () => clearTimeout(rest);
  }, [words]);
  return { words, setWords, keep: () => keep(words) };
}
