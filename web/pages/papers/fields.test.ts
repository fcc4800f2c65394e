import { expect, it } from 'vitest';
import { record } from '../../../engine/index.ts';
import { fleet } from '../../../examples/index.ts';
import { bodyOf, FIELDS, furtherOf, textsOf } from './fields.ts';

it('every entry of the invented scenario comes back from its form as it was recorded', () => {
  const kinds = new Set<string>();
  for (const e of fleet()) {
    kinds.add(e.kind);
    const body = e.body as Record<string, unknown>;
    expect(bodyOf(e.kind, textsOf(e.kind, body), furtherOf(e.kind, body)), e.kind).toEqual(body);
  }
  expect(kinds.size).toBeGreaterThan(10);
});
it('knows only kinds and fields of the record', () => {
  for (const [kind, fields] of Object.entries(FIELDS)) {
    expect(record.ENTRY_KINDS as readonly string[]).toContain(kind);
    for (const f of fields) {
      const issues = record.BODIES[kind as record.EntryKind].safeParse({ [f.key]: Symbol('x') }).error?.issues ?? [];
      expect(
        issues.some((i) => i.code === 'unrecognized_keys'),
        `${kind} ${f.key}`,
      ).toBe(false);
    }
    expect(new Set(fields.map((f) => f.key)).size).toBe(fields.length);
  }
});
it.each([
  ['reading', { total_h: '1 204,3' }, { total_h: 1204.3 }],
  ['reading', { total_h: '1204:18' }, { total_h: '1204:18' }],
  [
    'opening',
    { basis: 'donor_record', hours_h: '90 to 110', landings: '900' },
    { basis: 'donor_record', hours_h: { low_h: 90, high_h: 110 }, landings: 900 },
  ],
  ['event', { event: 'Hard landing' }, { event: 'hard_landing' }],
  [
    'inspection',
    { wording: '100 h', counts_as: 'annual, hundred hour' },
    { wording: '100 h', counts_as: ['annual', 'hundred_hour'] },
  ],
])('%s as people type it', (kind, texts, body) => expect(bodyOf(kind, texts as never, '')).toEqual(body));
it.each([
  ['gap', {}, '', /Fill in "From"/],
  ['reading', { total_h: 'five' }, '', /no hours/],
  ['reading', { landings: '5.5' }, '', /no whole number/],
  ['repair', { repair: 'x', size_mm: 'big' }, '', /no figure/],
  ['event', { event: '!!' }, '', /in letters/],
  ['use', { from: '2010-01-01' }, '{', /no longer readable/],
])('%s says what is wrong', (kind, texts, further, words) =>
  expect(() => bodyOf(kind, texts as never, further)).toThrow(words),
);
