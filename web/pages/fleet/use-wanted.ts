import { useCallback, useMemo } from 'react';
import { useSearchParams } from 'wouter';
import { readWanted, type Wanted, writeWanted } from './wanted.ts';

export type Want = (change: Partial<Wanted>, how?: { readonly replace: boolean }) => void;

/** What is wanted, as the address says it, and the way to want something else. */
export function useWanted(): readonly [Wanted, Want] {
  const [address, setAddress] = useSearchParams();
  const text = address.toString();
  const wanted = useMemo(() => readWanted(new URLSearchParams(text)), [text]);
  const want = useCallback<Want>(
    (change, how) => setAddress((now) => writeWanted({ ...readWanted(now), ...change }, now), how),
    [setAddress],
  );
  return [wanted, want];
}
