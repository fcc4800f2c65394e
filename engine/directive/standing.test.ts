import { describe, expect, it } from 'vitest';
import { outcomeOf } from './cases.ts';
import { readDirective } from './index.ts';
import { rule } from './testing/rule.ts';

const H = (n: number, is: 'at' | 'more than' = 'at') => ({
  hours_h: n,
  is,
  of: 'part' as const,
  since: 'new' as const,
});
const AFTER = (n: number) => ({ hours_h: n, is: 'at' as const, of: 'part' as const, since: 'effective' as const });
const DAYS = (n: number) => ({ days: n, is: 'at' as const, since: 'effective' as const });
const first_of = (...l: object[]) => ({ first_of: l });
const later_of = (...l: object[]) => ({ later_of: l });

/** Limit, hours now, hours on the effective date (2020-01-01), day -> standing and what is left. */
const TABLE: [string, object, number, number, string, string, number | null][] = [
  ['far below', H(1000), 900, 0, '2020-06-01', 'not yet due', 100],
  ['50 h left is soon', H(1000), 950, 0, '2020-06-01', 'soon due', 50],
  ['50.1 h left is not yet', H(1000), 949.9, 0, '2020-06-01', 'not yet due', 50.1],
  ['at the limit', H(1000), 1000, 0, '2020-06-01', 'due', 0],
  ['just past', H(1000), 1000.1, 0, '2020-06-01', 'overdue', -0.1],
  ['a ten-millionth past is at', H(1000), 1000.0000001, 0, '2020-06-01', 'due', 0],
  ['more than: at is neither', H(1000, 'more than'), 1000, 0, '2020-06-01', 'soon due', 0],
  ['more than: past', H(1000, 'more than'), 1000.01, 0, '2020-06-01', 'overdue', -0.01],
  ['after the effective date, at', AFTER(25), 525, 500, '2020-06-01', 'due', 0],
  ['after the effective date, past', AFTER(25), 525.1, 500, '2020-06-01', 'overdue', -0.1],
  ['days, the day before', DAYS(30), 0, 0, '2020-01-30', 'soon due', 1],
  ['days, on the day', DAYS(30), 0, 0, '2020-01-31', 'due', 0],
  ['days, the day after', DAYS(30), 0, 0, '2020-02-01', 'overdue', -1],
  ['days, 181 ahead', DAYS(181), 0, 0, '2020-01-01', 'not yet due', 181],
  ['days, 180 ahead', DAYS(180), 0, 0, '2020-01-01', 'soon due', 180],
  [
    'first of: the hours are past, the days not',
    first_of(AFTER(10), DAYS(300)),
    510.1,
    500,
    '2020-01-05',
    'overdue',
    -0.1,
  ],
  ['first of: the days are past, the hours not', first_of(AFTER(100), DAYS(30)), 501, 500, '2020-02-01', 'overdue', -1],
  ['first of: due on one axis', first_of(AFTER(100), DAYS(30)), 501, 500, '2020-01-31', 'due', 0],
  ['later of: one past, the other not', later_of(H(1000), AFTER(25)), 1510, 1500, '2020-06-01', 'soon due', 15],
  ['later of: both past', later_of(H(1000), AFTER(25)), 1526, 1500, '2020-06-01', 'overdue', -1],
  ['later of: hours past, days far', later_of(H(1000), DAYS(300)), 1500, 0, '2020-01-01', 'not yet due', 300],
  ['later of in first of', first_of(later_of(H(1000), AFTER(25)), DAYS(600)), 1525, 1500, '2020-02-01', 'due', 0],
  ['a fixed day', { on: '2021-03-01', is: 'at' }, 0, 0, '2021-03-01', 'due', 0],
  ['before its effective date even a past limit waits', H(1000), 1100, 0, '2019-12-31', 'soon due', 1],
  ['before further flight, nothing flown', { before_further_flight: true }, 500, 500, '2020-03-01', 'due', 0],
  ['before further flight, flown since', { before_further_flight: true }, 500.5, 500, '2020-03-01', 'overdue', -0.5],
  [
    'a condition chooses the limit',
    { when: 'hours.tow > 100', limit: H(500), otherwise: H(1000) },
    600,
    0,
    '2020-03-01',
    'not yet due',
    400,
  ],
];

describe('where a part stands, by the limit', () => {
  it.each(TABLE)('%s', (_name, first, now, then, day, standing, left) => {
    const d = readDirective(rule({ first: first as never }));
    const got = outcomeOf(d, {
      ...d.cases[0]!,
      day: day as never,
      facts: { 'hours.total': now },
      facts_at: { effective: { day: '2020-01-01' as never, facts: { 'hours.total': then } } },
    });
    expect([got.standing, left === null ? null : Math.round(got.left! * 1e6) / 1e6]).toEqual([standing, left]);
  });
  it('repeats from the accomplishment, not from the point it was due', () => {
    const d = readDirective(
      rule({
        first: H(1000),
        repeat: { hours_h: 100, is: 'at', of: 'part', since: { last_look: [{ directive: 'T-1', action: 'look' }] } },
      }),
    );
    const at = (now: number) =>
      outcomeOf(d, {
        ...d.cases[0]!,
        facts: { 'hours.total': now },
        facts_at: { last_look: { day: '2020-01-02' as never, facts: { 'hours.total': 1107 } } },
      });
    expect(at(1107).standing).toBe('done and repeating');
    expect(at(1157).standing).toBe('soon due');
    expect(at(1207).standing).toBe('due');
    expect(at(1207.1).standing).toBe('overdue');
  });
});
