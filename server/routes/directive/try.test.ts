import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { directive } from '../../../engine/index.ts';
import { W9, W14_2 } from '../../../examples/scenario/directives.ts';
import type { Sheet } from '../../../sheets/index.ts';
import { rootFolder } from '../../../store/index.ts';
import { testStore } from '../../../store/testing/database.ts';
import { gather } from '../../desk.ts';
import { createServer } from '../../server.ts';
import type { TryAnswer } from './try.ts';

let test: Awaited<ReturnType<typeof testStore>>;
let app: FastifyInstance;
const host = '127.0.0.1:4747';
const today = () => '2026-11-25';
const get = (url: string) => app.inject({ method: 'GET', url, headers: { host } });
const post = (url: string, payload: object) =>
  app.inject({ method: 'POST', url, payload, headers: { host, origin: `http://${host}` } });
beforeAll(async () => {
  test = await testStore();
  app = await createServer({ store: test.store, root: rootFolder(), today });
  await post('/api/demo', {});
});
afterAll(async () => {
  await app.close();
  await test.done();
});
const tried = async (document: unknown, more: object = {}, shop = 'demo'): Promise<Sheet> => {
  let answer = (await post(`/api/shops/${shop}/directives/try`, { document, ...more })).json() as TryAnswer;
  while (!answer.sheet) {
    expect(answer.done).toBeLessThanOrEqual(answer.of);
    answer = (await get(`/api/shops/${shop}/directives/try/${answer.task}`)).json() as TryAnswer;
  }
  return answer.sheet;
};
const say = (s: Sheet) => s.answer.map((x) => x.text).join('');
const rowsOf = (s: Sheet) =>
  s.blocks.flatMap((b) => (b.block === 'table' && b.title === 'What it would ask' ? b.rows : []));
const words = (s: Sheet, key: string) =>
  rowsOf(s).map((r) => (r.cells[key] && 'text' in r.cells[key] ? r.cells[key].text : ''));

/** The scenario's own rule with its limit cut to 7 000: an issue 3. */
const CUT: directive.DirectiveInput = {
  ...W14_2,
  issue: 3,
  issued: '2026-06-01',
  effective: '2026-07-01',
  actions: W14_2.actions.map((a) =>
    a.id === 'first_look'
      ? { ...a, first: { counted: 7000, is: 'at' }, credit: [{ directive: 'W-14', action: 'first_look' }] }
      : a,
  ),
  cases: [W14_2.cases[0]!, W14_2.cases[4]!],
};

describe('a directive tried on the fleet', () => {
  it('says in one sentence whom it affects, who falls due, what hangs on a paper; then it is adopted and stands just so', async () => {
    const last = await test.store.log.last('demo');
    const s = await tried(CUT);
    expect(await test.store.log.last('demo')).toBe(last);
    expect(say(s)).toMatch(/^10 of 12 affected, \d+ due this year, \d+ hangs? on a missing paper\.$/);
    expect(s.because).toMatch(/^Against W-14 issue 2: /);
    const shown = new Map(rowsOf(s).map((r) => [r.id, r.cells]));
    const r = await post('/api/shops/demo/directives', { text: JSON.stringify(CUT), by: 'M. Orne', on: today() });
    expect(r.statusCode, r.body).toBe(200);
    let held = 0;
    let due = 0;
    let papers = 0;
    for (const { id } of await test.store.aircraft.list('demo')) {
      const g = await gather({ store: test.store, today }, 'demo', id, {});
      const mine = g.assessments.filter((a) => a.directive === 'W-14' && a.standing.worst !== 'not affected');
      for (const a of mine) {
        const cells = shown.get(`${id}|${a.subject}|${a.action.id}|W-14`)!;
        expect(cells.standing).toMatchObject({ worst: a.standing.worst, best: a.standing.best });
        expect(a.issue).toBe(3);
        held++;
      }
      due += Number(
        mine.some(
          (a) =>
            ['due', 'overdue'].includes(a.standing.worst) ||
            (a.treatAs.dueAt.day ?? '9') <= '2026-12-31' ||
            o50(g, a) <= '2026-12-31',
        ),
      );
      papers += Number(mine.some((a) => a.papers.length > 0 || a.standing.worst !== a.standing.best));
    }
    expect(held).toBe(
      rowsOf(s).filter((x) => JSON.stringify(x.cells.standing).includes('"worst":"not affected"') === false).length,
    );
    expect(say(s)).toContain(`${due} due this year, ${papers} hang`);
    const again = await tried(CUT);
    expect(new Set(words(again, 'change'))).toEqual(new Set(['unchanged']));
  });
  it('one that affects nobody says why, by reason', async () => {
    const s = await tried({
      ...W9,
      number: 'W-90',
      affects: { models: [{ model: 'X1' }] },
      cases: [{ ...W9.cases[0], model: 'X1' }],
    });
    expect(say(s)).toBe('0 of 12 affected, 0 due this year, 0 hang on a missing paper.');
    expect(JSON.stringify(s.blocks.at(-1))).toMatch(/Model W4 is not named/);
    expect(s.because).toBe('Nothing of W-90 is in force now.');
  });
  it('whom it no longer affects is said, row by row, and so is what it supersedes', async () => {
    const s = await tried({
      ...W9,
      number: 'W-91',
      supersedes: [{ number: 'W-9' }],
      affects: { models: [{ model: 'W4' }] },
    });
    expect(new Set(words(s, 'change'))).toEqual(new Set(['newly affected', 'no longer affected']));
    const gone = rowsOf(s).filter((r) => 'text' in r.cells.change! && r.cells.change.text === 'no longer affected');
    for (const r of gone) {
      expect(r.cells.standing).toMatchObject({ worst: 'not affected', act: false });
      expect(r.cells.part).toMatchObject({ small: expect.stringMatching(/^W-9: /) });
    }
  });
  it('a part that no entry puts into an aircraft is treated as due, never left out', async () => {
    const s = await tried({ ...W9, number: 'W-92', actions: W9.actions.map((a) => ({ ...a, looks_at: 'rudder' })) });
    expect(rowsOf(s).length).toBeGreaterThan(5);
    for (const r of rowsOf(s)) {
      expect(r.cells.standing).toMatchObject({ worst: 'due', act: true });
      expect(r.cells.part).toMatchObject({ text: 'Rudder' });
    }
  });
  it('work done under an earlier issue that gets no credit is warned of; an issue that would not stand says so', async () => {
    const s = await tried({ ...CUT, issue: 4, actions: CUT.actions.map(({ credit: _, ...a }) => a) });
    expect(s.warnings.join()).toMatch(/gives no credit for that work/);
    expect((await tried(CUT)).warnings).toEqual([]);
    expect((await tried({ ...W14_2, issue: 2 })).warnings.join()).toMatch(/A later issue of W-14 is adopted/);
  });
  it('is taken as text, on a day of choice, and on a shop without aircraft', async () => {
    expect((await tried(JSON.stringify(CUT), { day: '2026-07-01' })).day).toBe('2026-07-01');
    await test.store.shops.open({ id: 'empty', name: 'Empty', invented: true });
    expect(say(await tried(CUT, {}, 'empty'))).toMatch(/nothing to try it on/);
  });
  it.each([
    ['demo', { document: { ...CUT, actions: [] } }, 422, 'foundation.document-invalid'],
    ['demo', { document: 'a: [' }, 422, 'foundation.document-invalid'],
    [
      'demo',
      { document: { ...CUT, cases: [{ ...CUT.cases[0], expect: { standing: 'overdue' } }, CUT.cases[1]] } },
      422,
      'directive.cases-fail',
    ],
    ['demo', { document: { sparwright: 'directive-question/1' } }, 422, 'directive.is-a-question'],
    ['nowhere', { document: CUT }, 404, 'store.shop-unknown'],
  ])('%s %#: is refused', async (shop, body, status, code) => {
    const r = await post(`/api/shops/${shop}/directives/try`, body);
    expect([r.statusCode, r.json().code]).toEqual([status, code]);
  });
  it('a trial that was stopped, or of another shop, is not found', async () => {
    const { task } = (await post('/api/shops/demo/directives/try', { document: CUT })).json() as TryAnswer;
    expect((await get(`/api/shops/own/directives/try/${task}`)).statusCode).toBe(404);
    await app.inject({
      method: 'DELETE',
      url: `/api/shops/demo/directives/try/${task}`,
      headers: { host, origin: `http://${host}` },
    });
    const r = await get(`/api/shops/demo/directives/try/${task}`);
    expect([r.statusCode, r.json().code]).toEqual([404, 'server.not-found']);
  });
});
const o50 = (g: Awaited<ReturnType<typeof gather>>, a: directive.Assessment): string => {
  const p50 = g.outlooks.get(`${a.subject}|${a.directive}|${a.action.id}`)?.treatAs.p50;
  return p50 && p50.is !== 'not before' ? p50.day : '9999';
};
