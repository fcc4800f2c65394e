import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, daysBetween, parseDay, record } from '../engine/index.ts';
import { broughtForward, closeGap } from './close-gap.ts';

const FROM = parseDay('2009-03-01');
const gapTo = (to: Day) =>
  record.zEntry.parse({
    id: '31',
    subject: 'aircraft:1',
    kind: 'gap',
    day: FROM,
    order: 0,
    evidence: 'statement',
    body: { from: FROM, to, because: 'Volume 3 is lost' },
  }) as Extract<record.Entry, { kind: 'gap' }>;
const spans = (entries: record.EntryInput[]) =>
  entries.map((e) => e.body as { from: Day; to: Day }).map((b) => [b.from, b.to] as const);

describe('a paper found for a declared gap', () => {
  it('every day of the gap that the rows do not reach stays a gap, and no other day', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 400 }),
        fc.integer({ min: -60, max: 460 }),
        fc.integer({ min: 0, max: 460 }),
        (length, start, reach) => {
          const to = addDays(FROM, length);
          const [a, b] = [addDays(FROM, start), addDays(FROM, start + reach)];
          const made = closeGap(gapTo(to), 'reach', { from: a, to: b }, undefined, 'copy');
          const touched = !(b < FROM || a > to);
          expect(made.length > 0).toBe(touched);
          if (!touched) return;
          const open = made.filter((e) => e.kind === 'gap');
          const days = Array.from({ length: length + 1 }, (_, i) => addDays(FROM, i));
          for (const d of days) expect(spans(open).some(([f, t]) => f <= d && d <= t)).toBe(d < a || d > b);
          expect(spans(open).every(([f, t]) => daysBetween(f, t) >= 0 && f >= FROM && t <= to)).toBe(true);
          expect(made.filter((e) => e.replaces === '31').length).toBe(1);
        },
      ),
    );
  });
  it('closed whole, a period of use stands in its place, and says no use of what its rows do not list', () => {
    const [use, ...rest] = closeGap(
      gapTo(parseDay('2011-08-31')),
      'whole',
      { from: FROM, to: FROM },
      { title: 'Volume 3' },
      'copy',
    );
    expect(rest).toEqual([]);
    expect(use).toMatchObject({
      kind: 'use',
      replaces: '31',
      evidence: 'copy',
      paper: { title: 'Volume 3' },
    });
    expect(use!.body).toEqual({ from: '2009-03-01', to: '2011-08-31' });
  });
});

it('brings forward the last totals before a day and the flights since, and no landings where a row names none', () => {
  const e = (day: string, kind: string, body: unknown, subject = 'aircraft:1') =>
    ({ id: day, subject, kind, day, order: 0, evidence: 'copy', body }) as record.Entry;
  const book = [
    e('2010-01-01', 'reading', { total_h: 100, landings: 50 }),
    e('2010-02-01', 'flights', { hours_h: '1:30', landings: 2 }),
    e('2010-02-02', 'flights', { hours_h: 1, landings: 1 }, 'aircraft:2'),
    e('2010-03-01', 'flights', { hours_h: 2 }),
  ];
  const at = (d: string) => broughtForward(book, 'aircraft:1', parseDay(d));
  expect(at('2010-01-01')).toEqual({ total_s: null, landings: null, day: null });
  expect(at('2010-03-01')).toEqual({ total_s: 101.5 * 3600, landings: 52, day: '2010-02-01' });
  expect(at('2010-03-02')).toEqual({ total_s: 103.5 * 3600, landings: null, day: '2010-03-01' });
});
