import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day } from '../foundation/day.ts';
import { alternativesOf, assessAll, lapsingSoon, permitsOf, readDirective } from './index.ts';
import { entry, rule } from './testing/rule.ts';
import { recordOf } from './testing/two-sides.ts';

const D = readDirective(rule({ first: { hours_h: 1300, is: 'at', of: 'part', since: 'new' } }));
const TODAY = '2022-01-01' as Day;
const alternative = (subject: string, day: string, more: object = {}) =>
  entry('alternative', subject, day, {
    reference: 'AM-1',
    directive: 'T-1',
    action: 'look',
    conditions: 'daylight only',
    ...more,
  });
const revoke = (subject: string, day: string) =>
  entry('revocation', subject, day, { reference: 'AM-1', because: 'cracks' });
const standings = (more: readonly object[], day = TODAY) => {
  const model = recordOf(more, day);
  return assessAll([D], model, model.day).map(({ subject, standing, treatAs, couldBecome }) => ({
    subject,
    standing,
    treatAs,
    couldBecome,
  }));
};
const permit = (more: object = {}) =>
  entry('permit', 'ac', '2021-12-01', {
    reference: 'F-1',
    issued_by: 'Board',
    conditions: 'no passengers',
    expires: '2022-02-01',
    ...more,
  });

describe('approved alternatives', () => {
  it('move the limit or end the action, for their own part or for every part of their aircraft', () => {
    const worst = (more: readonly object[]) => standings(more).map((s) => s.standing.worst);
    expect(worst([])).toEqual(['overdue', 'overdue']);
    expect(worst([alternative('sp-left', '2021-01-01', { extends_by_h: 200 })])).toEqual(['not yet due', 'overdue']);
    expect(worst([alternative('ac', '2021-01-01', { ends_action: true })])).toEqual(['ended', 'ended']);
    expect(worst([alternative('ac', '2021-01-01', { ends_action: true, expires: '2021-12-31' })])).toEqual([
      'overdue',
      'overdue',
    ]);
  });
  it.each([
    ['in force', {}, []],
    ['expired', { expires: '2021-12-31' }, []],
    ['in force', { expires: TODAY }, []],
    ['revoked', {}, [revoke('shop', '2021-06-01')]],
    ['revoked', {}, [revoke('ac', '2021-06-01')]],
    ['revoked', {}, [revoke('sp-left', TODAY)]],
    ['in force', {}, [revoke('sp-right', '2021-06-01')]],
  ])('%s', (state, more, also) => {
    const [found] = alternativesOf(recordOf([alternative('sp-left', '2021-01-01', more), ...also]), TODAY);
    expect(found).toMatchObject({ state, reference: 'AM-1', subject: 'sp-left', conditions: 'daylight only' });
    expect(found!.revoked !== null).toBe(state === 'revoked');
  });
  it('say so while they lapse soon, once', () => {
    const of = (expires?: string) => {
      const model = recordOf([alternative('ac', '2021-01-01', { ends_action: true, ...(expires ? { expires } : {}) })]);
      return lapsingSoon(assessAll([D], model, TODAY), TODAY);
    };
    expect(of('2022-06-30')).toMatchObject([{ code: 'directive.alternative-lapses-soon' }]);
    expect(of('2022-07-01')).toEqual([]);
    expect(of()).toEqual([]);
  });
  it('law: revoked, everything stands exactly as if it had never been', () => {
    const one = fc.record({
      subject: fc.constantFrom('ac', 'sp-left', 'sp-right'),
      since: fc.integer({ min: 1, max: 700 }),
      ends: fc.boolean(),
      extends_by_h: fc.option(fc.integer({ min: 1, max: 900 }), { nil: undefined }),
      expires: fc.option(fc.integer({ min: 1, max: 900 }), { nil: undefined }),
    });
    let changed = 0;
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 3 }), fc.integer({ min: 0, max: 700 }), (all, after) => {
        const day = (n: number) => addDays('2020-01-01' as Day, n);
        const entries = all.map((a) =>
          alternative(a.subject, day(a.since), {
            ...(a.ends ? { ends_action: true } : {}),
            ...(a.extends_by_h ? { extends_by_h: a.extends_by_h } : {}),
            ...(a.expires ? { expires: day(a.expires) } : {}),
          }),
        );
        const none = standings([]);
        if (JSON.stringify(standings(entries)) !== JSON.stringify(none)) changed++;
        expect(standings([...entries, revoke('shop', day(after))])).toEqual(none);
      }),
      { numRuns: 60, seed: 3 },
    );
    expect(changed).toBeGreaterThan(10);
  });
});

describe('ferry permits', () => {
  it.each([
    ['in force', '2022-01-01', {}, []],
    ['in force', '2022-02-01', {}, []],
    ['expired', '2022-02-02', {}, []],
    ['not yet in force', '2022-01-01', { from: '2022-01-02' }, []],
    ['revoked', '2022-01-01', {}, [entry('revocation', 'ac', '2021-12-20', { reference: 'F-1' })]],
  ])('%s on %s', (state, day, more, also) => {
    expect(permitsOf(recordOf([permit(more), ...also], day), 'ac', day as Day)).toMatchObject([
      { state, issuedBy: 'Board' },
    ]);
  });
  it('law: a permit changes no standing', () => {
    const given = fc.record({
      directive: fc.constantFrom(undefined, 'T-1'),
      expires: fc.integer({ min: 0, max: 900 }),
    });
    fc.assert(
      fc.property(given, ({ directive, expires }) => {
        const p = permit({ ...(directive ? { directive } : {}), expires: addDays('2021-12-01' as Day, expires) });
        expect(standings([p])).toEqual(standings([]));
      }),
      { numRuns: 20 },
    );
  });
});
