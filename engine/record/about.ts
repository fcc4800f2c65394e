import type { Day, Moment } from '../foundation/day.ts';
import { entriesBySubject } from './by-subject.ts';
import type { EntryKind, EntryOf } from './document.ts';
import type { RecordModel } from './model.ts';
import { before, compareEntries, momentOf, notAfter } from './moments.ts';
import { type Presence, presences } from './stays.ts';
import { kitTimes } from './story.ts';

const during = (m: Moment, p: Presence): boolean => notAfter(p.from, m) && (p.to === null || notAfter(m, p.to));

/**
 * What the entries of one kind tell of a thing, oldest first: its own, and those of whatever it sat in, while it
 * sat there. What an aircraft lived before a part came into it, or after it left, is none of that part's.
 */
export function entriesAbout<K extends EntryKind>(model: RecordModel, subject: string, kind: K): EntryOf<K>[] {
  const all = presences(model.entries, subject).flatMap((p) =>
    (entriesBySubject(model.entries).get(p.id) ?? []).filter(
      (e): e is EntryOf<K> => e.kind === kind && during(momentOf(e), p),
    ),
  );
  return [...new Set(all)].sort(compareEntries);
}

/** Where a kit was fitted that the thing has, or that sat where it came in: the day of the kit, not of the thing. */
export function kitSince(model: RecordModel, subject: string, kit: string): { day: Day; entry: string }[] {
  const fitted = new Map(model.entries.map((e) => [e.id, e.day]));
  return kitTimes(model, presences(model.entries, subject))
    .filter((k) => k.kit === kit)
    .sort((a, b) => (before(a.from, b.from) ? -1 : 1))
    .map((k) => ({ day: fitted.get(k.entry) ?? k.from.day, entry: k.entry }));
}

/** Kits that are fitted now, to the thing itself or to anything it sits in. */
export const kitsNow = (model: RecordModel, subject: string): string[] => [
  ...new Set(
    presences(model.entries, subject)
      .filter((p) => p.to === null)
      .flatMap((p) => Object.keys(model.things.get(p.id)?.kits ?? {})),
  ),
];

/** The thing and all it sat in at a moment. */
export const aboardOf = (model: RecordModel, subject: string, m: Moment): string[] =>
  presences(model.entries, subject)
    .filter((p) => during(m, p))
    .map((p) => p.id);
