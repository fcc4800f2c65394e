import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { Sheet } from '../../../sheets/model.ts';
import {
  beforeAndAfter,
  cameFirst,
  fetchPapers,
  type PapersSheet,
  type WrittenEntry,
  writeEntries,
} from '../../api/papers.ts';
import { useOnce } from '../../parts/use-once.ts';

/** What another tab or desk wrote between the page that was read and the writing. */
export interface Meanwhile {
  readonly sheet: PapersSheet;
  /** Numbers of the entries of this aircraft that came in between. */
  readonly numbers: readonly number[];
}

/**
 * Before and after, then the writing: all or none, on top of the entry that the page has seen. Entries of other
 * aircraft that came in between hinder nothing; entries of this one are shown first, and what was typed stays.
 */
export function useWriting(
  shop: string,
  aircraft: string,
  last: number,
  written: (numbers: readonly number[]) => void,
) {
  const queries = useQueryClient();
  const [preview, setPreview] = useState<{ sheet: Sheet; entries: readonly WrittenEntry[] } | null>(null);
  const [failed, setFailed] = useState<unknown>(null);
  const [meanwhile, setMeanwhile] = useState<Meanwhile | null>(null);
  const [busy, setBusy] = useState<'' | 'reading' | 'writing'>('');
  const reset = () => {
    setPreview(null);
    setFailed(null);
    setMeanwhile(null);
  };
  const look = async () => {
    const sheet = await fetchPapers(shop, aircraft);
    const numbers = sheet.rows.map((r) => r.number).filter((n) => n > last);
    await queries.invalidateQueries({ queryKey: ['papers'] });
    return { sheet, numbers };
  };
  const run = async (what: 'reading' | 'writing', task: () => Promise<void>) => {
    setBusy(what);
    setFailed(null);
    try {
      await task();
    } catch (e) {
      if (cameFirst(e)) setMeanwhile(await look().catch(() => null));
      setFailed(e);
    }
    setBusy('');
  };
  const show = (entries: () => readonly WrittenEntry[] | Promise<readonly WrittenEntry[]>) =>
    run('reading', async () => {
      setMeanwhile(null);
      setPreview(null);
      const made = await entries();
      setPreview({ sheet: await beforeAndAfter(shop, aircraft, made), entries: made });
    });
  const write = useOnce(() =>
    run('writing', async () => {
      if (!preview) return;
      const { entries } = preview;
      const numbers = await writeEntries(shop, entries, last).catch(async (e) => {
        if (!cameFirst(e)) throw e;
        const now = await look();
        if (now.numbers.length > 0 || e.refusal.code !== 'store.changed-meanwhile') throw e;
        return writeEntries(shop, entries, now.sheet.last);
      });
      reset();
      written(numbers.numbers);
      await queries.invalidateQueries();
    }),
  );
  return { preview, failed, meanwhile, busy, show, write, reset };
}
export type Writing = ReturnType<typeof useWriting>;
