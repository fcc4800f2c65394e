import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Sheet } from '../sheets/index.ts';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';
import { createServer } from './server.ts';

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

/** The fleet page once nothing is being computed any more. */
async function settled(shop: string): Promise<Sheet> {
  for (;;) {
    const sheet = (await get(`/api/shops/${shop}/fleet`)).json() as Sheet;
    if (!sheet.computing) return sheet;
    await new Promise((r) => setTimeout(r, 50));
  }
}
const said = (s: Sheet): string => s.answer.map((x) => x.text).join('');
const rowsOf = (s: Sheet) => s.blocks.flatMap((b) => (b.block === 'table' ? b.rows : []));

describe('the fleet page', () => {
  it('treats as due what is not yet computed, and says how many; then answers for all', async () => {
    await post('/api/demo', {});
    const first = (await get('/api/shops/demo/fleet')).json() as Sheet;
    if (first.computing) expect(first.computing).toMatch(/of 12 aircraft .* being computed; until then treat/);
    const sheet = await settled('demo');
    expect(sheet.blocks.find((b) => b.title === 'Aircraft')).toMatchObject({ rows: { length: 12 } });
    expect(sheet.blocks.at(-1)?.title).toBe('On the shelf');
    expect(said(sheet)).toMatch(/^\d of 12 aircraft are overdue, .*due this year, 6 hang on a missing paper\.$/);
  });
});

describe('the due sheet', () => {
  const due = (query: string) => get(`/api/shops/demo/fleet/due?${query}`);
  it('holds what is due now and what may fall due within the days, nothing softer than on the aircraft page', async () => {
    await settled('demo');
    const sheet = (await due('from=2026-11-25&to=2027-11-24')).json() as Sheet;
    const rows = rowsOf(sheet);
    expect(said(sheet)).toMatch(
      /^\d+ actions on \d+ aircraft are or fall due from 25 Nov 2026 to 24 Nov 2027; \d+ of them are overdue\.$/,
    );
    const short = rowsOf((await due('from=2026-11-25&to=2026-11-25')).json() as Sheet);
    expect(short.length).toBeGreaterThan(0);
    expect(short.length).toBeLessThan(rows.length);
    const ids = new Set(rows.map((r) => r.id));
    for (const r of short) expect(ids.has(r.id)).toBe(true);
  });
  it.each([
    ['pdf', 'application/pdf', '%PDF'],
    ['csv', 'text/csv; charset=utf-8', '\ufeff"Aircraft"'],
    ['xlsx', 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet', 'PK'],
  ])('is handed on as %s', async (format, type, begins) => {
    const r = await due(`format=${format}`);
    expect(r.statusCode).toBe(200);
    expect(r.headers['content-type']).toBe(type);
    expect(r.headers['content-disposition']).toBe(`attachment; filename="due-sheet-2026-11-25.${format}"`);
    expect(r.rawPayload.toString('utf8').startsWith(begins)).toBe(true);
  });
  it.each([
    ['from=2027-01-01&to=2026-01-01', 'fleet.span-reversed'],
    ['from=soon', 'foundation.not-a-day'],
    ['format=doc', 'foundation.document-invalid'],
  ])('refuses %s', async (query, code) => {
    const r = await due(query);
    expect(r.statusCode).toBe(422);
    expect(r.json()).toMatchObject({ code, given: expect.any(String), remedy: expect.any(String) });
  });
});

describe('readings wanted', () => {
  const readings = async () => (await get('/api/shops/demo/fleet/readings')).json() as Sheet;
  const text = (r: ReturnType<typeof rowsOf>[number], key: string): string => {
    const c = r.cells[key];
    return c && c.is !== 'nothing' ? `${c.text}${'small' in c && c.small ? ` | ${c.small}` : ''}` : '';
  };
  it('lists old readings, keeps what the owner was asked, and his reply updates the standings at once', async () => {
    await settled('demo');
    const before = rowsOf(await readings());
    expect(before.length).toBeGreaterThan(0);
    const row = before[0]!;
    expect(text(row, 'asked')).toBe('not asked yet');
    const words = text(row, 'request');
    expect(words).toContain(text(row, 'registration'));
    expect(words).not.toMatch(/overdue|danger|must not fly|you have until/i);
    const asked = await post('/api/shops/demo/fleet/readings', {
      requests: [{ aircraft: row.id, words }],
      by: 'M. Orne',
    });
    expect(asked.statusCode).toBe(200);
    const again = rowsOf(await readings()).find((r) => r.id === row.id)!;
    expect(text(again, 'asked')).toBe('25 Nov 2026 by M. Orne | not answered yet');
    expect((await test.store.log.read('demo', { kinds: ['request'] })).at(-1)).toMatchObject({
      subject: row.id,
      body: { asks: 'reading', words, by: 'M. Orne' },
    });
    const h = row.cells.reading;
    const read = h?.is === 'quantity' ? (h.value as number) : 0;
    const reply = {
      id: 'x',
      subject: row.id,
      kind: 'reading',
      day: '2026-11-24',
      evidence: 'statement',
      body: { total_h: read + 40 },
    };
    expect((await post('/api/shops/demo/entries', { entries: [reply] })).statusCode).toBe(200);
    const sheet = (await get('/api/shops/demo/fleet')).json() as Sheet;
    // The shelf may still be on its way; the aircraft is not.
    expect(sheet.computing ?? '').not.toMatch(/of 12 aircraft/);
    const now = rowsOf(sheet).find((r) => r.id === row.id)!;
    expect(now.cells.reading).toMatchObject({ value: read + 40 });
    expect(now.cells.read).toMatchObject({ day: '2026-11-24' });
    expect(rowsOf(await readings()).some((r) => r.id === row.id)).toBe(false);
  });
  it('asks nobody about an aircraft that is not there', async () => {
    const r = await post('/api/shops/demo/fleet/readings', {
      requests: [{ aircraft: 'nobody', words: 'x' }],
      by: 'M. Orne',
    });
    expect([r.statusCode, r.json().code]).toEqual([404, 'server.not-found']);
  });
});
