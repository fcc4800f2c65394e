import { describe, expect, it } from 'vitest';
import type { Day } from '../foundation/index.ts';
import { lifeOf, modelOf, readRecord } from './index.ts';

const day = '2026-11-25' as Day;
const entry = (id: string, subject: string, kind: string, on: string, body: object, order = 0) => ({
  id,
  subject,
  kind,
  day: on,
  order,
  evidence: 'seen',
  body,
});
const base = [
  entry('1', 'a', 'aircraft', '2010-01-01', {
    registration: 'X',
    type: 'T',
    model: 'M',
    serial: '1',
    built: '2010-01-01',
  }),
  entry('2', 's', 'part', '2010-01-01', { part: 'inboard_spar', hand: 'left', built: '2010-01-01' }),
  entry('3', 's', 'fitment', '2010-01-01', { into: 'a', place: 'left_inboard_spar' }, 1),
  entry('4', 'a', 'use', '2010-01-01', { from: '2010-01-01', use: 'private' }),
  entry('5', 'a', 'reading', '2026-01-10', { total_h: 2100 }, 9),
  entry('6', 'a', 'reading', '2026-11-20', { total_h: 2170.5 }, 9),
];
const look = (total_h?: number, subject = 's') =>
  entry('7', subject, 'accomplished', '2026-10-01', {
    directive: 'D',
    issue: 1,
    action: 'look',
    finding: 'none',
    ...(total_h === undefined ? {} : { total_h }),
  });
const atLook = (...more: object[]) => {
  const m = modelOf(readRecord({ sparwright: 'record/1', day, entries: [...base, ...more] }));
  const life = lifeOf(m, 's', { until: day, cuts: ['2026-10-01' as Day] });
  return { hours: life.figure('hours.total', '2026-10-01' as Day).value, findings: life.findings.map((f) => f.code) };
};

describe('the total that an inspection or an action states is a reading (14 CFR 43.11(a)(2), READ)', () => {
  it('without it the hours at the look are anywhere between the readings', () => {
    const { hours } = atLook(look());
    expect(hours.low).toBeLessThanOrEqual(2100 + 1e-9);
    expect(hours.high).toBeGreaterThanOrEqual(2170.5 - 1e-9);
  });
  it.each(['s', 'a'])('stated on %s it settles them', (subject) => {
    expect(atLook(look(2150, subject)).hours).toEqual({ low: 2150, high: 2150 });
  });
  it('the landings stated with it are read too', () => {
    const body = { directive: 'D', issue: 1, action: 'look', finding: 'none', total_h: 2150, landings: 3900 };
    const m = modelOf(
      readRecord({
        sparwright: 'record/1',
        day,
        entries: [...base, entry('7', 's', 'accomplished', '2026-10-01', body)],
      }),
    );
    const life = lifeOf(m, 's', { until: day, cuts: ['2026-10-01' as Day] });
    expect(life.figure('landings.total', '2026-10-01' as Day).value).toEqual({ low: 3900, high: 3900 });
  });
  it('landings that only the action states are kept where a reading of that day gives the same total', () => {
    const body = { directive: 'D', issue: 1, action: 'look', finding: 'none', total_h: 2150, landings: 3900 };
    const at = '2026-10-01' as Day;
    const entries = [
      ...base,
      entry('7', 's', 'accomplished', at, body),
      entry('8', 'a', 'reading', at, { total_h: 2150 }),
    ];
    const life = lifeOf(modelOf(readRecord({ sparwright: 'record/1', day, entries })), 's', { until: day, cuts: [at] });
    expect(life.figure('landings.total', at).value).toEqual({ low: 3900, high: 3900 });
    expect(life.figure('hours.total', at).value).toEqual({ low: 2150, high: 2150 });
  });
  it('of an inspection too; the same total read the same day stands once', () => {
    const annual = entry('8', 'a', 'inspection', '2026-10-01', {
      wording: 'Annual',
      counts_as: ['annual'],
      total_h: 2150,
    });
    const same = entry('9', 'a', 'reading', '2026-10-01', { total_h: '2150:00' });
    expect(atLook(annual, same).hours).toEqual({ low: 2150, high: 2150 });
  });
  it('one that contradicts the readings is set aside and named', () => {
    const { hours, findings } = atLook(look(1500));
    expect(findings).toContain('record.totals-run-backwards');
    expect(hours.high).toBeGreaterThan(2100);
  });
  it('on a part that sits elsewhere it says nothing of this aircraft', () => {
    const out = entry('10', 's', 'removal', '2026-05-01', { to: 'shelf' }, 9);
    const m = modelOf(readRecord({ sparwright: 'record/1', day, entries: [...base, out, look(2150)] }));
    const { value } = lifeOf(m, 'a', { until: day, cuts: ['2026-10-01' as Day] }).figure(
      'hours.total',
      '2026-10-01' as Day,
    );
    expect(value.low).toBeLessThan(2150);
  });
});
