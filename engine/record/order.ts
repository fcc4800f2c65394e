import type { Entry, EntryKind } from './document.ts';

/** Within one order of a day: flying first, then what it was read at, then what was done. */
const RANK: Partial<Record<EntryKind, number>> = {
  aircraft: 0,
  part: 1,
  opening: 2,
  attribute: 3,
  flights: 4,
  reading: 5,
  meter: 6,
  removal: 8,
  fitment: 9,
};
const rank = (e: Entry) => RANK[e.kind] ?? 7;

/** Entries in the order of the record: day, order within the day, kind, as written. */
export function inRecordOrder(entries: readonly Entry[]): Entry[] {
  return [...entries].sort((a, b) =>
    a.day !== b.day ? (a.day < b.day ? -1 : 1) : a.order - b.order || rank(a) - rank(b),
  );
}
