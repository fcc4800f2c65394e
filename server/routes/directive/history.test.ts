import fc from 'fast-check';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { published } from '../../../engine/directive/testing/published/index.ts';
import { addDays, type Day, directive } from '../../../engine/index.ts';
import { directives, W9, W14_2 } from '../../../examples/scenario/directives.ts';
import type { Sheet } from '../../../sheets/index.ts';
import { rootFolder } from '../../../store/index.ts';
import { testStore } from '../../../store/testing/database.ts';
import { gather } from '../../desk.ts';
import { createServer } from '../../server.ts';
import { parseText } from './text.ts';

let test: Awaited<ReturnType<typeof testStore>>;
let app: FastifyInstance;
const host = '127.0.0.1:4747';
const today = () => '2026-11-25';
const headers = { host, origin: `http://${host}` };
const get = (url: string) => app.inject({ method: 'GET', url, headers: { host } });
const post = (url: string, payload: object) => app.inject({ method: 'POST', url, payload, headers });
const api = '/api/shops/demo/directives';
beforeAll(async () => {
  test = await testStore();
  app = await createServer({ store: test.store, root: rootFolder(), today });
  await post('/api/demo', {});
});
afterAll(async () => {
  await app.close();
  await test.done();
});
const adopt = (document: object, shop = 'demo') =>
  post(`/api/shops/${shop}/directives`, { text: JSON.stringify(document), by: 'M. Orne', on: '2026-11-01' });
const withdraw = (number: string, more: object) =>
  post(`${api}/${encodeURIComponent(number)}/withdraw`, {
    because: 'The authority took it back',
    by: 'M. Orne',
    ...more,
  });
const held = async (day: string, aircraft = 'aircraft:0612') =>
  new Set(
    (await gather({ store: test.store, today }, 'demo', aircraft, { day })).assessments.map(
      (a) => `${a.directive}/${a.issue}`,
    ),
  );
const table = (s: Sheet, title: string) => {
  const found = s.blocks.find((b) => b.block === 'table' && b.title.startsWith(title));
  return found?.block === 'table' ? found.rows.map((r) => r.cells) : [];
};

describe('a directive that the shop takes back', () => {
  it('stands until the day and not from it on; what it had superseded stands again; letters and pages follow', async () => {
    expect(await held('2026-11-19')).toContain('W-14/2');
    const r = await withdraw('W-14', { issue: 2, on: '2026-11-20' });
    expect(r.json()).toEqual({ number: 'W-14', issue: 2, on: '2026-11-20' });
    expect(await held('2026-11-19')).toContain('W-14/2');
    expect(await held('2026-11-19')).not.toContain('W-14/1');
    for (const day of ['2026-11-20', '2026-11-25']) {
      expect(await held(day), day).not.toContain('W-14/2');
      expect(await held(day), day).toContain('W-14/1');
    }
    const letter = (await get('/api/shops/demo/letters/preview?aircraft=aircraft:0612&directive=W-14')).body;
    expect(letter).not.toContain('issue 2');
  });
  it('as a whole number: no issue of it stands', async () => {
    expect((await withdraw('W-14', { on: '2026-11-22' })).statusCode).toBe(200);
    expect([...(await held('2026-11-21'))]).toContain('W-14/1');
    expect([...(await held('2026-11-22'))].filter((x) => x.startsWith('W-14'))).toEqual([]);
    const s = (await get(`${api}/W-14`)).json() as Sheet;
    expect(s.warnings.join()).toMatch(/This issue is withdrawn \(20 Nov 2026, M\. Orne: The authority took it back\)/);
    expect(table(s, 'All its issues').map((c) => c.state)).toMatchObject([
      { text: 'withdrawn' },
      { text: 'withdrawn' },
    ]);
  });
  it('is as it was to whoever asks what was known before', async () => {
    const before = (await test.store.log.read('demo', { kinds: ['directive_withdrawn'] }))[0]!.number - 1;
    const g = await gather({ store: test.store, today }, 'demo', 'aircraft:0612', { upTo: before });
    expect(new Set(g.assessments.map((a) => `${a.directive}/${a.issue}`))).toContain('W-14/2');
  });
  it('makes the answers that were stored stale', async () => {
    const [a] = (await gather({ store: test.store, today }, 'demo', 'aircraft:0612', {})).assessments.filter(
      (x) => x.directive === 'W-9',
    );
    await test.store.answers.put('demo', [
      {
        part: 'probe',
        directive: 'W-9',
        issue: 1,
        action: 'look_again',
        entry: 1,
        program: 'x',
        day: '2026-11-25' as Day,
        result: a,
      },
    ]);
    const stale = async () =>
      (await test.store.answers.list('demo', { program: 'x', parts: ['probe'] })).map((x) => x.stale);
    expect(await stale()).toEqual([false]);
    expect((await withdraw('W-9', { on: '2027-06-01' })).statusCode).toBe(200);
    expect(await stale()).toEqual([true]);
    expect(await held('2026-11-25')).toContain('W-9/1');
  });
  it.each([
    ['W-14', { on: '2026-11-23' }, 422, 'directive.withdrawn-already'],
    ['W-14', { issue: 2, on: '2026-12-01' }, 422, 'directive.withdrawn-already'],
    ['W-14', { issue: 9, on: '2026-12-01' }, 404, 'directive.not-adopted'],
    ['W-99', { on: '2026-12-01' }, 404, 'directive.not-adopted'],
    ['W-21', { because: ' ' }, 422, 'foundation.document-invalid'],
  ])('%s %o is refused', async (number, more, status, code) => {
    const r = await withdraw(number, more);
    expect([r.statusCode, r.json().code]).toEqual([status, code]);
  });
  it('earlier than was said before is taken; a day is not needed', async () => {
    expect((await withdraw('W-9', { on: '2027-03-01' })).json()).toMatchObject({ on: '2027-03-01' });
    expect((await withdraw('S-3', {})).json()).toMatchObject({ on: today() });
  });
});

describe('a new issue', () => {
  const next = (issue: number, more: Partial<directive.DirectiveInput> = {}) => ({
    ...W9,
    number: 'W-60',
    issue,
    ...more,
  });
  it('shows field by field what it changes, and the history of all', async () => {
    await adopt(next(1));
    const [action] = W9.actions;
    const first = { hours_h: 1500, is: 'at', of: 'part', since: 'new' };
    const changed = next(2, {
      title: 'Doubler, tighter',
      effective: '2026-12-24',
      actions: [{ ...action!, first: first as never }],
    });
    const cases = [
      { ...W9.cases[0]!, day: '2027-06-01', facts: { 'hours.total': 900 } },
      { ...W9.cases[1]!, day: '2027-06-01', facts: { 'hours.total': 1500 } },
    ];
    expect((await adopt({ ...changed, cases })).statusCode).toBe(200);
    const s = (await get(`${api}/W-60?issue=2`)).json() as Sheet;
    const rows = table(s, 'Changed against issue 1');
    expect(rows.map((c) => c.what)).toMatchObject([
      { text: 'Title' },
      { text: 'Effective' },
      { text: 'First due', small: W9.actions[0]!.title },
      { text: 'young doubler' },
      { text: 'at 2 500 h' },
    ]);
    expect(rows[1]).toMatchObject({ was: { text: '1 Oct 2016' }, is: { text: '24 Dec 2026' } });
    expect(JSON.stringify(rows[2]!.is)).toMatch(/1 500 h of the part since new/);
    expect(table(s, 'All its issues').map((c) => c.state)).toMatchObject([
      { text: 'not yet effective' },
      { text: 'in force' },
    ]);
    expect(((await get(`${api}/W-60`)).json() as Sheet).title).toBe('W-60 issue 1');
    const later = (await get(`${api}/W-60?day=2026-12-24`)).json() as Sheet;
    expect(later.title).toBe('W-60 issue 2');
    expect(table(later, 'All its issues')[1]?.state).toMatchObject({
      text: 'superseded',
      small: 'by W-60 issue 2 from 24 Dec 2026',
    });
  });
  it('of another number that supersedes it takes its place from the effective date', async () => {
    const cases = W9.cases.map((c) => ({ ...c, day: '2028-06-01' }));
    const taking = { ...W9, number: 'W-61', effective: '2026-12-30', supersedes: [{ number: 'W-60' }], cases };
    expect((await adopt(taking)).statusCode).toBe(200);
    const list = (await get(`${api}?day=2026-12-31`)).json() as Sheet;
    const state = table(list, 'Adopted')
      .filter((c) => JSON.stringify(c.number).includes('W-60'))
      .map((c) => c.state);
    expect(state).toMatchObject([
      { text: 'superseded' },
      { text: 'superseded', small: expect.stringContaining('W-61') },
    ]);
    expect(JSON.stringify(list.answer)).toMatch(/in force on 31 Dec 2026/);
  });
  it('of two that come at the same moment only one is adopted', async () => {
    const both = await Promise.all([adopt(next(7)), adopt(next(7)), adopt(next(7))]);
    expect(both.map((r) => r.statusCode).sort()).toEqual([200, 422, 422]);
    expect(both.filter((r) => r.statusCode === 422).map((r) => r.json().code)).toEqual(
      Array(2).fill('directive.adopted-already'),
    );
  });
  it('an issue that was never adopted is not there', async () => {
    for (const url of [`${api}/W-60?issue=99`, `${api}/W-60/document?issue=99`, `${api}/NO/document`])
      expect((await get(url)).json().code).toBe('directive.not-adopted');
  });
});

describe('a draft', () => {
  const keep = (document: unknown, number = 'W-70') => post(`${api}/drafts`, { number, document, by: 'M. Orne' });
  it('is kept as given, whole or not, counts nowhere, and is gone from the list once adopted', async () => {
    const half = { number: 'W-70', issue: 1, title: 'Half a rule', actions: [{ id: 'x' }] };
    expect((await keep(half)).json()).toMatchObject({ number: 'W-70' });
    const standing = await held(today());
    expect([...standing].some((x) => x.startsWith('W-70'))).toBe(false);
    expect((await get(`${api}/drafts`)).json()).toEqual([
      { number: 'W-70', issue: 1, title: 'Half a rule', on: today(), by: 'M. Orne' },
    ]);
    expect((await get(`${api}/drafts/W-70`)).json().document).toEqual(half);
    expect((await get(`${api}/W-70`)).json().code).toBe('directive.not-adopted');
    const list = (await get(api)).json() as Sheet;
    expect(table(list, 'Drafts')[0]).toMatchObject({ number: { href: '/demo/directive/W-70/write' } });
    await adopt({ ...W9, number: 'W-70' });
    expect((await get(`${api}/drafts`)).json()).toEqual([]);
    expect((await get(`${api}/drafts/W-70`)).statusCode).toBe(404);
    expect((await test.store.log.read('demo', { kinds: ['directive_draft'] })).map((e) => e.body)).toMatchObject([
      { document: half },
    ]);
  });
  it('of a next issue stands beside the one in force, and can be thrown away', async () => {
    await keep({ ...W9, number: 'W-70', issue: 2 });
    const s = (await get(`${api}/W-70`)).json() as Sheet;
    expect(table(s, 'All its issues')[0]).toMatchObject({
      issue: { text: 'issue 2, draft' },
      state: { text: 'draft' },
    });
    const gone = await app.inject({ method: 'DELETE', url: `${api}/drafts/W-70`, headers });
    expect(gone.statusCode).toBe(200);
    const again = await app.inject({ method: 'DELETE', url: `${api}/drafts/W-70`, headers });
    expect([again.statusCode, again.json().code]).toEqual([404, 'server.not-found']);
  });
  it('without a number or a name is refused', async () => {
    for (const body of [
      { document: {}, by: 'A' },
      { number: 'X', document: {} },
      { number: 'X', by: 'A', document: 7 },
    ])
      expect((await post(`${api}/drafts`, body)).json().code).toBe('foundation.document-invalid');
  });
});

describe('exported and taken in elsewhere', () => {
  it('every directive of the scenario and every published one is adopted unchanged in another shop, cases inside', async () => {
    for (const shop of ['from', 'to']) await test.store.shops.open({ id: shop, name: shop, invented: true });
    for (const [i, d] of [...directives, ...published].entries()) {
      const format = i % 2 ? 'json' : 'yaml';
      expect((await adopt(d, 'from')).statusCode, d.number).toBe(200);
      const url = `/api/shops/from/directives/${encodeURIComponent(d.number)}/document?issue=${d.issue}&format=${format}`;
      const file = await get(url);
      expect(file.headers['content-disposition']).toMatch(
        new RegExp(`^attachment; filename="[\\w.-]+-issue-${d.issue}.${format}"$`),
      );
      const r = await post('/api/shops/to/directives', { text: file.body, by: 'B', on: '2026-11-01' });
      expect(r.statusCode, `${d.number}: ${r.body}`).toBe(200);
    }
    const [from, to] = await Promise.all(['from', 'to'].map((s) => test.store.directives.list(s)));
    expect(to!.map((d) => d.document)).toEqual(from!.map((d) => d.document));
    expect(to!.length).toBeGreaterThan(15);
  });
  it('text that looks like something else comes back as text', async () => {
    const { documentText } = await import('./document.ts');
    const words = fc.oneof(
      fc.string({ minLength: 1 }),
      fc.constantFrom(
        '0500',
        'yes',
        'null',
        '2024-04-03',
        '1e3',
        ': x',
        '- a',
        '#1',
        'a\nb',
        '"',
        "it's",
        ' ~',
        '0x1F',
        '.5',
        '<<',
      ),
    );
    fc.assert(
      fc.property(words, words, fc.double({ noNaN: true, noDefaultInfinity: true }), (a, b, n) => {
        const document = { ...W14_2, title: a, cases: [{ name: b, facts: { 'hours.total': n === 0 ? 0 : n } }] };
        for (const format of ['yaml', 'json'] as const)
          expect(parseText(documentText(document, format))).toEqual(document);
      }),
    );
  });
});

it('withdrawals move standings on their day and no other: any day, any issue', () => {
  const rules = directives.map((d) => directive.readDirective(d));
  const days = fc.integer({ min: 0, max: 8000 }).map((n) => addDays('2012-01-01' as Day, n));
  fc.assert(
    fc.property(fc.nat(rules.length - 1), days, days, (i, on, day) => {
      const back = rules.map((d, k) => (k === i ? { ...d, withdrawnOn: on } : d));
      const ids = (all: readonly directive.DirectiveDocument[]) =>
        directive.inForce(all, day).map((d) => `${d.number}/${d.issue}`);
      const now = ids(back);
      const without = ids(rules.filter((_, k) => k !== i));
      expect(now).toEqual(day < on ? ids(rules) : without);
      for (const d of back) {
        const state = directive.stateOf(d, back, day).is;
        expect(now.includes(`${d.number}/${d.issue}`)).toBe(state === 'in force' || state === 'not yet effective');
      }
    }),
  );
});
