import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { published } from '../../../../engine/directive/testing/published/index.ts';
import { directive } from '../../../../engine/index.ts';
import { directives } from '../../../../examples/scenario/directives.ts';
import { at, drop, isList, isTable, type Json, move, type Path, put, tableOf } from '../../../parts/write/json.ts';
import { documentOf, draftOf, emptyDraft, nextAction, nextIssue } from './draft.ts';
import { complete, fitting, wordAt } from './facts.ts';
import { asKind, blank, KINDS, kindOf, withOneMore, without } from './limits.ts';
import { asOrigin, ORIGINS, originKind } from './origins.ts';
import { begin, write } from './reducer.ts';
import { renameAction, renameNumber } from './rename.ts';

const all = [...directives, ...published].map((d) => JSON.parse(JSON.stringify(d)) as Json);
const places = (v: Json, here: Path = []): Path[] => [
  here,
  ...(isList(v) ? v.flatMap((x, i) => places(x, [...here, i])) : []),
  ...(isTable(v) ? Object.entries(v).flatMap(([k, x]) => places(x, [...here, k])) : []),
];

describe('the form holds every document', () => {
  it('document -> form -> document is the identity', () => {
    expect(all.length).toBeGreaterThan(10);
    for (const d of all) expect(documentOf(draftOf(d))).toEqual(d);
  });
  it('and so it is for whatever JSON a person may drop', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (d) => {
        expect(() => documentOf(draftOf(d as Json))).not.toThrow();
      }),
    );
  });
  it('a figure of a forbidden name does not stand in the way of the others', () => {
    const facts = [{ name: '__proto__', value: 1 }];
    expect(JSON.stringify(documentOf({ cases: [{ facts }] }))).toBe('{"cases":[{"facts":{"\'__proto__\'":1}}]}');
  });
  it('writing at any place what stands there changes nothing; undo takes one change back', () => {
    for (const d of all) {
      const draft = draftOf(d);
      for (const path of places(draft).slice(1)) expect(put(draft, path, at(draft, path))).toEqual(draft);
      const typed = write(begin(draft), { does: 'put', path: ['title'], value: 'x' });
      const more = write(typed, { does: 'put', path: ['title'], value: 'xy' });
      expect(more.draft.title).toBe('xy');
      expect(write(more, { does: 'undo' }).draft).toEqual(draft);
    }
  });
});

describe('what is taken away and moved', () => {
  it('an optional list goes with its last item, a needed one stays', () => {
    const d: Json = { forbids_fitting: ['a'], actions: [{ id: 'x' }] };
    expect(drop(d, ['forbids_fitting', 0])).toEqual({ actions: [{ id: 'x' }] });
    expect(drop(d, ['actions', 0])).toEqual({ forbids_fitting: ['a'], actions: [] });
  });
  it('there and back is the same list; beyond the ends nothing moves', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer(), { minLength: 1 }),
        fc.nat(),
        fc.integer({ min: -3, max: 30 }),
        (list, n, to) => {
          const from = n % list.length;
          const moved = move({ list }, ['list'], from, to);
          const back = to < 0 || to >= list.length ? moved : move(moved, ['list'], to, from);
          expect(back).toEqual({ list });
        },
      ),
    );
  });
});

describe('limits and origins', () => {
  const limits = all.flatMap((d) =>
    places(d)
      .map((p) => at(d, p))
      .filter((v) => isTable(v) && kindOf(v) !== null && directive.zLimit.safeParse(v).success),
  ) as Json[];
  it('every limit of the examples is of one kind, and stays as it is when its own kind is chosen', () => {
    expect(limits.length).toBeGreaterThan(20);
    for (const l of limits) expect(asKind(l, kindOf(l)!)).toEqual(l);
  });
  it('any kind may be chosen for any limit, and what comes out is of that kind', () => {
    for (const l of [undefined, ...limits]) for (const { value } of KINDS) expect(kindOf(asKind(l, value))).toBe(value);
  });
  it('hours become landings with the same figure, side and origin', () => {
    const hours = { hours_h: 400, is: 'more than', of: 'aircraft', since: 'effective' };
    expect(asKind(hours, 'landings')).toEqual({ landings: 400, is: 'more than', of: 'aircraft', since: 'effective' });
    expect(asKind(hours, 'months')).toEqual({ months: 400, is: 'more than', since: 'effective' });
  });
  it('a limit in a group comes out of it as it went in', () => {
    for (const l of limits) {
      const kind = kindOf(l)!;
      if (kind === 'first_of' || kind === 'later_of') continue;
      const group = asKind(l, 'first_of');
      expect(without(group, 'first_of', 1)).toEqual(l);
      expect(without(withOneMore(group, 'first_of'), 'first_of', 2)).toEqual(group);
    }
  });
  it('a filled-in blank of every kind reads', () => {
    const filled = (v: Json): Json =>
      isList(v)
        ? v.map(filled)
        : isTable(v)
          ? Object.fromEntries(
              Object.entries(v).map(([k, x]) => [
                k,
                x !== ''
                  ? filled(x)
                  : k === 'on'
                    ? '2030-01-01'
                    : k === 'when'
                      ? 'hours.total > 1.0'
                      : k === 'next_inspection'
                        ? 'annual'
                        : 5,
              ]),
            )
          : v;
    for (const { value } of KINDS) expect(directive.zLimit.safeParse(filled(blank(value))).success, value).toBe(true);
  });
  it('an origin keeps what stands in it when its own kind is chosen', () => {
    for (const { value } of ORIGINS) {
      const o = asOrigin(undefined, value, 'W-1', 'look');
      expect(originKind(o)).toBe(value);
      expect(asOrigin(o, value, 'other', 'other')).toEqual(o);
    }
  });
});

describe('renaming', () => {
  it('there and back is the identity, and no limit loses what it counts from', () => {
    for (const d of all) {
      const draft = draftOf(d);
      const id = (draft.actions as { id: string }[])[0]!.id;
      const renamed = renameAction(draft, 0, 'quite_another');
      expect(renameAction(renamed, 0, id)).toEqual(draft);
      expect(directive.readDirective(documentOf(renamed)).actions[0]!.id).toBe('quite_another');
      const numbered = renameNumber(draft, 'ZZ-99');
      expect(renameNumber(numbered, draft.number as string)).toEqual(draft);
      expect(directive.readDirective(documentOf(numbered)).number).toBe('ZZ-99');
    }
  });
});

describe('another rule with an action of the same short word', () => {
  it('keeps its own', () => {
    const other = { directive: 'W-9', action: 'look' };
    const own = { directive: 'W-1', action: 'look' };
    const draft = { number: 'W-1', actions: [{ id: 'look', credit: [other, own], ended_by: [{ action: 'look' }] }] };
    expect(renameAction(draft, 0, 'first_look').actions).toEqual([
      {
        id: 'first_look',
        credit: [other, { ...own, action: 'first_look' }],
        ended_by: [{ action: 'first_look' }],
      },
    ]);
    expect(renameNumber(draft, 'W-2').actions).toMatchObject([{ credit: [other, { directive: 'W-2' }] }]);
  });
});

describe('what a new rule begins with', () => {
  it('lacks only what a person must say', () => {
    const d = documentOf(emptyDraft('2026-01-05'));
    const missing = directive.zDirectiveDocument.safeParse(d).error?.issues.map((i) => i.path.join('.'));
    expect(missing).toEqual(['number', 'title', 'authority', 'reference', 'actions.0.title', 'actions.0.looks_at']);
  });
  it('a next issue supersedes the one it starts from and asks for its dates', () => {
    const next = documentOf(nextIssue(all[1]!));
    expect(next).toMatchObject({ number: 'W-14', issue: 3, supersedes: [{ number: 'W-14', issue: 2 }] });
    expect(next.issued ?? next.effective).toBeUndefined();
  });
  it('a further action bears a word that no other bears', () => {
    const draft = tableOf({ actions: [{ id: 'action_2' }] });
    expect(nextAction(draft).id).toBe('action_3');
  });
});

describe('names in a formula', () => {
  const names = [
    { name: 'hours.total', meaning: 'total hours' },
    { name: 'hours.tow', meaning: 'hours of towing' },
    { name: 'landings.tow', meaning: 'landings of towing' },
  ];
  it('finds the word at the caret and completes it alone', () => {
    expect(wordAt('2.0 * landi + 1', 11)).toEqual({ start: 6, end: 11, typed: 'landi' });
    expect(complete('2.0 * landi + 1', 11, 'landings.tow')).toEqual({ text: '2.0 * landings.tow + 1', caret: 18 });
    expect(complete('hours.to + 1', 5, 'hours.total')).toEqual({ text: 'hours.total + 1', caret: 11 });
    expect(wordAt('1 + ', 4).typed).toBe('');
  });
  it('names that begin so come first, then those in which it stands', () => {
    expect(fitting(names, 'ho').map((f) => f.name)).toEqual(['hours.total', 'hours.tow']);
    expect(fitting(names, 'to').map((f) => f.name)).toEqual(['hours.total', 'hours.tow', 'landings.tow']);
    expect(fitting(names, 'towing').map((f) => f.name)).toEqual(['hours.tow', 'landings.tow']);
    expect(fitting(names, '')).toEqual([]);
  });
  it('whatever is typed, the completed text holds the name where the caret stands', () => {
    fc.assert(
      fc.property(fc.string(), fc.nat(), (text, n) => {
        const done = complete(text, n % (text.length + 1), 'hours.tow');
        expect(done.text.slice(0, done.caret).endsWith('hours.tow')).toBe(true);
      }),
    );
  });
});
