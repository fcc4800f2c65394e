import { describe, expect, it } from 'vitest';
import { modelOf, readRecord } from '../record/index.ts';
import { answerDirective, assessAll, type DirectiveInput, readDirective } from './index.ts';
import { entry, flownAs, rule, smallRecord } from './testing/rule.ts';

/** The small record: 1 000 h and 1 500 landings on 2020-01-01, 1 400 h and 2 000 landings on 2022-01-01. */
const one = (d: DirectiveInput, more: readonly object[] = [], day = '2022-01-01') => {
  const model = modelOf(readRecord(smallRecord([flownAs('private'), ...more], day)));
  return assessAll([readDirective(d)], model, model.day)[0]!;
};
const H = (n: number) => ({ hours_h: n, is: 'at' as const, of: 'part' as const, since: 'new' as const });
const read = (day: string, total_h: number) => entry('reading', 'ac', day, { total_h });

describe('limits that count from a happening of the record', () => {
  const KIT = { hours_h: 150, is: 'at' as const, of: 'part' as const, since: { kit_fitted: 'strap' } };
  const fitted = (subject: string) => [
    read('2021-01-01', 1250),
    entry('kit', subject, '2021-01-01', { kit: 'strap', action: 'fitted' }, { order: 20 }),
  ];
  it.each(['sp', 'ac'])('hours since a kit was fitted on %s', (subject) => {
    const a = one(rule({ first: KIT }), fitted(subject));
    expect(a.standing.worst).toBe('due');
    expect(a.treatAs.left!.value).toBe(0);
    expect(one(rule({ first: { ...KIT, hours_h: 149 } }), fitted(subject)).standing.worst).toBe('overdue');
    expect(one(rule({ first: { ...KIT, hours_h: 200 } }), fitted(subject)).treatAs.dueAt.total_s).toBe(1450 * 3600);
  });
  it('no such kit: its clock has not started', () =>
    expect(one(rule({ first: KIT })).affected).toEqual({ yes: false, because: 'nothing has started its clock' }));
  const EVENT = { days: 30, is: 'at' as const, since: { event: 'hard_landing' } };
  it('days since the last event of a kind, not the first', () => {
    const events = ['2021-06-01', '2021-12-02'].map((d) => entry('event', 'ac', d, { event: 'hard_landing' }));
    const a = one(rule({ first: EVENT }), events);
    expect(a.treatAs.dueAt.day).toBe('2022-01-01');
    expect(a.standing.worst).toBe('due');
    expect(one(rule({ first: EVENT }), events.slice(0, 1)).standing.worst).toBe('overdue');
    expect(one(rule({ first: EVENT })).standing.worst).toBe('not affected');
  });
  it('hours since an event, with the reading of that day', () => {
    const since = { hours_h: 100, is: 'at' as const, of: 'part' as const, since: { event: 'hard_landing' } };
    const a = one(rule({ first: since }), [
      read('2021-06-01', 1310),
      entry('event', 'sp', '2021-06-01', { event: 'hard_landing' }, { order: 20 }),
    ]);
    expect(a.treatAs.left!.value).toBe(10);
    expect(a.treatAs.dueAt.total_s).toBe(1410 * 3600);
  });
  it('at the next inspection: soon due until one of the kind is on record, then overdue', () => {
    const d = rule({ first: { next_inspection: 'annual' } });
    const annual = (day: string, order = 0) =>
      entry('inspection', 'ac', day, { wording: 'annual', counts_as: ['annual'] }, { order });
    expect(one(d).standing.worst).toBe('soon due');
    expect(one(d, [annual('2019-06-01')]).standing.worst).toBe('soon due');
    expect(one(d, [annual('2021-06-01')]).standing.worst).toBe('overdue');
    const other = entry('inspection', 'ac', '2021-06-01', { wording: '100-hour', counts_as: ['hundred_hour'] });
    expect(one(d, [other]).standing.worst).toBe('soon due');
  });
});

describe('approved alternatives', () => {
  const alternative = (more: object = {}) =>
    entry('alternative', 'sp', '2021-01-01', {
      reference: 'ALT-1',
      directive: 'T-1',
      action: 'look',
      conditions: 'looked at by a named person',
      extends_by_h: 100,
      ...more,
    });
  const limit = rule({ first: H(1350) });
  it('move an hours limit by their hours, and say so', () => {
    expect(one(limit).treatAs.left!.value).toBe(-50);
    const a = one(limit, [alternative()]);
    expect(a.treatAs.left!.value).toBe(50);
    expect(a.standing.worst).toBe('soon due');
    expect(a.alternative).toMatchObject({ reference: 'ALT-1', conditions: 'looked at by a named person' });
  });
  it('move a landings limit by their hours at the landings per hour of the mix', () => {
    const d = rule({ first: { landings: 1900, is: 'at', of: 'part', since: 'new' } });
    const [bare, moved] = [one(d), one(d, [alternative()])];
    expect(bare.treatAs.left!.value).toBe(-100);
    expect(moved.treatAs.left!.value).toBeCloseTo(-100 + 100 * (500 / 400), 3);
  });
  it('do not move a calendar limit', () => {
    const d = rule({ first: { months: 12, is: 'at', since: 'effective' } });
    expect(one(d, [alternative()]).treatAs.dueAt.day).toBe('2021-01-01');
  });
  it.each([
    ['revoked', {}, entry('revocation', 'sp', '2021-06-01', { reference: 'ALT-1' })],
    ['revoked for the whole shop', {}, entry('revocation', 'shop', '2022-01-01', { reference: 'ALT-1' })],
    ['expired', { expires: '2021-12-31' }, null],
    ['of another action', { action: 'other' }, null],
    ['of another directive', { directive: 'T-2' }, null],
  ])('%s: the limit stands as printed', (_name, more, revocation) => {
    const a = one(limit, [alternative(more), ...(revocation ? [revocation] : [])]);
    expect(a.treatAs.left!.value).toBe(-50);
    expect(a.standing.worst).toBe('overdue');
    expect(a.alternative).toBeNull();
  });
  it('a revocation of another reference changes nothing', () => {
    const other = entry('revocation', 'sp', '2021-06-01', { reference: 'ALT-2' });
    expect(one(limit, [alternative(), other]).treatAs.left!.value).toBe(50);
  });
});

describe('parts that may no longer be fitted', () => {
  const d = (effective: string) =>
    rule({ first: H(5000), forbids_fitting: ['P-1'] }, { issued: '2009-01-01', effective });
  it('fitted after the day it was forbidden: named with the day', () =>
    expect(one(d('2009-12-31')).warnings).toContain(
      'Part number P-1 was fitted on 2010-01-01, after the directive forbade it.',
    ));
  it('fitted before, on the day, or of another number: nothing to say', () => {
    expect(one(d('2010-01-01')).warnings).toEqual([]);
    expect(one(d('2015-01-01')).warnings).toEqual([]);
    expect(one(rule({ first: H(5000), forbids_fitting: ['P-2'] }, { effective: '2020-01-01' })).warnings).toEqual([]);
  });
});

describe('papers that would settle it', () => {
  const counts = { expression: 'hours.total + 2.0 * hours.tow', called: 'weighted hours', unit: 'h' as const };
  const open = (uses: object[]) => {
    const model = modelOf({ ...readRecord(smallRecord(uses)), uses: ['private', 'tow'] });
    return assessAll([readDirective(rule({ counts, first: { counted: 4000, is: 'at' } }))], model, model.day)[0]!;
  };
  const use = (from: string, to: string | undefined, what: string) =>
    entry('use', 'ac', from, { from, use: what, ...(to ? { to } : {}) });
  /** 1 000 h before 2020 and 400 h after it may all have been towed. By hand: 4 000 less 3 h per towed, 1 h per other hour. */
  it('two gaps: each at its worst and at its best with the other still open, the one that leaves less open first', () => {
    const figures = open([]).papers.map((p) => [p.from, p.ifWorst.left, p.ifBest.left, p.staysWide]);
    const rounded = figures.map((f) => f.map((x) => (typeof x === 'number' ? Math.round(x * 100) / 100 : x)));
    expect(rounded.map((r) => r.slice(1))).toEqual([
      [4000 - 3000 - 1200, 4000 - 1000 - 1200, 2 * 400],
      [4000 - 3000 - 1200, 4000 - 3000 - 400, 2 * 1000],
    ]);
    expect(rounded[0]![0]! < rounded[1]![0]!).toBe(true);
  });
  it('half of it on paper: the rest is what the paper would settle', () => {
    const a = open([use('2010-01-01', '2020-01-01', 'private')]);
    const total = a.papers.map((p) => p.ifBest.left - p.ifWorst.left);
    expect(Math.max(...total)).toBeCloseTo(2 * 400, 3);
    expect(a.treatAs.left!.value).toBeCloseTo(4000 - 1000 - 3 * 400, 3);
    expect(a.papers[0]!.staysWide).toBeCloseTo(0, 3);
  });
  it('all of it on paper: none', () => expect(open([use('2010-01-01', undefined, 'tow')]).papers).toEqual([]));
});

describe('one document in, one answer out', () => {
  const input = rule({ first: H(1350) });
  it('a directive alone is read back, its cases run', () => {
    const { value } = answerDirective(input);
    expect(value).toMatchObject({ cases: [{ name: 'holds', passes: true }] });
    expect('read_back' in value && value.read_back.flatMap((r) => r.sentences).join(' ')).toContain('1 350 h');
  });
  it('with a record every part it looks at is assessed', () => {
    const { value, working } = answerDirective({
      sparwright: 'directive-question/1',
      directives: [input],
      record: smallRecord([flownAs('private')]),
    });
    expect('assessments' in value && value.assessments).toMatchObject([
      {
        directive: 'T-1',
        subject: 'sp',
        standing: { worst: 'overdue', best: 'overdue' },
        treatAs: { left: { value: -50 } },
      },
    ]);
    expect(working.map((s) => s.symbol)).toContain('L');
  });
  it('warnings are passed on, each once', () => {
    const { warnings } = answerDirective({
      sparwright: 'directive-question/1',
      directives: [
        { ...input, extract: 'one row' },
        { ...input, number: 'T-2', extract: 'one row' },
      ],
      record: smallRecord([flownAs('private')]),
    });
    expect(warnings.filter((w) => w.includes('one row'))).toHaveLength(1);
  });
  it.each([
    ['no document', null],
    ['no directive', { sparwright: 'directive-question/1', directives: [], record: smallRecord() }],
    ['an unknown field', { sparwright: 'directive-question/1', directives: [input], record: smallRecord(), more: 1 }],
  ])('refuses %s', (_name, bad) =>
    expect(() => answerDirective(bad)).toThrow(expect.objectContaining({ code: 'foundation.document-invalid' })),
  );
});
