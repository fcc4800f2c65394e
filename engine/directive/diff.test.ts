import { describe, expect, it } from 'vitest';
import { type DirectiveInput, diffOf, readDirective } from './index.ts';
import { published } from './testing/published/index.ts';
import { rule } from './testing/rule.ts';

const H = (hours_h: number) => ({ hours_h, is: 'at' as const, of: 'part' as const, since: 'new' as const });
const base = rule({ first: H(3000), counts: { expression: 'hours.total', called: 'spar hours', unit: 'h' } });
const changed = (over: Partial<DirectiveInput>, action: object = {}) =>
  diffOf(
    readDirective(base),
    readDirective({ ...base, ...over, actions: base.actions.map((a) => ({ ...a, ...action })) }),
  );

describe('what a newer text changes, field by field', () => {
  it.each([
    ['title', changed({ title: 'Another' }), { where: 'The rule', what: 'Title', was: 'Test rule', is: 'Another' }],
    ['effective', changed({ effective: '2020-01-02' }), { what: 'Effective', was: '2020-01-01', is: '2020-01-02' }],
    [
      'models',
      changed({ affects: { models: [{ model: 'M' }] } }),
      { what: 'Whom it affects', was: 'Every one.', is: 'Model M, every serial.' },
    ],
    [
      'limit',
      changed({}, { first: H(2500) }),
      { where: 'Look', what: 'First due', was: '3 000 h of the part since new', is: '2 500 h of the part since new' },
    ],
    [
      'repeat',
      changed({}, { repeat: H(9000) }),
      { what: 'Then again', was: 'not again', is: '9 000 h of the part since new' },
    ],
    ['method', changed({}, { method: 'eddy current' }), { what: 'Method', was: null, is: 'eddy current' }],
    ['ferry', changed({}, { ferry: 'forbidden' }), { what: 'Ferry flight', was: null, is: 'forbidden' }],
    [
      'papers',
      changed({}, { missing_papers: { assume_use: 'tow' } }),
      { what: 'Missing papers', was: 'bounds', is: 'counted as tow' },
    ],
    [
      'formula',
      changed({}, { counts: { expression: 'hours.total + 2.0 * hours.tow', called: 'spar hours', unit: 'h' } }),
      { what: 'Counts', is: 'total hours, plus twice the hours in use "tow" (spar hours, h)' },
    ],
    [
      'case',
      changed({ cases: [{ ...base.cases[0]!, day: '2020-01-03' }] }),
      { where: 'Test cases', what: 'holds', is: 'look, 2020-01-03; must be not yet due' },
    ],
  ])('%s', (_, found, wanted) => {
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject(wanted);
  });
  it('an action that comes and one that goes', () => {
    const more = { ...base.actions[0]!, id: 'again', title: 'Look again' };
    const cases = [...base.cases, { ...base.cases[0]!, name: 'again', action: 'again' }];
    const longer = readDirective({ ...base, actions: [...base.actions, more], cases });
    expect(diffOf(readDirective(base), longer)[0]).toEqual({
      where: 'Look again',
      what: 'Action',
      was: null,
      is: 'asked',
    });
    expect(diffOf(longer, readDirective(base))[0]).toEqual({
      where: 'Look again',
      what: 'Action',
      was: 'asked',
      is: null,
    });
  });
  it('any published text differs in nothing from itself, and two texts differ the same both ways', () => {
    const all = published.map((d) => readDirective(d));
    for (const [i, d] of all.entries()) {
      expect(diffOf(d, structuredClone(d))).toEqual([]);
      const other = all[(i + 1) % all.length]!;
      const key = (x: { where: string; what: string }) => x.what;
      expect(diffOf(d, other).map(key).sort()).toEqual(diffOf(other, d).map(key).sort());
      expect(diffOf(d, other).length).toBeGreaterThan(2);
    }
  });
});
