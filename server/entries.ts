import { z } from 'zod';
import { type Day, parseDocument, record } from '../engine/index.ts';
import type { LogEntry, NewEntry } from '../store/index.ts';

const KINDS: readonly string[] = record.ENTRY_KINDS;

/** Entries of the log that belong to the record, as the engine reads them; their ids are their numbers. */
export function recordEntries(log: readonly LogEntry[]): record.Entry[] {
  return log
    .filter((e) => KINDS.includes(e.kind))
    .map(
      (e) =>
        ({
          id: String(e.number),
          subject: e.subject,
          kind: e.kind,
          day: e.day,
          order: e.order,
          evidence: e.evidence,
          body: e.body,
          ...(e.paper === undefined ? {} : { paper: e.paper }),
          ...(e.note === undefined ? {} : { note: e.note }),
          ...(e.replaces === undefined ? {} : { replaces: String(e.replaces) }),
        }) as record.Entry,
    );
}

/** Entries as they would stand if they were written now, after entry `last`: the page shows what they would change. */
export function asIfWritten(entries: readonly NewEntry[], last: number): LogEntry[] {
  const numbers = new Map(
    entries.flatMap((e, i) => (e.id === undefined ? [] : [[String(e.id), last + 1 + i] as const])),
  );
  return entries.map(({ id: _, replaces, ...e }, i) => ({
    ...e,
    shop: '',
    number: last + 1 + i,
    ...(replaces === undefined ? {} : { replaces: numbers.get(String(replaces)) ?? Number(replaces) }),
    recordedAt: '',
    recordedBy: '',
    previousHash: '',
    hash: '',
  }));
}

const zEntries = z.array(record.zEntry).min(1).max(60_000);

/** Entries as a person or a file gives them, checked, ready for the log. @throws Refusal `foundation.document-invalid` */
export function newEntries(input: unknown): NewEntry[] {
  return parseDocument(zEntries, input, 'record entries').map((e) => ({
    id: e.id,
    subject: e.subject,
    kind: e.kind,
    day: e.day as Day,
    order: e.order,
    body: e.body,
    schema: 'record/1',
    evidence: e.evidence,
    ...(e.paper ? { paper: e.paper } : {}),
    ...(e.note ? { note: e.note } : {}),
    ...(e.replaces ? { replaces: e.replaces } : {}),
  }));
}
