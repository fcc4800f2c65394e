import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Day } from '../foundation/day.ts';
import { changeOf, STANDINGS, type Standing, type StandingLine } from './index.ts';

const DAY = '2026-11-25' as Day;
const line = (
  standing: Standing,
  over: { left?: number; day?: string; p50?: string; notComputed?: boolean } = {},
): StandingLine => {
  const { left = 100, day, p50, notComputed = false } = over;
  const end = {
    standing,
    dueAt: { total_s: left * 3600, landings: null, day: (day ?? null) as Day | null, now: false },
    left: { value: left, unit: 'h' as const, hours_s: left * 3600, landings: null, limit: '100 h' },
  };
  const at = { is: 'day' as const, day: (p50 ?? '2030-01-01') as Day };
  const dates = { p10: at, p50: at, p90: at };
  return {
    directive: 'T-1',
    issue: 1,
    action: 'look',
    title: 'Look',
    part: 'sp',
    treatAs: end,
    couldBecome: end,
    soon_days: 180,
    alternative: null,
    lastDone: null,
    hangsOn: null,
    notComputed,
    dates: p50 ? { asOf: DAY, treatAs: dates, couldBecome: dates } : null,
  };
};

describe('what another text does to one part', () => {
  it.each([
    ['nothing to not affected', null, line('not affected'), 'unchanged'],
    ['nothing to open', null, line('not yet due'), 'newly affected'],
    [
      'not affected to not computed',
      line('not affected'),
      line('not affected', { notComputed: true }),
      'newly affected',
    ],
    ['ended to open', line('ended'), line('soon due'), 'newly affected'],
    ['open to ended', line('soon due'), line('ended'), 'no longer affected'],
    ['open to nothing', line('overdue'), null, 'no longer affected'],
    ['not yet due to overdue', line('not yet due', { left: 10 }), line('overdue', { left: -5 }), 'earlier'],
    ['overdue to soon due', line('overdue', { left: -5 }), line('soon due', { left: 5 }), 'later'],
    ['the same limit, done once', line('not yet due'), line('done and repeating'), 'unchanged'],
    [
      'an earlier date',
      line('not yet due', { p50: '2030-01-01' }),
      line('not yet due', { left: 90, p50: '2029-01-01' }),
      'earlier',
    ],
    [
      'a later date with less left',
      line('not yet due', { p50: '2029-01-01' }),
      line('not yet due', { left: 90, p50: '2029-06-01' }),
      'later',
    ],
    ['no date: by what is left', line('not yet due'), line('not yet due', { left: 400 }), 'later'],
    ['overdue by more', line('overdue', { left: -5 }), line('overdue', { left: -50 }), 'earlier'],
    [
      'a calendar limit',
      line('not yet due', { day: '2028-01-01' }),
      line('not yet due', { day: '2027-01-01' }),
      'earlier',
    ],
    ['due as not computed', line('not yet due', { notComputed: true }), line('not yet due', { left: 9 }), 'later'],
  ] as const)('%s: %s', (_, was, would, change) => expect(changeOf(was, would, DAY)).toBe(change));

  const some = fc.option(
    fc
      .record({
        standing: fc.constantFrom(...STANDINGS),
        left: fc.integer({ min: -200, max: 200 }),
        year: fc.integer({ min: 2027, max: 2040 }),
      })
      .map((x) => line(x.standing, { left: x.left, p50: `${x.year}-05-01` })),
    { nil: null },
  );
  const mirror = {
    earlier: 'later',
    later: 'earlier',
    'newly affected': 'no longer affected',
    'no longer affected': 'newly affected',
    unchanged: 'unchanged',
  } as const;
  it('the way back is the mirror of the way there; a text changes nothing against itself', () => {
    fc.assert(
      fc.property(some, some, (a, b) => {
        expect(changeOf(b, a, DAY)).toBe(mirror[changeOf(a, b, DAY)]);
        expect(changeOf(a, a, DAY)).toBe('unchanged');
      }),
    );
  });
});
