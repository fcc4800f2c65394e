import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RecordModel } from '../record/index.ts';
import { type Assessment, assessAll, type DirectiveInput, readDirective, STANDINGS, sideFindings } from './index.ts';
import { entry, rule } from './testing/rule.ts';
import { done, onLine, recordOf } from './testing/two-sides.ts';

const REPEATING = rule({
  first: { hours_h: 1300, is: 'at', of: 'part', since: 'new' },
  repeat: { hours_h: 400, is: 'at', of: 'part', since: { last_look: [{ directive: 'T-1', action: 'look' }] } },
});
const answers = (model: RecordModel, d: DirectiveInput = REPEATING) => assessAll([readDirective(d)], model, model.day);
const of = (all: readonly Assessment[], side: string) => all.find((a) => a.subject === `sp-${side}`)!;
const both = (body: object | readonly object[], more: object | readonly object[]) =>
  (['left', 'right'] as const).map((s, i) => {
    const at = (x: object | readonly object[]) => (Array.isArray(x) ? x[i] : x) as object;
    return done(`sp-${s}`, '2021-12-01', at(body), at(more));
  });
const codes = (model: RecordModel) => sideFindings([readDirective(REPEATING)], model).map((f) => f.code);

describe('one side done and both recorded', () => {
  it('a look at 1 380 h counts on the side that its paper names', () => {
    const model = recordOf([done('sp-left', '2021-12-01', { method: 'eddy current, left spar' }, onLine(3))]);
    expect(of(answers(model), 'left').standing.worst).toBe('done and repeating');
    expect(of(answers(model), 'right').standing).toEqual({ worst: 'overdue', best: 'overdue' });
    expect(codes(model)).toEqual([]);
  });
  it.each([
    ['the method says left', { method: 'Eddy current, LH spar' }, onLine(3)],
    ['the note says left', {}, { ...onLine(3), note: 'left spar only' }],
    ['the paper is of the left wing', {}, onLine(3, 'Work sheet, left wing')],
    ['the stamp is that of the left spar', { method: 'eddy current, spar l-710' }, onLine(3)],
    ['a person says left', { paper_names: 'left' }, onLine(3)],
    ['two lines, each says left', { method: 'left' }, [onLine(3), onLine(4)]],
  ])('%s: the right side stays open, and may become done', (_, body, more) => {
    const model = recordOf(both(body, more));
    const all = answers(model);
    expect(of(all, 'left').standing).toEqual({ worst: 'done and repeating', best: 'done and repeating' });
    expect(of(all, 'right').standing).toEqual({ worst: 'overdue', best: 'done and repeating' });
    expect(of(all, 'right').lastDone).toBeNull();
    expect(of(all, 'right').warnings.join()).toContain('names the left side only');
    expect(codes(model)).toEqual(['directive.paper-names-other-side']);
    expect(sideFindings([], model)[0]!.text).toContain('the right spar');
  });
  it('one line for both that names neither proves neither', () => {
    const model = recordOf(both({ method: 'eddy current' }, onLine(3)));
    for (const side of ['left', 'right']) expect(of(answers(model), side).standing.worst).toBe('overdue');
    expect(codes(model)).toEqual(['directive.one-line-both-sides', 'directive.one-line-both-sides']);
  });
  it.each([
    ['the line names both', { method: 'left and right spar' }, onLine(3)],
    ['a person says both', { method: 'left', paper_names: 'both' }, onLine(3)],
    ['both stamps stand in it', { method: 'spars L-710 and R-720' }, onLine(3)],
    ['each has its own line', {}, [onLine(3), onLine(4)]],
    ['no line is named', {}, { paper: { title: 'Book 1', page: '12' } }],
    ['no paper is named', {}, {}],
  ])('%s: both are done', (_, body, more) => {
    const model = recordOf(both(body, more));
    for (const side of ['left', 'right']) expect(of(answers(model), side).standing.worst).toBe('done and repeating');
    expect(codes(model)).toEqual([]);
  });
  it('written on the aircraft as a whole it proves no part', () => {
    const model = recordOf([done('ac', '2021-12-01')]);
    for (const side of ['left', 'right'])
      expect(of(answers(model), side).standing).toEqual({ worst: 'overdue', best: 'done and repeating' });
    const [finding] = sideFindings([readDirective(REPEATING)], model);
    expect(finding).toMatchObject({ code: 'directive.done-on-the-whole' });
    expect(finding!.text).toContain('the left spar and the right spar');
  });
  it('written on another aircraft it is none of these parts', () => {
    const other = entry('aircraft', 'b', '2010-01-01', {
      registration: 'B',
      type: 'T',
      model: 'M',
      serial: '2',
      built: '2010-01-01',
    });
    const model = recordOf([other, done('b', '2021-12-01')]);
    expect(of(answers(model), 'left').standing).toEqual({ worst: 'overdue', best: 'overdue' });
    expect(codes(model)).toEqual([]);
  });
  it('an action that looks at the aircraft is done on the aircraft', () => {
    const d = rule({ looks_at: 'aircraft', first: { hours_h: 1300, is: 'at', of: 'aircraft', since: 'new' } });
    const model = recordOf([done('ac', '2021-12-01')]);
    expect(answers(model, d)[0]!.standing.worst).toBe('ended');
    expect(sideFindings([readDirective(d)], model)).toEqual([]);
  });
  it('a crack on a line of the other side still starts what a crack starts', () => {
    const look = rule({ first: { hours_h: 9000, is: 'at', of: 'part', since: 'new' } });
    const [action] = look.actions;
    const d: DirectiveInput = {
      ...look,
      actions: [
        action!,
        {
          ...action!,
          id: 'replace',
          does: 'replace',
          first: { before_further_flight: true },
          started_by: [{ action: 'look', finding: 'crack' }],
        },
      ],
      cases: [
        ...look.cases,
        { ...look.cases[0]!, name: 'none', action: 'replace', expect: { standing: 'not affected' } },
      ],
    };
    const model = recordOf(both({ finding: 'crack', method: 'left' }, onLine(3)));
    const right = answers(model, d).find((a) => a.subject === 'sp-right' && a.action.id === 'replace')!;
    expect(right.standing.worst).toBe('overdue');
  });
});

const rank = (s: (typeof STANDINGS)[number]) => STANDINGS.indexOf(s);
const body = fc.record({
  day: fc.integer({ min: 0, max: 700 }),
  first: fc.integer({ min: 100, max: 2500 }),
  repeat: fc.integer({ min: 20, max: 900 }),
});
const at = (n: number) => new Date(Date.UTC(2020, 0, 2 + n)).toISOString().slice(0, 10);
const ruleOf = (b: { first: number; repeat: number }) =>
  rule({
    first: { hours_h: b.first, is: 'at', of: 'part', since: 'new' },
    repeat: { hours_h: b.repeat, is: 'at', of: 'part', since: { last_look: [{ directive: 'T-1', action: 'look' }] } },
  });

describe('laws', () => {
  it('what is recorded on one side changes nothing on the other', () => {
    fc.assert(
      fc.property(body, fc.constantFrom('left', 'right'), fc.boolean(), (b, side, lined) => {
        const more = lined ? onLine(7) : {};
        const other = side === 'left' ? 'right' : 'left';
        const with_ = answers(recordOf([done(`sp-${side}`, at(b.day), { method: `${side} spar` }, more)]), ruleOf(b));
        const { warnings: _, working: __, ...a } = of(with_, other);
        const { warnings: ___, working: ____, ...was } = of(answers(recordOf(), ruleOf(b)), other);
        expect(a).toEqual(was);
      }),
      { numRuns: 60 },
    );
  });
  it('unproven work is treated as the worse of counting it and not, and could become the better', () => {
    let sooner = 0;
    fc.assert(
      fc.property(body, (b) => {
        const d = ruleOf(b);
        const left = (more: readonly object[]) => of(answers(recordOf(more), d), 'left');
        const doubtful = left([done('sp-left', at(b.day), { method: 'right spar' }, onLine(7))]);
        const [counted, not] = [left([done('sp-left', at(b.day), {}, onLine(7))]), left([])];
        const worst = Math.max(rank(counted.standing.worst), rank(not.standing.worst));
        expect(rank(doubtful.standing.worst)).toBe(worst);
        expect(rank(doubtful.standing.best)).toBe(Math.min(rank(counted.standing.best), rank(not.standing.best)));
        const least = Math.min(...[counted, not].flatMap((a) => a.treatAs.dueAt.total_s ?? []));
        expect(doubtful.treatAs.dueAt.total_s).toBe(least);
        if ((counted.treatAs.dueAt.total_s ?? 0) < (not.treatAs.dueAt.total_s ?? 0)) sooner++;
      }),
      { numRuns: 80, seed: 4 },
    );
    expect(sooner).toBeGreaterThan(3);
  });
});
