import { useRef } from 'react';

/** One at a time: what is asked while the last one runs is not begun, as with a double click. */
export function useOnce<A extends readonly unknown[]>(task: (...asked: A) => Promise<unknown>) {
  const running = useRef(false);
  return async (...asked: A): Promise<void> => {
    if (running.current) return;
    running.current = true;
    try {
      await task(...asked);
    } finally {
      running.current = false;
    }
  };
}
