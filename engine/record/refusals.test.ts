import { describe, expect, it } from 'vitest';
import type { Day } from '../foundation/day.ts';
import { isRefusal } from '../foundation/refusal.ts';
import {
  annualGoodThrough,
  entriesFromCall,
  lifeOf,
  nextHundredHour,
  readCall,
  readRecord,
  timeInService,
} from './index.ts';
import { A, aircraft, entry, model, reading } from './testing/write.ts';

const codeOf = (f: () => unknown): string => {
  try {
    f();
  } catch (e) {
    if (isRefusal(e))
      return `${e.code}${e.detail.given && e.detail.allowed && e.detail.remedy ? '' : ' without words'}`;
    throw e;
  }
  return 'no refusal';
};
const part = (id: string) => entry('part', id, '2000-01-01', { part: 'spar', hand: 'left' });
const put = (id: string, into: string) => entry('fitment', id, '2000-01-01', { into, place: 'place' });

describe('refusals', () => {
  it.each([
    [
      'foundation.document-invalid',
      () => readRecord({ sparwright: 'record/1', day: '2020-01-01', entries: [], colour: 'red' }),
    ],
    [
      'foundation.document-invalid',
      () => readRecord({ sparwright: 'record/1', day: '2020-01-01', entries: [{ ...aircraft(), kind: 'ship' }] }),
    ],
    ['foundation.document-invalid', () => model([aircraft(), reading('2001-01-01', Number.NaN)])],
    [
      'foundation.document-invalid',
      () => readCall({ sparwright: 'call/1', day: '2020-01-01', registration: 'X', type: 'T', model: 'M', hours: 3 }),
    ],
    ['record.reading-in-future', () => model([aircraft(), reading('2021-01-01', 100)])],
    ['record.entry-in-future', () => model([aircraft(), entry('event', A, '2021-01-01', { event: 'bump' })])],
    ['record.entry-in-future', () => lifeOf(model([aircraft()]), A, { until: '2021-01-01' as Day })],
    [
      'record.id-twice',
      () =>
        model([
          { ...aircraft(), id: 'x' },
          { ...reading('2001-01-01', 1), id: 'x' },
        ]),
    ],
    ['record.replaces-unknown', () => model([{ ...aircraft(), replaces: 'nothing' }])],
    [
      'record.replaces-in-circle',
      () =>
        model([
          { ...aircraft(), id: 'x', replaces: 'y' },
          { ...reading('2001-01-01', 1), id: 'y', replaces: 'x' },
        ]),
    ],
    ['record.hours-negative', () => model([aircraft(), reading('2001-01-01', -5)])],
    ['record.subject-unknown', () => lifeOf(model([aircraft()]), 'aircraft:9', { until: '2020-01-01' as Day })],
    ['record.part-in-itself', () => model([aircraft(), part('a'), part('b'), put('a', 'b'), put('b', 'a')])],
    [
      'record.fact-unknown',
      () => lifeOf(model([aircraft()]), A, { until: '2020-01-01' as Day }).figure('hours.moon', '2020-01-01' as Day),
    ],
    [
      'record.period-reversed',
      () =>
        lifeOf(
          model([aircraft(), entry('gap', A, '2002-01-01', { from: '2002-01-01', to: '2001-01-01', because: 'x' })]),
          A,
          { until: '2020-01-01' as Day },
        ),
    ],
    [
      'record.period-reversed',
      () =>
        entriesFromCall(
          readCall({
            sparwright: 'call/1',
            day: '2020-01-01',
            registration: 'X',
            type: 'T',
            model: 'M',
            built_year: 2021,
          }),
        ),
    ],
    ['record.period-reversed', () => timeInService(100, 50)],
    [
      'record.call-impossible',
      () =>
        entriesFromCall(
          readCall({
            sparwright: 'call/1',
            day: '2026-01-01',
            registration: 'X',
            type: 'T',
            model: 'M',
            built_year: 2024,
            total_h: 900_000,
          }),
        ),
    ],
  ])('%s', (code, f) => {
    expect(codeOf(f)).toBe(code);
  });
});

describe('against the regulation', () => {
  // 14 CFR 1.1 (read): wheels off to wheels on. Off blocks 10:00, airborne 10:09, down 11:03, on blocks 11:10 (derived case): 54 min.
  it('time in service counts from the surface to the surface', () => {
    expect(timeInService(10 * 3600 + 9 * 60, 11 * 3600 + 3 * 60)).toBe(0.9 * 3600);
  });
  // 14 CFR 91.409(b) (read), case derived: due at 1 100.0, flown on to 1 107.0 en route: next due at 1 200.0.
  it('the excess of a 100-hour counts in the next', () => {
    expect(nextHundredHour(1100 * 3600, 1107 * 3600)).toEqual({ due_s: 1200 * 3600, excessAllowed: true });
    expect(nextHundredHour(1100 * 3600, 1111 * 3600).excessAllowed).toBe(false);
    expect(nextHundredHour(1100 * 3600, 1090 * 3600).due_s).toBe(1190 * 3600);
  });
  // 14 CFR 91.409(a), case derived, the calendar-month reading from memory: entered 4 May 2025, good through 31 May 2026.
  it('an annual is good to the end of its month', () => {
    expect(annualGoodThrough('2025-05-04' as Day)).toBe('2026-05-31');
  });
});
