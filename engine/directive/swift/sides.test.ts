import { describe, expect, it } from 'vitest';
import type { Day } from '../../foundation/day.ts';
import { type RecordModel, sumsOf } from '../../record/index.ts';
import { assessAll, lineOf, readDirective } from '../index.ts';
import { rule } from '../testing/rule.ts';
import { done, onLine, recordOf } from '../testing/two-sides.ts';
import { swiftLines, swiftRules } from './index.ts';
import { differs } from './testing/differs.ts';

const RULE = readDirective(
  rule({
    first: { hours_h: 1300, is: 'at', of: 'part', since: 'new' },
    repeat: { hours_h: 400, is: 'at', of: 'part', since: { last_look: [{ directive: 'T-1', action: 'look' }] } },
  }),
);
const TODAY = '2022-01-01' as Day;
const plainly = (more: readonly object[]) => recordOf(more, TODAY, '2019-06-01');
const swift = (m: RecordModel) => {
  const { sums } = sumsOf(m.entries, 'ac', m.policy);
  return sums && swiftLines(swiftRules([RULE], TODAY), sums, m.policy, TODAY);
};

describe('work that may not prove its side goes the whole way', () => {
  it.each([
    ['the method names a side', done('sp-right', '2022-01-01', { method: 'left spar' })],
    ['a stamp names a side', done('sp-right', '2022-01-01', { method: 'spar L-710' })],
    ['a line of the paper is named', done('sp-right', '2022-01-01', {}, onLine(3))],
    ['it states landings', done('sp-right', '2022-01-01', { total_h: 1400, landings: 2000 })],
    ['a person names the side', done('sp-right', '2022-01-01', { paper_names: 'left' })],
  ])('%s', (_, entry) => expect(swift(plainly([entry]))).toBeNull());
  it('written on the aircraft as a whole', () => {
    const found = swift(plainly([done('ac', '2022-01-01')]))!;
    expect(found.lines).toEqual([]);
    expect(found.whole).toHaveLength(2);
  });
  it('of plain work the sums give what the whole way gives', () => {
    const m = plainly([done('sp-right', '2022-01-01', { method: 'eddy current' })]);
    const { lines } = swift(m)!;
    const whole = assessAll([RULE], m, TODAY).map((a) => lineOf(a));
    expect(lines).toHaveLength(2);
    for (const l of lines) expect(differs(l, whole.find((w) => w.part === l.part)!)).toBeNull();
  });
});
