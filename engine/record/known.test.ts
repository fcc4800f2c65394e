import { describe, expect, it } from 'vitest';
import type { Day } from '../foundation/day.ts';
import { entriesUpTo } from './known.ts';
import { modelOf, readRecord } from './read.ts';
import { A, aircraft, hours, reading } from './testing/write.ts';

const day = (d: string) => d as Day;
const book = (...more: object[]) =>
  readRecord({ sparwright: 'record/1', day: '2020-01-01', entries: [aircraft(), reading('2010-01-01', 500), ...more] })
    .entries;
const on = (entries: ReturnType<typeof book>, d: string) =>
  modelOf({ day: day(d), entries: entriesUpTo(entries, day(d)) });
const as = (e: object, id: string, replaces?: string) => ({ ...e, id, ...(replaces ? { replaces } : {}) });

describe('the record as it speaks of a past day', () => {
  it('leaves out what lies later', () =>
    expect(hours(on(book(reading('2015-01-01', 900)), '2012-01-01'))).toEqual({ low: 500, high: 500 }));
  it('an entry of later date, corrected to an earlier day, counts on that day', () => {
    const entries = book(as(reading('2015-01-01', 700), 'wrong'), as(reading('2012-01-01', 700), 'right', 'wrong'));
    expect(hours(on(entries, '2013-01-01')).high).toBe(700);
  });
  it('an entry corrected to a later day does not come back under its wrong day', () => {
    const entries = book(as(reading('2011-01-01', 900), 'wrong'), as(reading('2015-01-01', 900), 'right', 'wrong'));
    expect(hours(on(entries, '2013-01-01')).high).toBe(500);
    expect(hours(on(entries, '2016-01-01')).high).toBe(900);
  });
  it('a correction of a correction: only the last one speaks', () => {
    const entries = book(
      as(reading('2011-01-01', 900), 'a'),
      as(reading('2015-01-01', 900), 'b', 'a'),
      as(reading('2012-01-01', 600), 'c', 'b'),
    );
    const m = on(entries, '2013-01-01');
    expect(hours(m, A).high).toBe(600);
    expect(m.replaced.map((e) => e.id)).toEqual(['a', 'b']);
  });
});
