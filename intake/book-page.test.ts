import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseDay, parseHours } from '../engine/index.ts';
import { readPage, type TypedPage, type TypedRow } from './book-page.ts';

const row = (r: Partial<TypedRow>): TypedRow => ({
  day: '',
  flown: '',
  total: '',
  landings: '',
  landings_total: '',
  use: '',
  remarks: '',
  ...r,
});
const page = (rows: readonly Partial<TypedRow>[], more: Partial<TypedPage> = {}): TypedPage => ({
  subject: 'aircraft:1',
  rows: rows.map(row),
  paper: { title: 'Book 2', page: '41', file_sha256: 'a'.repeat(64), seen_by: 'M. Orne', seen_on: '2026-11-25' },
  evidence: 'copy',
  today: parseDay('2026-11-25'),
  day_order: 'day_first',
  uses: [],
  brought: { total_s: parseHours(1200), landings: 2000 },
  existing: [],
  ...more,
});

describe('figures as people type them', () => {
  it.each([
    ['5.4', 5.4],
    ['5:24', 5.4],
    ['5,4', 5.4],
    ['5 h', 5],
    ['5h24', 5.4],
    ['0,1', 0.1],
  ])('flown %s', (typed, h) =>
    expect(readPage(page([{ day: '1.3.2010', flown: typed }])).lines[0]?.flown_s).toBe(h * 3600),
  );
  it.each([
    ['1204.3', 1204.3],
    ['1 204,3', 1204.3],
    ['1.204,3', 1204.3],
    ['1,204.3', 1204.3],
    ['1,204', 1204],
    ['1204:18', 1204.3],
  ])('total %s', (typed, h) =>
    expect(readPage(page([{ day: '1.3.2010', total: typed }])).lines[0]?.total_s).toBe(Math.round(h * 3600)),
  );
  it('every writing of one figure is one figure', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 239 }), (tenths) => {
        const [point, comma] = [(tenths / 10).toFixed(1), (tenths / 10).toFixed(1).replace('.', ',')];
        const clock = `${Math.floor(tenths / 10)}:${String((tenths % 10) * 6).padStart(2, '0')}`;
        const lines = readPage(page([point, comma, clock].map((flown) => ({ day: '1.3.2010', flown })))).lines;
        expect(lines.map((l) => l.flown_s)).toEqual([tenths * 360, tenths * 360, tenths * 360]);
      }),
    );
  });
  it('a day carries over, a bare number is a day of the month above', () => {
    const lines = readPage(
      page([{ day: '3.4.2010', flown: '1' }, { flown: '1' }, { day: '14', flown: '1' }, { day: '2.5.', flown: '1' }]),
    ).lines;
    expect(lines.map((l) => l.day)).toEqual(['2010-04-03', '2010-04-03', '2010-04-14', '2010-05-02']);
  });
});

describe('the entries of a page', () => {
  it('keep paper, page, row, scan and who saw it; the declared total stands beside a slip', () => {
    const read = readPage(
      page([
        { day: '1.3.2010', flown: '3.3', total: '1203.3', landings: '4', landings_total: '2004', use: 'tow' },
        { day: '2.3.2010', flown: '1.0', total: '1205.3', remarks: 'Annual inspection' },
        { day: '2.3.2010' },
      ]),
    );
    expect(read.lines.map((l) => l.hours.slip)).toEqual([null, 3600]);
    expect(read.entries.map((e) => e.kind)).toEqual(['flights', 'reading', 'flights', 'reading', 'inspection']);
    expect(read.entries[1]).toMatchObject({
      body: { total_h: 1203.3, landings: 2004 },
      paper: { title: 'Book 2', page: '41', row: 1, file_sha256: 'a'.repeat(64), seen_by: 'M. Orne' },
    });
    expect(read.entries[3]).toMatchObject({ body: { total_h: 1205.3 }, paper: { row: 2 } });
    expect(read.entries[0]).toMatchObject({ body: { use: 'tow', landings: 4 } });
  });
  it('are none while one row cannot be read; the row says why', () => {
    const read = readPage(
      page([
        { day: '1.3.2010', flown: '1' },
        { day: 'the third', flown: '1' },
        { day: '4.3.2010', flown: 'x' },
      ]),
    );
    expect(read.entries).toEqual([]);
    expect(read.lines.map((l) => l.reason ?? '')).toEqual([
      '',
      expect.stringContaining('no day'),
      expect.stringContaining('no number'),
    ]);
  });
  it('a row that the log holds already is named, not written twice', () => {
    const first = readPage(page([{ day: '1.3.2010', flown: '1', use: 'tow' }])).entries;
    const existing = first.map((e, i) => ({ ...e, id: String(40 + i) })) as never;
    expect(readPage(page([{ day: '1.3.2010', flown: '1', use: 'tow' }], { existing })).lines[0]?.reason).toContain(
      'entry 40',
    );
  });
  it('an unknown use stays open, in words', () => {
    expect(readPage(page([{ day: '1.3.2010', flown: '1', use: 'blimp' }])).lines[0]?.warnings.join()).toContain(
      'no known use',
    );
    expect(
      readPage(page([{ day: '1.3.2010', flown: '1', use: 'Blimp' }], { uses: ['blimp'] })).entries[0]?.body,
    ).toMatchObject({
      use: 'blimp',
    });
  });
  it('is empty for an empty page', () =>
    expect(readPage(page([{ day: '1.3.2010' }]))).toEqual({ lines: [], entries: [] }));
});
