import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { problemOf } from '../../../api/directives.ts';
import { figureOf, itemsOf, shownFigure } from '../../../parts/write/figures.ts';
import { forget, keepIn, keptFrom, keptIn } from '../../../parts/write/keep.ts';
import { readText } from '../../../parts/write/read-text.ts';
import { caseFromLife, factsAsked } from './case-from-life.ts';
import { placeInWords } from './places.ts';
import { refuseQuestion } from './read-rule.ts';
import { changesOf, daysInWords, stateOf } from './said.ts';
import { startFrom } from './start-from.ts';

describe('figures as a person writes them', () => {
  it('what is shown reads as what it was', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e11, max: 1e11 }), fc.integer({ min: 0, max: 999 }), (n, part) => {
        const value = Number(`${n}.${part}`);
        expect(figureOf(shownFigure(value))).toBe(value);
      }),
    );
  });
  it('blanks between thousands say nothing; what is no figure stays as it was typed', () => {
    for (const [text, value] of [
      ['9 000', 9000],
      ['12.50', 12.5],
      ['4,5', '4,5'],
      ['many', 'many'],
      ['1e5', '1e5'],
      ['−3', -3],
    ])
      expect(figureOf(text as string)).toBe(value);
    expect(itemsOf(' 0612, 0615;\n7 ,')).toEqual(['0612', '0615', '7']);
  });
});

describe('what is wrong, in words', () => {
  const p = {
    path: 'actions.0.first.first_of.1.months',
    given: 'nothing yet',
    allowed: 'a number',
    remedy: 'Fill it in',
  };
  it('an empty field is told apart from a wrong one', () => {
    expect(problemOf(p)).toEqual({ path: p.path, missing: true, says: 'Fill it in: a number.' });
    expect(problemOf({ ...p, given: '"many"', remedy: 'Correct it', position: 3 })).toEqual({
      path: p.path,
      missing: false,
      says: '"many". Correct it: a number.',
      position: 3,
    });
    const small = { ...p, given: '-1', remedy: 'Correct it', allowed: 'Too small: expected number to be >=1' };
    expect(problemOf(small).says).toBe('-1. Correct it: at least 1.');
    expect(problemOf({ ...small, allowed: 'Too big: expected string to have <=200 characters' }).says).toBe(
      '-1. Correct it: at most 200 characters.',
    );
    const lacks = {
      path: 'actions.0.id',
      given: 'action "x" has no test case',
      allowed: 'a rule that is whole',
      remedy: 'Write at least one case',
    };
    expect(problemOf(lacks)).toMatchObject({ path: 'cases', missing: true });
    expect(problemOf({ ...lacks, given: 'action "first_look" has no test case' }).says).toBe(
      'action "first look" has no test case. Write at least one case.',
    );
  });
  it('a place is named as the form names it', () => {
    expect(placeInWords(p.path)).toBe('Action 1, first due, limit 2, months');
    expect(placeInWords('cases.1.facts.landings.tow')).toBe('Case 2, figures, landings.tow');
    expect(placeInWords('cases.0.facts_at.effective.facts.hours.total')).toBe(
      'Case 1, earlier figures, effective, figures, hours.total',
    );
    expect(placeInWords('')).toBe('The document');
  });
  const checked = (problems: string[], passes: boolean[]) => ({
    problems: problems.map((given) => problemOf({ ...p, given })),
    readBack: null,
    cases: passes.map((x, i) => ({ name: String(i), passes: x, because: '' })),
    factNames: [],
  });
  it('only a rule that is whole and whose cases come out is ready', () => {
    expect(stateOf('W-1', undefined).ready).toBe(false);
    expect(stateOf('W-1', checked(['nothing yet', '7 x'], [true])).because).toBe(
      'W-1 is not whole yet: 1 thing is still to do, 1 does not fit.',
    );
    expect(stateOf('W-1', checked([], [true, false])).because).toBe('1 of 2 cases does not come out as written.');
    expect(stateOf('W-1', checked([], [true, true]))).toMatchObject({ ready: true, because: '' });
  });
});

describe('what changed, in sentences', () => {
  const a = [{ heading: 'Look', sentences: ['one', 'two'] }];
  const b = [{ heading: 'Look', sentences: ['one', 'three'] }];
  it('names what went and what came, and nothing that stayed', () => {
    expect(changesOf(a, b)).toEqual({
      gone: [{ heading: 'Look', sentences: ['two'] }],
      come: [{ heading: 'Look', sentences: ['three'] }],
    });
    expect(changesOf(a, a)).toEqual({ gone: [], come: [] });
  });
  it('says days as a reader writes them, and leaves what is none', () => {
    expect(daysInWords('from 2024-04-03 on')).toBe('from 3 Apr 2024 on');
    expect(daysInWords('by 2024-09-30')).toBe('by 30 Sep 2024');
    expect(daysInWords('2024-99-99')).toBe('2024-99-99');
  });
});

describe('what this browser keeps', () => {
  const box = (full = false) => {
    const held = new Map<string, string>();
    return {
      getItem: (k: string) => held.get(k) ?? null,
      setItem: (k: string, v: string) => {
        if (full) throw new Error('full');
        held.set(k, v);
      },
      removeItem: (k: string) => void held.delete(k),
    };
  };
  const kept = { document: { title: 'x' }, at: '2026-11-25T15:43:00.000Z', tab: 'a', entry: 7 };
  it('comes back as it went in, and is gone once forgotten', () => {
    const b = box();
    expect(keepIn(b, 'k', kept)).toBe(true);
    expect(keptIn(b, 'k')).toEqual(kept);
    forget(b, 'k');
    expect(keptIn(b, 'k')).toBeNull();
  });
  it('a full browser says so; what does not read is nothing', () => {
    expect(keepIn(box(true), 'k', kept)).toBe(false);
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (t) => {
        expect(() => keptFrom(t)).not.toThrow();
      }),
    );
    for (const t of ['null', '{', '[]', '{"at":1}']) expect(keptFrom(t)).toBeNull();
  });
});

describe('what the form opens with', () => {
  const kept = { document: { title: 'kept' }, at: '2026-11-25T15:43:00.000Z', tab: 'a', entry: 7 };
  const server = { number: 'W-1', on: '2026-11-02', by: 'M. Orne', entry: 9, document: { title: 'server' } };
  const sources = { kept, server, adopted: { number: 'W-1', issue: 2 }, number: 'W-1', day: '2026-11-25' };
  it("this browser's copy, else the server's, else the issue in force, else nothing", () => {
    expect(startFrom(sources).start).toEqual({ draft: { title: 'kept' }, entry: 7 });
    expect(startFrom({ ...sources, kept: null })).toMatchObject({
      start: { entry: 9 },
      note: expect.stringContaining('M. Orne kept on the server on 2 Nov 2026'),
    });
    expect(startFrom({ ...sources, kept: null, server: null }).start.draft).toMatchObject({ issue: 3 });
    expect(startFrom({ ...sources, kept: null, server: null, adopted: null }).start.draft).toMatchObject({
      number: 'W-1',
      issue: 1,
    });
  });
});

describe('a case from a real life', () => {
  it('asks for the totals and what the formulas name, and takes the higher figure where papers are missing', () => {
    const draft = {
      actions: [{ counts: { expression: 'hours.total + 2.0 * landings.tow' } }],
      affects: { condition: 'kit.strong.hours > 0.0' },
    };
    expect(factsAsked(draft)).toBe('hours.total + landings.total + landings.tow + kit.strong.hours');
    const part = {
      id: 'spar:1',
      name: 'Left spar',
      identity: '',
      low: 1,
      high: 2,
      text: '',
      because: '',
      part_number: null,
      facts: [{ name: 'landings.tow', meaning: '', text: '', low: 10, high: 30 }],
    };
    const shown = {
      aircraft: 'ZQ-AAA',
      model: 'W4',
      serial: null,
      built: null,
      day: '2026-11-25',
      words: '',
      unit: 'h',
      problem: null,
      parts: [part],
      empty: '',
    };
    expect(caseFromLife(shown as never, part, 'look')).toEqual({
      name: 'ZQ-AAA, Left spar, the higher figures that its papers allow',
      action: 'look',
      day: '2026-11-25',
      model: 'W4',
      facts: [{ name: 'landings.tow', value: 30 }],
      expect: {},
    });
  });
});

describe('a document that is dropped', () => {
  it('reads as YAML and as JSON; what is none is told in words', async () => {
    expect(await readText('number: W-1\nactions: []', 'directive')).toEqual({ number: 'W-1', actions: [] });
    expect(await readText('{"number":"W-1"}', 'directive')).toEqual({ number: 'W-1' });
    await expect(readText('a: [', 'directive')).rejects.toThrow(/does not read as a document/);
    await expect(readText('just words', 'directive')).rejects.toThrow(/holds no directive/);
    await expect(readText('sparwright: directive-question/1', 'directive', refuseQuestion)).rejects.toThrow(
      /one item of its list/,
    );
  });
});
