import { describe, expect, it } from 'vitest';
import { isRefusal } from '../foundation/index.ts';
import { lifeOf, modelOf, readRecord } from '../record/index.ts';
import { assess, readDirective, runCases } from './index.ts';
import { rule, smallRecord } from './testing/rule.ts';

const H = { hours_h: 100, is: 'at', of: 'part', since: 'new' } as const;
const codeOf = (make: () => unknown): string => {
  try {
    make();
  } catch (e) {
    if (isRefusal(e)) return e.code;
    throw e;
  }
  return 'accepted';
};
const BAD: [string, string, () => unknown][] = [
  ['an unknown field', 'foundation.document-invalid', () => readDirective({ ...rule({ first: H }), colour: 'red' })],
  [
    'an unknown fact',
    'expression.unknown-fact',
    () =>
      readDirective(
        rule({ first: { counted: 1, is: 'at' }, counts: { expression: 'hours.towing', called: 'x', unit: 'h' } }),
      ),
  ],
  [
    'a formula that is not one',
    'expression.syntax',
    () =>
      readDirective(
        rule({ first: { counted: 1, is: 'at' }, counts: { expression: 'hours.total +', called: 'x', unit: 'h' } }),
      ),
  ],
  [
    'an action that is not there',
    'directive.action-unknown',
    () => readDirective(rule({ first: H, ended_by: [{ action: 'gone' }] })),
  ],
  [
    'serials backwards',
    'directive.serials-reversed',
    () =>
      readDirective(rule({ first: H }, { affects: { models: [{ model: 'M', serials: [{ from: '20', to: '10' }] }] } })),
  ],
  [
    'serials of two series',
    'directive.serials-reversed',
    () =>
      readDirective(
        rule({ first: H }, { affects: { models: [{ model: 'M', serials: [{ from: 'A10', to: 'B20' }] }] } }),
      ),
  ],
  [
    'an action that starts itself',
    'directive.loop',
    () => readDirective(rule({ first: H, started_by: [{ action: 'look', finding: 'crack' }] })),
  ],
  ['no case', 'directive.case-missing', () => readDirective(rule({ first: H }, { cases: [] }))],
  ['no first limit', 'directive.incomplete', () => readDirective(rule({}))],
  ['counted without a formula', 'directive.incomplete', () => readDirective(rule({ first: { counted: 1, is: 'at' } }))],
  [
    'effective before issued',
    'directive.incomplete',
    () => readDirective(rule({ first: H }, { issued: '2021-01-01' })),
  ],
];
describe('what is refused', () => {
  it.each(BAD)('%s', (_n, code, make) => expect(codeOf(make)).toBe(code));
});

describe('what cannot be computed is treated as due', () => {
  const model = modelOf(readRecord(smallRecord()));
  const life = lifeOf(model, 'sp', { until: model.day });
  it('where its own case fails', () => {
    const d = readDirective(
      rule(
        { first: H },
        {
          cases: [
            {
              name: 'wrong',
              action: 'look',
              day: '2020-01-02',
              facts: { 'hours.total': 99 },
              expect: { standing: 'overdue' },
            },
          ],
        },
      ),
    );
    expect(runCases(d)[0]).toMatchObject({ passes: false });
    const a = assess(d, 'look', life, model, { day: model.day });
    expect(a.standing).toEqual({ worst: 'due', best: 'due' });
    expect(a.notComputed).toContain('not computed');
  });
  it('where the formula divides by zero', () => {
    const d = readDirective(
      rule(
        {
          first: { counted: 1, is: 'at' },
          counts: { expression: 'hours.total / count.hard_landing', called: 'x', unit: 'h' },
        },
        {
          cases: [
            {
              name: 'one',
              action: 'look',
              day: '2020-01-02',
              facts: { 'hours.total': 0.5, 'count.hard_landing': 1 },
              expect: { standing: 'soon due' },
            },
          ],
        },
      ),
    );
    expect(assess(d, 'look', life, model, { day: model.day })).toMatchObject({
      standing: { worst: 'due', best: 'due' },
    });
  });
  it('an unknown action is refused', () =>
    expect(codeOf(() => assess(readDirective(rule({ first: H })), 'gone', life, model, { day: model.day }))).toBe(
      'directive.action-unknown',
    ));
});
