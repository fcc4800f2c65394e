import { expect, it } from 'vitest';
import { ENTRY_KINDS, readRecord } from './index.ts';
import { RECORD_1 } from './testing/record-1.ts';

const read = (entries: readonly object[]) => readRecord({ ...RECORD_1, entries });

it('a record as first published reads to the last field, every kind of it', () => {
  const found = readRecord(RECORD_1);
  const written = (list: readonly { kind: unknown; body: unknown }[]) => list.map(({ kind, body }) => ({ kind, body }));
  expect(written(found.entries)).toEqual(written(RECORD_1.entries));
  const kinds = new Set(RECORD_1.entries.map((e) => e.kind as string));
  expect(ENTRY_KINDS.filter((k) => !kinds.has(k))).toEqual(['permit']);
});
it('a permit names who issued it, its conditions and its last day', () => {
  const body = { reference: 'F', issued_by: 'Board', conditions: 'daylight', expires: '2026-12-01' };
  const permit = { ...RECORD_1.entries[0]!, id: 'p', kind: 'permit', body };
  expect(read([permit]).entries[0]).toMatchObject({ kind: 'permit', body });
  for (const field of Object.keys(body)) {
    const { [field as keyof typeof body]: _, ...less } = body;
    expect(() => read([{ ...permit, body: less }]), field).toThrow(
      expect.objectContaining({ code: 'foundation.document-invalid' }),
    );
  }
});
