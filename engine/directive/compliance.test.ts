import { describe, expect, it } from 'vitest';
import type { Day } from '../foundation/day.ts';
import { assessAll, complianceOf, type DirectiveDocument, readDirective } from './index.ts';
import { rule } from './testing/rule.ts';
import { done, onLine, recordOf } from './testing/two-sides.ts';

const TODAY = '2022-01-01' as Day;
const look = (issue: number, effective: string) =>
  readDirective(
    rule({ first: { hours_h: 1300, is: 'at', of: 'part', since: 'new' } }, { issue, issued: effective, effective }),
  );
const [OLD, NEW] = [look(1, '2019-01-01'), look(2, '2021-01-01')];
const PARTS = ['ac', 'sp-left', 'sp-right'];
function compliance(more: readonly object[], documents: readonly DirectiveDocument[] = [NEW]) {
  const model = recordOf(more);
  return complianceOf({ documents, model, assessments: assessAll(documents, model, TODAY), day: TODAY }, PARTS);
}
const under = (issue: number, body: object = {}) => ({ issue, ...body });

describe('the state of every issue', () => {
  it('one line per part in force; work is wanted where the standing asks for it and none is on record', () => {
    const { lines, past } = compliance([done('sp-left', '2021-12-01', under(2))]);
    expect(lines.map((l) => [l.subject, l.wanted, l.done.length])).toEqual([
      ['sp-left', false, 1],
      ['sp-right', true, 0],
    ]);
    expect(past).toEqual([]);
  });
  it('the reading then is as stated, else as the record bounds it', () => {
    const signer = { name: 'M. Orne', certificate: 'ZQ-M-114' };
    const body = { total_h: 1380.5, landings: 1975, method: 'eddy current', signer };
    const of = (more: object) =>
      compliance([done('sp-left', '2021-12-01', under(2, more), onLine(4))]).lines[0]!.done[0]!;
    expect(of(body)).toMatchObject({
      method: 'eddy current',
      signer,
      paper: { title: 'Book 1', page: '12', row: 4 },
      doubt: null,
      reading: {
        total_s: { low: 1380.5 * 3600, high: 1380.5 * 3600 },
        landings: { low: 1975, high: 1975 },
        stated: { total: true, landings: true },
      },
    });
    const { reading, signer: nobody } = of({});
    expect(nobody).toBeNull();
    expect(reading.stated).toEqual({ total: false, landings: false });
    // Between 1 000 h on 1 January 2020 and 1 400 h on 1 January 2022, at most 8 h on each of the last 31 days.
    expect(reading.total_s).toEqual({ low: (1400 - 31 * 8) * 3600, high: 1400 * 3600 });
    expect(reading.landings!.high).toBe(2000);
  });
  it('what was done under an older, a withdrawn or an unknown issue stays, and counts for none in force', () => {
    const work = [
      done('sp-left', '2020-06-01', under(1)),
      done('sp-right', '2021-06-01', { directive: 'X-9', issue: 4, action: 'x' }),
    ];
    const { lines, past } = compliance(work, [OLD, NEW]);
    expect(lines.every((l) => l.document === NEW && l.wanted)).toBe(true);
    expect(past.map((p) => [p.number, p.issue, p.state, p.subject, p.done?.day])).toEqual([
      ['T-1', 1, 'superseded', 'sp-left', '2020-06-01'],
      ['X-9', 4, 'not adopted', 'sp-right', '2021-06-01'],
    ]);
    const gone = compliance(work, [OLD, { ...NEW, withdrawnOn: '2021-10-01' as Day }]);
    expect(gone.lines.every((l) => l.document === OLD)).toBe(true);
    expect(gone.past[0]).toMatchObject({ number: 'T-1', issue: 2, state: 'withdrawn', done: null });
  });
  it('work under an issue in force, for an action or a part that it does not look at, is not left out', () => {
    const slip = done('sp-left', '2021-12-01', under(2, { action: 'loook' }));
    const { lines, past } = compliance([slip, done('sp-right', '2021-12-02', under(2))]);
    expect(lines.map((l) => l.done.length)).toEqual([0, 1]);
    expect(past.map((p) => [p.issue, p.action, p.subject, p.state, p.done?.day])).toEqual([
      [2, 'loook', 'sp-left', 'bears on nothing', '2021-12-01'],
    ]);
  });
  it('unproven work stands with its reason, and is wanted still', () => {
    const { lines } = compliance([done('ac', '2021-12-01', under(2))]);
    expect(lines.map((l) => [l.wanted, l.done[0]!.doubt])).toEqual([
      [true, 'it is written on T as a whole'],
      [true, 'it is written on T as a whole'],
    ]);
  });
  it('one side on record while the other waits for it is a finding that names both', () => {
    const { findings } = compliance([done('sp-right', '2021-12-01', under(2))]);
    expect(findings).toMatchObject([{ code: 'directive.one-side-on-record' }]);
    expect(findings[0]!.text).toContain('the right side was done on 2021-12-01, the left side is not on record');
    const both = ['left', 'right'].map((s) => done(`sp-${s}`, '2021-12-01', under(2)));
    expect(compliance(both).findings).toEqual([]);
    expect(compliance([]).findings).toEqual([]);
  });
});
