import type { Entry, EntryKind, EntryOf } from './document.ts';
import type { RecordModel } from './model.ts';

const memo = new WeakMap<readonly Entry[], ReadonlyMap<string, readonly Entry[]>>();

/** Entries of each subject, in the order of the record. Built once per record. */
export function entriesBySubject(entries: readonly Entry[]): ReadonlyMap<string, readonly Entry[]> {
  let map = memo.get(entries);
  if (!map) {
    const made = new Map<string, Entry[]>();
    for (const e of entries) {
      const list = made.get(e.subject);
      if (list) list.push(e);
      else made.set(e.subject, [e]);
    }
    map = made;
    memo.set(entries, map);
  }
  return map;
}
export function entriesOf<K extends EntryKind>(
  model: Pick<RecordModel, 'entries'>,
  subject: string,
  kind: K,
): EntryOf<K>[] {
  return (entriesBySubject(model.entries).get(subject) ?? []).filter((e): e is EntryOf<K> => e.kind === kind);
}
