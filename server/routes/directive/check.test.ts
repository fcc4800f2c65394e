import { Environment } from '@marcbachmann/cel-js';
import fc from 'fast-check';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { directive } from '../../../engine/index.ts';
import { W9, W14_2 } from '../../../examples/scenario/directives.ts';
import type { FormulaShown } from '../../../sheets/index.ts';
import { rootFolder } from '../../../store/index.ts';
import { testStore } from '../../../store/testing/database.ts';
import { createServer } from '../../server.ts';

let test: Awaited<ReturnType<typeof testStore>>;
let app: FastifyInstance;
const host = '127.0.0.1:4747';
const post = (url: string, payload: object) =>
  app.inject({ method: 'POST', url, payload, headers: { host, origin: `http://${host}` } });
beforeAll(async () => {
  test = await testStore();
  app = await createServer({ store: test.store, root: rootFolder(), today: () => '2026-11-25' });
  await post('/api/demo', {});
});
afterAll(async () => {
  await app.close();
  await test.done();
});

const check = async (document: unknown): Promise<directive.DraftChecked> => {
  const r = await post('/api/shops/demo/directives/check', { document });
  expect(r.statusCode).toBe(200);
  return r.json();
};
const value = async (expression: string, aircraft: string, more: object = {}): Promise<FormulaShown> => {
  const r = await post('/api/shops/demo/directives/value', { expression, aircraft, ...more });
  expect(r.statusCode, r.body).toBe(200);
  return r.json();
};
const paths = (c: directive.DraftChecked) => c.problems.map((p) => p.path);

describe('a draft while it is typed', () => {
  it('that is whole has no problem, is read back, and its cases come out', async () => {
    const c = await check(W14_2);
    expect(c.problems).toEqual([]);
    expect(c.readBack?.map((r) => r.heading)).toContain('Whom it affects');
    expect(c.cases.map((x) => x.passes)).toEqual([true, true, true, true, true]);
    expect(c.cases[1]).toMatchObject({ counted: 9600, standing: 'soon due', left: 10 });
  });
  it('is taken as text too', async () => expect((await check(JSON.stringify(W9))).problems).toEqual([]));
  it('names each place that is not filled', async () => {
    const { title: _, ...rest } = W14_2;
    const [first, ...others] = W14_2.actions;
    const c = await check({
      ...rest,
      effective: '',
      actions: [{ ...first, first: { hours_h: 'many', is: 'at', of: 'part', since: 'new' } }, ...others],
    });
    expect(paths(c)).toEqual(expect.arrayContaining(['title', 'effective', 'actions.0.first.hours_h']));
    expect(c.problems.find((p) => p.path === 'title')).toEqual({
      path: 'title',
      given: 'nothing yet',
      allowed: 'text',
      remedy: 'Fill it in',
    });
    expect(c.readBack).toBeNull();
  });
  it('says what its rule lacks as a whole, with the place in a formula', async () => {
    const [first, second] = W14_2.actions;
    const c = await check({
      ...W14_2,
      actions: [
        { ...first, counts: { ...first!.counts!, expression: 'landings.total + landings.tows' } },
        { ...second, started_by: [{ action: 'nothing', finding: 'crack' }] },
      ],
    });
    expect(c.problems).toContainEqual(
      expect.objectContaining({
        path: 'actions.0.counts.expression',
        position: 18,
        allowed: expect.stringContaining('landings.tow,'),
      }),
    );
    expect(paths(c)).toContain('actions.1.started_by.0.action');
    expect(c.readBack).toBeNull();
  });
  it('runs its cases one by one, whatever the others lack', async () => {
    const [a, b, ...rest] = W14_2.cases;
    const c = await check({
      ...W14_2,
      cases: [
        { ...a, day: 'soon' },
        b,
        { ...rest[0], expect: { standing: 'due' } },
        { name: 'x', action: 'none', day: '2026-01-01', facts: {}, expect: { standing: 'due' } },
      ],
    });
    expect(c.cases.map((x) => x.passes)).toEqual([false, true, false, false]);
    expect(c.cases[0]?.because).toMatch(/day/);
    expect(c.cases[2]).toMatchObject({ standing: 'overdue', because: 'stands "overdue", not "due"' });
    expect(c.cases[3]?.because).toBe('cannot run yet: there is no action "none"');
    expect(c.readBack).not.toBeNull();
  });
  it('is never refused', async () => {
    for (const nonsense of [
      null,
      17,
      'a: [',
      '',
      [],
      {},
      { actions: 'torn', cases: [null, 3, {}] },
      { cases: { a: 1 } },
    ]) {
      const c = await check(nonsense);
      expect(c.problems.length).toBeGreaterThan(0);
      expect(c.factNames.map((f) => f.name)).toContain('landings.tow');
    }
  });
  it('offers the facts of this shop and of the draft, with meaning and unit', async () => {
    const c = await check({ ...W14_2, cases: [{ ...W14_2.cases[0], facts: { 'hours.banner': 3 } }] });
    expect(c.factNames).toContainEqual({ name: 'hours.banner', meaning: 'hours in use "banner"', unit: 'h' });
    expect(c.factNames).toContainEqual({
      name: 'inspections.annual',
      meaning: 'number of annual inspections',
      unit: 'count',
    });
    expect(new Set(c.factNames.map((f) => f.name)).size).toBe(c.factNames.length);
  });
  it('nothing that is left out of a whole draft is a fault of the program, and something is said of it', async () => {
    const keys = Object.keys(W14_2).filter((k) => !['unsafe_condition', 'supersedes'].includes(k));
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...keys), fc.anything({ maxDepth: 2 }), async (key, junk) => {
        const c = await check({
          ...W14_2,
          [key]: junk === undefined ? null : JSON.parse(JSON.stringify(junk) ?? 'null'),
        });
        return Array.isArray(c.cases) && c.factNames.length > 0;
      }),
      { numRuns: 60 },
    );
  });
});

/** The figures of the scenario: landings as read, tow landings as the books state them (lost volume 3: none to all of its 900). */
const RIGHT = { 'landings.total': 5118, 'landings.tow': 850 + 412 };
const FORMULAS = [
  'landings.total + 2.0 * landings.tow',
  'landings.tow / 2.0 - 31.0',
  'floor(landings.total / 100.0) * 3.0',
  'max(landings.tow, 1000.0) - min(landings.total, 5000.0)',
  'landings.tow > 1000.0 ? landings.total : 0.0',
];
const library = new Environment().registerVariable({
  name: 'landings',
  schema: { total: 'double', tow: 'double' },
});
for (const [name, of] of [
  ['min', Math.min],
  ['max', Math.max],
] as const)
  library.registerFunction(`${name}(double, double): double`, (a: number, b: number) => of(a, b));
library.registerFunction('floor(double): double', (a: number) => Math.floor(a));

describe('a formula on a chosen aircraft', () => {
  it('stands on each part that the action looks at: the lost book leaves 900 landings open, worked by hand', async () => {
    const v = await value('landings.total + 2.0 * landings.tow', 'aircraft:0612', { part: 'inboard_spar' });
    expect(v).toMatchObject({
      unit: 'landings',
      problem: null,
      words: 'total landings, plus twice the landings in use "tow"',
    });
    // Left, from ZQ-HRN: 2 960 there in 2015, 2 468 since; towing 400 + 412 on paper, 0 to 900 in the lost volume.
    expect(v.parts[0]).toMatchObject({ id: 'spar:0447-L', low: 5428 + 2 * 812, high: 5428 + 2 * 1712 });
    expect(v.parts[0]!.because).toMatch(/volume 3/);
    expect(v.parts[1]).toMatchObject({ id: 'spar:0612-R', low: 7642, high: 7642, identity: 'stamp 1188' });
    expect(v.parts[1]!.text.replaceAll('\u202f', ' ')).toBe('7 642 landings');
  });
  it.each(FORMULAS)('%s: as the expression library has it on settled facts', async (expression) => {
    const v = await value(expression, 'aircraft:0612', { part: 'spar:0612-R' });
    const facts = { landings: { total: RIGHT['landings.total'], tow: RIGHT['landings.tow'] } };
    const expected = Number(library.evaluate(expression, facts));
    expect(v.parts.map((p) => [p.low, p.high])).toEqual([[expected, expected]]);
  });
  it('a condition holds, does not, or may', async () => {
    const asked = async (expression: string, part: string) =>
      (await value(expression, 'aircraft:0612', { part, is: 'condition' })).parts.map((p) => p.text);
    expect(await asked('landings.tow > 1000.0', 'spar:0612-R')).toEqual(['holds']);
    expect(await asked('landings.tow > 2000.0', 'spar:0612-R')).toEqual(['does not hold']);
    expect(await asked('landings.tow > 1000.0', 'spar:0447-L')).toEqual(['may hold: the papers do not settle it']);
  });
  it('on a past day, on the aircraft itself, in a unit that is asked for', async () => {
    const v = await value('hours.total', 'aircraft:0612', { day: '2015-06-01', unit: 'count' });
    expect(v.parts).toMatchObject([{ id: 'aircraft:0612', low: 2690, high: 2690 }]);
    expect(v.unit).toBe('count');
  });
  it('names the place and the nearest fact of one that is not known', async () => {
    const v = await value('landings.total + landing.tow', 'aircraft:0612', { part: 'inboard_spar' });
    expect(v.parts).toEqual([]);
    expect(v.problem).toMatchObject({ position: 18, allowed: expect.stringMatching(/^for example landings\.tow/) });
    for (const [expression, position] of [
      ['hours.total +', 14],
      ['[1]', 1],
      ['1 && 2', 1],
    ] as const)
      expect((await value(expression, 'aircraft:0612')).problem, expression).toMatchObject({
        position,
      });
    expect((await value('', 'aircraft:0612')).problem).not.toBeNull();
  });
  it('a division by zero on this aircraft is said, not refused', async () => {
    const v = await value('hours.total / hours.patrol', 'aircraft:0612');
    expect(v.parts[0]).toMatchObject({ low: null, text: 'no value', because: expect.stringMatching(/zero/) });
  });
  it('what the record knows nothing of counts as zero, and says so', async () => {
    const v = await value('since.lightning.hours + 5', 'aircraft:0612');
    expect(v.parts[0]).toMatchObject({
      low: 5,
      because: expect.stringMatching(/since\.lightning\.hours: counted as zero/),
    });
  });
  it('a part that nobody wrote down is said', async () => {
    const v = await value('hours.total', 'aircraft:0612', { part: 'rudder' });
    expect(v.parts).toEqual([]);
    expect(v.empty).toBe('No entry says that ZQ-LMB has a part "rudder".');
  });
  it.each([
    [{ expression: 'hours.total', aircraft: 'nobody' }, 404, 'server.not-found'],
    [{ expression: 'hours.total', aircraft: 'aircraft:0612', day: 'soon' }, 422, 'foundation.document-invalid'],
    [{ aircraft: 'aircraft:0612' }, 422, 'foundation.document-invalid'],
  ])('%o is refused', async (body, status, code) => {
    const r = await post('/api/shops/demo/directives/value', body);
    expect([r.statusCode, r.json().code]).toEqual([status, code]);
  });
});

it('words to choose from: the language, and what this shop has on record', async () => {
  const r = await app.inject({ method: 'GET', url: '/api/shops/demo/directives/words', headers: { host } });
  const words = r.json();
  expect(words).toMatchObject({
    does: expect.arrayContaining(['inspect', 'replace']),
    ranks: expect.arrayContaining(['advice']),
    models: ['W2-A', 'W4', 'W4-T'],
    parts: expect.arrayContaining(['aircraft', 'inboard_spar', 'walkway_doubler', 'wing']),
    events: expect.arrayContaining(['ground_damage']),
    inspections: expect.arrayContaining(['annual']),
    part_numbers: expect.arrayContaining(['W4-5710']),
  });
  expect(words.uses).toContain('tow');
  expect(words.directives).toContainEqual(
    expect.objectContaining({
      number: 'W-14',
      issue: 2,
      actions: [expect.objectContaining({ id: 'first_look' }), expect.anything()],
    }),
  );
  expect(words.aircraft).toContainEqual({ id: 'aircraft:0612', registration: 'ZQ-LMB', model: 'W4-T' });
});
