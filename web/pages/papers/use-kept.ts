import { useEffect, useState } from 'react';

const stored = (key: string): unknown => {
  try {
    return typeof localStorage === 'undefined' ? null : JSON.parse(localStorage.getItem(key) ?? 'null');
  } catch {
    return null;
  }
};

/** What is typed and not yet written is kept in this browser: a reload or a lost server loses nothing. */
export function useKept<T extends object>(key: string, empty: T) {
  const [value, setValue] = useState<T>(() => ({ ...empty, ...(stored(`sparwright ${key}`) as Partial<T> | null) }));
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    try {
      if (JSON.stringify(value) === JSON.stringify(empty)) localStorage.removeItem(`sparwright ${key}`);
      else localStorage.setItem(`sparwright ${key}`, JSON.stringify(value));
      setFailed(false);
    } catch {
      setFailed(true);
    }
  }, [key, value, empty]);
  return { value, set: setValue, clear: () => setValue(empty), failed };
}
