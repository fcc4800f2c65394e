import { describe, expect, it } from 'vitest';
import type { Day } from '../foundation/day.ts';
import { modelOf, readRecord } from '../record/index.ts';
import { outcomeOf, runCases } from './cases.ts';
import { assessAll, inForce, readBack, readDirective } from './index.ts';
import { byNumber, published } from './testing/published/index.ts';
import { entry } from './testing/rule.ts';

describe('published directives come out as their text says', () => {
  const all = published.map((d) => readDirective(d));
  it.each(all.flatMap((d) => runCases(d).map((c) => [d.number, c.name, c] as const)))('%s: %s', (_n, _c, result) => {
    expect(result).toMatchObject({ passes: true });
  });
  it('are fourteen, five of them no extracts', () => {
    expect(all.length).toBe(14);
    expect(all.filter((d) => !d.extract).map((d) => d.number)).toEqual([
      '2000-23-01',
      '73-13-07',
      'AD/DHC-1/22 Amdt 4',
      'AD/AT/27 Amdt 2',
      'AD/SA-TP/23 Amdt 2',
    ]);
  });
  it.each(all.map((d) => [d.number, d] as const))(
    '%s has one in, one out, one at its limit and one past it',
    (_n, d) => {
      const seen = new Set(d.cases.map((c) => c.expect.standing));
      expect(seen).toContain('not affected');
      expect(seen).toContain('overdue');
      expect(seen.has('due') || seen.has('soon due')).toBe(true);
    },
  );
  it('are read back in sentences that name every limit', () => {
    for (const d of all) {
      const text = readBack(d)
        .flatMap((r) => r.sentences)
        .join('\n');
      expect(text).not.toMatch(/undefined|\[object|NaN/);
      for (const a of d.actions) expect(text).toContain(a.first ? 'First due' : 'It starts when');
    }
  });
});

describe('check values', () => {
  const stand = (number: string, action: string, over: object) => {
    const d = readDirective(byNumber(number));
    const c = { ...d.cases.find((x) => x.action === action)!, ...over };
    return outcomeOf(d, c as (typeof d.cases)[number]);
  };
  /** AD-01 (read, 68 FR 18571) and AD-02 (derived: 9 984 / 4). */
  it('9 984 fatigue hours are 2 496.0 h at factor 4', () => {
    expect(stand('2003-17-16', 'replace_bracket', { facts: { 'hours.aerobatic': 2495.9 } }).standing).toBe('soon due');
    expect(stand('2003-17-16', 'replace_bracket', { facts: { 'hours.aerobatic': 2496 } }).left).toBe(0);
  });
  /** AD-05 (derived from 2000-23-01 (d)(1): the later of 10 000 and 9 990 + 25). */
  it('402C, 9 990 h on the old effective date: due at 10 015', () =>
    expect(stand('2000-23-01', 'look', { facts: { 'hours.total': 10_000 } }).left).toBe(15));
  /** AD/SA-TP/23 Amdt 2 (read whole): signed 17 August 2012, effective 23 August 2012, revokes Amendment 1. */
  it('AD/SA-TP/23 Amdt 2 takes the place of Amendment 1 on 23 August 2012', () => {
    const now = readDirective(byNumber('AD/SA-TP/23 Amdt 2'));
    const before = { ...now, number: 'AD/SA-TP/23 Amdt 1', effective: '2005-01-01' as Day, supersedes: [] };
    const on = (day: string) => inForce([before, now], day as Day).map((d) => d.number);
    expect(on('2012-08-22')).toContain(before.number);
    expect(on('2012-08-23')).toEqual([now.number]);
  });
  /** AD-08 (read, 2000-23-01 (a)). */
  it.each([
    ['402C0126', false],
    ['402C0355', true],
    ['402C0400', false],
    ['402C1020', true],
    ['689', true],
    ['690', false],
  ])('402C serial %s affected: %s', (serial, yes) =>
    expect(stand('2000-23-01', 'look', { serial }).standing !== 'not affected').toBe(yes),
  );
  /** AD-10 (read, both tables). */
  it('serial 1000: 4 589 h, then 2 000 h', () => {
    const at = { serial: '1000', facts: { 'hours.total': 2000 } };
    expect(stand('2002-11-05', 'l402a_mid', at).left).toBe(2589);
    expect(stand('2006-08-08 R1', 'l402a_mid', at).left).toBe(0);
  });
  /** Read, 2008-09-10 (a) and (b). */
  it('a superseded directive drops out on the effective date of the newer one, not before', () => {
    const [old, fresh] = [readDirective(byNumber('2003-06-01')), readDirective(byNumber('2008-09-10'))];
    expect(inForce([old, fresh], '2008-05-07' as Day)).toEqual([old, fresh]);
    expect(inForce([old, fresh], '2008-05-08' as Day)).toEqual([fresh]);
  });
  /** AD-13 (read, 2002-11-03 (a)(3)), all rows at their edges. What the factor does was not readable. */
  it.each([
    ['AT-502', '0002', null],
    ['AT-502', '0003', 'factor_high'],
    ['AT-502', '0236', 'factor_high'],
    ['AT-502', '0237', null],
    ['AT-502A', '0157', null],
    ['AT-502A', '0158', 'factor_high'],
    ['AT-502A', '0238', 'factor_high'],
    ['AT-502A', '0239', 'factor_low'],
    ['AT-502A', '0618', 'factor_low'],
    ['AT-502A', '0619', null],
    ['AT-502B', '0186', null],
    ['AT-502B', '0187', 'factor_low'],
    ['AT-502B', '0618', 'factor_low'],
    ['AT-502B', '0619', null],
    ['AT-503A', '0067', null],
  ])('with winglets, %s %s: %s', (model, serial, factor) => {
    const over = { model, serial, facts: { 'hours.total': 900, 'kit.winglet.hours': 1 } };
    const holds = ['factor_high', 'factor_low'].filter((a) => stand('2002-11-03', a, over).standing !== 'not affected');
    expect(holds).toEqual(factor === null ? [] : [factor]);
  });
  /** 2011-10-09 (read): first counted from a look under the superseded directive, or twelve months from 2011-06-17. */
  it.each([
    [599.9, '2011-12-01', 'soon due'],
    [600, '2011-12-01', 'due'],
    [600.1, '2011-12-01', 'overdue'],
    [520, '2012-06-16', 'soon due'],
    [520, '2012-06-17', 'due'],
    [520, '2012-06-18', 'overdue'],
  ])('seat rails, last look at 500 h under 87-20-03 R2: %s h on %s: %s', (total_h, day, standing) => {
    const entries = [
      entry('aircraft', 'ac', '1980-01-01', {
        registration: 'T',
        type: 'T',
        model: '152',
        serial: '1',
        built: '1980-01-01',
      }),
      entry('reading', 'ac', '2011-01-10', { total_h: 500 }),
      entry('accomplished', 'ac', '2011-01-10', {
        directive: '87-20-03 R2',
        issue: 1,
        action: 'look',
        finding: 'none',
      }),
      entry('reading', 'ac', day, { total_h }),
    ];
    const model = modelOf(readRecord({ sparwright: 'record/1', day, entries }));
    const [a] = assessAll([readDirective(byNumber('2011-10-09'))], model, model.day);
    expect(a!.standing).toEqual({ worst: standing, best: standing });
  });
});
