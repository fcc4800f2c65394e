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
    expect(rowsOf(sheet)).toHaveLength(12);
    expect(said(sheet)).toMatch(/^\d of 12 aircraft are overdue, .*due this year, 6 hang on a missing paper\.$/);
  });
});
