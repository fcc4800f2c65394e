import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useRef, useState } from 'react';
import { ServerGone } from '../../../api/client.ts';
import { correctWork, type JobSteps, sendWork, takeWorkBack } from '../../../api/teardown.ts';
import { keepName, keepOutbox, type Outbox, readName, readOutbox } from './outbox.ts';
import { NOTHING_TYPED, type Recorded, type Typed, thingOf } from './record.ts';

export interface Work {
  readonly name: string;
  readonly setName: (name: string) => void;
  readonly waiting: readonly Recorded[];
  readonly busy: boolean;
  readonly error: unknown;
  /** Entries that were recorded from this page. */
  readonly mine: ReadonlySet<number>;
  readonly typedAt: (key: string) => Typed;
  readonly type: (key: string, change: Partial<Typed>) => void;
  readonly record: (record: Recorded) => void;
  readonly again: () => void;
  readonly takeBack: (index: number) => void;
  /** Takes a record of the log back. @throws what the server said */
  readonly undo: (entry: number, because: string) => Promise<void>;
  /** Puts another record in the place of one of the log. @throws what the server said */
  readonly correct: (entry: number, record: Recorded, because: string) => Promise<void>;
  /** What was recorded last, in a word for the ear. */
  readonly said: string;
}
/**
 * Records from this machine: sent at once, kept here where they cannot be, sent again at the next answer of the server.
 * @param answeredAt when the server last answered; 0 while it does not
 */
export function useWork(shop: string, job: string, steps: JobSteps | undefined, answeredAt: number): Work {
  const queries = useQueryClient();
  const [outbox, setOutbox] = useState<Outbox>(() => readOutbox(localStorage, shop, job));
  const [name, setName] = useState(() => readName(localStorage));
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const [said, setSaid] = useState('');
  const mine = useRef(new Set<number>());
  const box = useRef(outbox);
  const last = useRef(0);
  last.current = Math.max(last.current, steps?.last ?? 0);
  const running = useRef(false);
  const hold = useCallback(
    (o: Outbox) => {
      box.current = o;
      keepOutbox(localStorage, shop, job, o);
    },
    [shop, job],
  );
  const put = useCallback(
    (o: Outbox) => {
      hold(o);
      setOutbox(o);
    },
    [hold],
  );
  const again = useRef<(after: number) => Promise<void>>(async () => undefined);
  const flush = useCallback(
    async (after: number) => {
      const { records } = box.current;
      if (running.current || records.length === 0) return;
      running.current = true;
      setBusy(true);
      let goOn: number | null = null;
      try {
        const kept = await sendWork(shop, job, { records, by: records.at(-1)!.by, after });
        for (const e of kept.entries) mine.current.add(e);
        last.current = Math.max(last.current, kept.last);
        const typed = { ...box.current.typed };
        for (const r of records) delete typed[thingOf(r)];
        const left = box.current.records.filter((r) => !records.includes(r));
        // The page goes on from what was pressed until the steps have come anew: no step is next once more.
        hold({ records: left, after: kept.last, typed });
        if (left.length) goOn = kept.last;
        setError(null);
        setSaid(`Recorded, entry ${kept.entries.join(', ')}.`);
        await queries.invalidateQueries({ queryKey: ['teardown steps', shop, job] });
        setOutbox(box.current);
      } catch (e) {
        setError(e);
        if (!(e instanceof ServerGone)) await queries.invalidateQueries({ queryKey: ['teardown steps', shop, job] });
      } finally {
        running.current = false;
        setBusy(false);
        if (goOn !== null) void again.current(goOn);
      }
    },
    [shop, job, hold, queries],
  );
  again.current = flush;
  const waits = outbox.records.length > 0 && (error === null || error instanceof ServerGone);
  useEffect(() => {
    if (answeredAt > 0 && waits && !running.current) void flush(box.current.after);
  }, [answeredAt, waits, flush]);
  return {
    name,
    setName: (n) => {
      setName(n);
      keepName(localStorage, n);
    },
    waiting: outbox.records,
    busy,
    error,
    said,
    mine: mine.current,
    typedAt: (key) => outbox.typed[key] ?? NOTHING_TYPED,
    type: (key, change) => {
      const { typed } = box.current;
      put({ ...box.current, typed: { ...typed, [key]: { ...(typed[key] ?? NOTHING_TYPED), ...change } } });
    },
    record: (r) => {
      setSaid('');
      const after = box.current.records.length ? box.current.after : last.current;
      const others = box.current.records.filter((x) => thingOf(x) !== thingOf(r));
      put({ ...box.current, records: [...others, r], after });
      void flush(after);
    },
    again: () => void flush(error instanceof ServerGone ? box.current.after : last.current),
    undo: async (entry, because) => {
      const kept = await takeWorkBack(shop, job, entry, { because, by: name.trim() });
      last.current = Math.max(last.current, kept.last);
      setSaid(`Taken back, entry ${entry}.`);
      await queries.invalidateQueries({ queryKey: ['teardown steps', shop, job] });
    },
    correct: async (entry, record, because) => {
      const kept = await correctWork(shop, job, entry, { record, because, by: name.trim() });
      for (const e of kept.entries) mine.current.add(e);
      last.current = Math.max(last.current, kept.last);
      setSaid(`Corrected: entry ${kept.entries.join(', ')} takes the place of entry ${entry}.`);
      await queries.invalidateQueries({ queryKey: ['teardown steps', shop, job] });
    },
    takeBack: (index) => {
      const records = box.current.records.filter((_, i) => i !== index);
      put({ ...box.current, records });
      if (records.length === 0) setError(null);
    },
  };
}
