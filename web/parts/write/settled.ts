import { useEffect, useState } from 'react';

/** A value once it has stood still for a while: what is typed is not asked for letter by letter. */
export function useSettled<T>(value: T, after_ms: number): T {
  const [settled, settle] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => settle(value), after_ms);
    return () => clearTimeout(timer);
  }, [value, after_ms]);
  return settled;
}
