import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Day, directive } from '../engine/index.ts';
import { directiveExample, outlookExample, recordExample } from '../examples/index.ts';
import { W14_2 } from '../examples/scenario/directives.ts';
import type { Sheet } from '../sheets/index.ts';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';
import { createServer } from './server.ts';
import { PROGRAM } from './version.ts';

const TODAY = '2026-11-25';
let test: Awaited<ReturnType<typeof testStore>>;
let app: FastifyInstance;
beforeAll(async () => {
  test = await testStore();
  app = await createServer({ store: test.store, root: rootFolder(), today: () => TODAY });
});
afterAll(async () => {
  await app.close();
  await test.done();
});

const host = '127.0.0.1:4747';
const get = (url: string) => app.inject({ method: 'GET', url, headers: { host } });
const post = (url: string, payload: object) =>
  app.inject({ method: 'POST', url, payload, headers: { host, origin: `http://${host}` } });

describe('document in, sheet out', () => {
  it.each([
    ['record', recordExample],
    ['directive', directiveExample],
    ['directive', W14_2],
    ['outlook', outlookExample],
  ])('%s answers its example', async (word, example) => {
    const r = await post(`/api/${word}`, example);
    expect(r.statusCode).toBe(200);
    const sheet = r.json() as { answer: { text: string }[]; blocks: unknown[] };
    expect(sheet.answer.map((s) => s.text).join('').length).toBeGreaterThan(20);
    expect(sheet.blocks.length).toBeGreaterThan(0);
  });
  it.each([
    ['record', { ...recordExample, surprise: 1 }, 'foundation.document-invalid'],
    ['record', { sparwright: 'record/2' }, 'foundation.document-invalid'],
    ['outlook', { ...outlookExample, limits: [] }, 'outlook.limit-missing'],
    ['directive', { ...W14_2, actions: [] }, 'foundation.document-invalid'],
  ])('%s refuses with code and three lines', async (word, document, code) => {
    const r = await post(`/api/${word}`, document);
    expect(r.statusCode).toBe(422);
    expect(r.json()).toMatchObject({
      code,
      given: expect.any(String),
      allowed: expect.any(String),
      remedy: expect.any(String),
    });
  });
});

describe('the invented scenario', () => {
  it('is a shop of its own, opened once, dropped whole', async () => {
    expect((await post('/api/demo', {})).json()).toEqual({ shop: 'demo' });
    const last = await test.store.log.last('demo');
    await post('/api/demo', {});
    expect(await test.store.log.last('demo')).toBe(last);
    const shops = (await get('/api/shops')).json() as { id: string; invented: boolean; aircraft: number }[];
    expect(shops).toContainEqual({
      id: 'demo',
      name: 'Ostrey Field Structures',
      invented: true,
      aircraft: 12,
      entries: last,
    });
    expect(shops).toContainEqual({ id: 'own', name: 'This shop', invented: false, aircraft: 0, entries: 0 });
    expect(await test.store.log.verify('demo')).toEqual([]);
  });
  it('answers for all twelve aircraft, none of them in a softer word than treat as', async () => {
    for (const { id } of await test.store.aircraft.list('demo')) {
      const r = await get(`/api/shops/demo/aircraft/${encodeURIComponent(id)}`);
      expect(r.statusCode, id).toBe(200);
      const sheet = r.json() as Sheet;
      expect(sheet.provenance.invented).toBe(true);
      expect(sheet.caution).toMatch(/approve nothing/);
      const cells = sheet.blocks
        .flatMap((b) => (b.block === 'table' ? b.rows : []))
        .flatMap((row) => Object.values(row.cells))
        .filter((c) => c.is === 'standing');
      expect(cells.length, id).toBeGreaterThan(0);
      const rank = (words: string) => directive.STANDINGS.indexOf(words as directive.Standing);
      for (const c of cells) {
        expect(rank(c.worst)).toBeGreaterThanOrEqual(rank(c.best));
        expect(c.text, id).toContain(c.worst);
      }
    }
  });
  it('an entry recorded changes the answer at once; a correction names the old one and keeps it', async () => {
    const one = {
      id: 'x',
      subject: 'aircraft:0612',
      kind: 'reading',
      day: '2026-11-20',
      evidence: 'seen',
      body: { total_h: 5330, landings: 5130 },
    };
    const [number] = (await post('/api/shops/demo/entries', { entries: [one] })).json().numbers as number[];
    const shown = async () => JSON.stringify((await get('/api/shops/demo/aircraft/aircraft%3A0612')).json().titleBlock);
    expect(await shown()).toMatch(/5.330\.0/);
    const right = { ...one, id: 'y', body: { total_h: 5325, landings: 5125 }, replaces: String(number) };
    expect((await post('/api/shops/demo/entries', { entries: [right] })).statusCode).toBe(200);
    expect(await shown()).toMatch(/5.325\.0/);
    expect(
      (await test.store.log.read('demo')).filter((e) => e.kind === 'reading' && e.day === '2026-11-20'),
    ).toHaveLength(2);
  });
  it('all entries or none', async () => {
    const before = await test.store.log.last('demo');
    const good = {
      id: 'x',
      subject: 'aircraft:0612',
      kind: 'reading',
      day: '2026-11-21',
      evidence: 'seen',
      body: { total_h: 5331 },
    };
    const r = await post('/api/shops/demo/entries', { entries: [good, { ...good, id: 'z', kind: 'nonsense' }] });
    expect(r.statusCode).toBe(422);
    expect(await test.store.log.last('demo')).toBe(before);
  });
  it('keeps the letter under its number, byte for byte', async () => {
    const r = await post('/api/shops/demo/letters', { aircraft: 'aircraft:0612', directive: 'W-14' });
    const { number, pdf } = r.json() as { number: string; pdf: string };
    const file = await get(pdf);
    expect(file.headers['content-type']).toBe('application/pdf');
    expect(file.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
    expect((await test.store.letters.list('demo', 'aircraft:0612')).map((l) => l.number)).toContain(number);
    const [entry] = (await test.store.log.read('demo', { kinds: ['letter'] })).slice(-1);
    const kept = entry?.body as {
      known_to: number;
      program: string;
      answers: { working: unknown[]; directive: string }[];
    };
    expect(kept.program).toBe(PROGRAM);
    expect(kept.known_to).toBeLessThan(entry!.number);
    expect(kept.answers.length).toBeGreaterThanOrEqual(2);
    for (const a of kept.answers) expect(a.directive).toBe('W-14');
    expect(kept.answers.some((a) => a.working.length > 3)).toBe(true);
  });
});

describe('a directive', () => {
  it('is adopted once per issue; a question is not a directive', async () => {
    await test.store.shops.open({ id: 'desk', name: 'A desk', invented: true });
    const adopt = (document: object) =>
      post('/api/shops/desk/directives', { text: JSON.stringify(document), by: 'A', on: '2026-01-01' });
    expect((await adopt(W14_2)).statusCode).toBe(200);
    expect((await adopt(W14_2)).json().code).toBe('directive.adopted-already');
    expect((await adopt(directiveExample)).json().code).toBe('directive.is-a-question');
    expect(await test.store.directives.list('desk')).toHaveLength(1);
  });
  it('that this version cannot read is never dropped: due, not computed, and the page stays up', async () => {
    const number = await test.store.log.last('demo');
    const broken = { ...W14_2, number: 'W-77', actions: 'torn' };
    await test.store.log.append(
      'demo',
      [
        {
          subject: 'directive:W-77',
          kind: 'directive',
          day: '2026-01-01' as Day,
          order: 0,
          body: { document: broken, by: 'A' },
          schema: 'directive/1',
          evidence: 'seen',
        },
      ],
      'A',
      '2026-01-01T00:00:00Z',
      { expectLast: number },
    );
    const r = await get('/api/shops/demo/aircraft/aircraft%3A0612');
    expect(r.statusCode).toBe(200);
    expect(r.body).toContain('directive.does-not-read');
    expect(r.body).toMatch(/W-77 issue 2.*treat whatever it looks at as due, not computed/);
  });
  it('whose own case fails is not adopted', async () => {
    const wrong = { ...W14_2, cases: W14_2.cases.map((c, i) => (i ? c : { ...c, expect: { standing: 'overdue' } })) };
    const r = await post('/api/shops/own/directives', { text: JSON.stringify(wrong), by: 'A', on: '2026-01-01' });
    expect(r.statusCode).toBe(422);
    expect(r.json().code).toBe('directive.cases-fail');
    expect(await test.store.directives.list('own')).toEqual([]);
  });
  it.each([
    ['names an unknown fact', 'hours.nonsense_total + 1.0', 'expression.'],
    ['loops over a list', '[1, 2].map(x, x)', 'expression.'],
    ['divides by zero', 'hours.total / 0.0', 'cases-fail'],
  ])('that %s is refused', async (_, expression, code) => {
    const broken = {
      ...W14_2,
      actions: W14_2.actions.map((a) => (a.counts ? { ...a, counts: { ...a.counts, expression } } : a)),
    };
    const r = await post('/api/shops/own/directives', { text: JSON.stringify(broken), by: 'A', on: '2026-01-01' });
    expect(r.statusCode).toBe(422);
    expect(r.json().code).toMatch(code);
    expect(await test.store.directives.list('own')).toEqual([]);
  });
});

describe('bad input leaves the server alive', () => {
  it.each([
    ['a foreign host', { host: 'example.org' }, 403],
    ['a foreign page that writes', { host, origin: 'http://example.org' }, 403],
  ])('%s', async (_, headers, status) => {
    expect((await app.inject({ method: 'POST', url: '/api/demo', headers, payload: {} })).statusCode).toBe(status);
  });
  it('a file of 100 MB', async () => {
    const edge = 'sparwright-test';
    const payload = Buffer.concat([
      Buffer.from(
        `--${edge}\r\nContent-Disposition: form-data; name="file"; filename="x.csv"\r\nContent-Type: text/csv\r\n\r\n`,
      ),
      Buffer.alloc(100 * 1024 * 1024, 'a'),
      Buffer.from(`\r\n--${edge}--\r\n`),
    ]);
    const r = await app.inject({
      method: 'POST',
      url: '/api/shops/own/import/read',
      headers: { host, 'content-type': `multipart/form-data; boundary=${edge}` },
      payload,
    });
    expect(r.statusCode).toBe(413);
    expect(r.json()).toMatchObject({ given: expect.any(String), allowed: expect.stringContaining('20 MB') });
  });
  it.each([
    ['/api/shops/nowhere/fleet', 404, 'store.shop-unknown'],
    ['/api/shops/own/aircraft/nobody', 404, 'server.not-found'],
    ['/api/shops/own/directives/W-99', 404, 'directive.not-adopted'],
    ['/api/nothing', 404, 'server.not-found'],
    ['/api/shops/%E0%A4%A/fleet', 400, 'server.not-found'],
    ['/api/shops/own/fleet?day=yesterday', 422, 'foundation.not-a-day'],
  ])('%s is refused', async (url, status, code) => {
    const r = await get(url);
    expect(r.statusCode).toBe(status);
    expect(r.json().code).toBe(code);
  });
  it('a logbook that is asked to be written twice at once is written once', async () => {
    const edge = 'sparwright-test';
    const send = (step: string, payload: string, type = 'application/json') =>
      app.inject({
        method: 'POST',
        url: `/api/shops/own/import/${step}`,
        headers: { host, origin: `http://${host}`, 'content-type': type },
        payload,
      });
    const csv = 'Day,Total,Landings\n2020-01-03,100.5,200\n2020-02-03,101.5,203\n';
    const part = `--${edge}\r\nContent-Disposition: form-data; name="file"; filename="twice.csv"\r\nContent-Type: text/csv\r\n\r\n${csv}\r\n--${edge}--\r\n`;
    const read = await send('read', part, `multipart/form-data; boundary=${edge}`);
    const { importId, mapping } = read.json();
    const asked = JSON.stringify({
      mapping: { ...mapping, decimal: 'point' },
      aircraft: { registration: 'ZQ-TWO', type: 'Whimbrel', model: 'W4', serial: '0998', built: '2010-05-01' },
    });
    const both = await Promise.all([send(`${importId}/commit`, asked), send(`${importId}/commit`, asked)]);
    expect(both.map((r) => [r.statusCode, r.json()])).toEqual([
      [200, { aircraft: 'aircraft:0998' }],
      [200, { aircraft: 'aircraft:0998' }],
    ]);
    const log = await test.store.log.read('own', { subjects: ['aircraft:0998'] });
    expect(log.filter((e) => e.kind === 'reading').map((e) => e.day)).toEqual(['2020-01-03', '2020-02-03']);
  });
  it('a real shop is never dropped; the invented one goes whole', async () => {
    const own = await app.inject({
      method: 'DELETE',
      url: '/api/shops/own',
      headers: { host, origin: `http://${host}` },
    });
    expect(own.json().code).toBe('store.shop-is-real');
    const demo = await app.inject({
      method: 'DELETE',
      url: '/api/shops/demo',
      headers: { host, origin: `http://${host}` },
    });
    expect(demo.statusCode).toBe(200);
    expect((await test.store.shops.list()).map((s) => s.id)).not.toContain('demo');
  });
});
