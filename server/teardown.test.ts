import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { structureKept, teardownsKept } from '../examples/index.ts';
import type { Sheet } from '../sheets/index.ts';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';
import { nameOf } from './basis/keep.ts';
import { createServer } from './server.ts';

let test: Awaited<ReturnType<typeof testStore>>;
let app: FastifyInstance;
const host = '127.0.0.1:4747';
const today = () => '2026-11-25';
const send = (method: 'GET' | 'POST', url: string, payload?: object) =>
  app.inject({ method, url, ...(payload ? { payload } : {}), headers: { host, origin: `http://${host}` } });
const get = (url: string) => send('GET', `/api/shops/demo/${url}`);
async function page(url: string): Promise<Sheet> {
  const r = await get(url);
  expect(r.statusCode, r.body).toBe(200);
  return r.json();
}
beforeAll(async () => {
  test = await testStore();
  app = await createServer({ store: test.store, root: rootFolder(), today });
  await send('POST', '/api/demo', {});
});
afterAll(async () => {
  await app.close();
  await test.done();
});
const JOB = teardownsKept[0].name;

describe('the demonstration', () => {
  it('keeps everything under the name that its title makes', () => {
    for (const kept of [structureKept, ...teardownsKept]) expect(nameOf(kept.document.title)).toBe(kept.name);
  });
  it.each([
    'teardown',
    'teardown/maps/whimbrel-w4-wing',
    'teardown/floors/ostrey-field-floor',
    `teardown/jobs/${JOB}`,
    `teardown/jobs/${JOB}?page=schedule`,
    `teardown/jobs/${JOB}?page=shopping`,
    `teardown/jobs/${JOB}?page=quote`,
    `teardown/jobs/${JOB}?page=cards`,
    'teardown/calendar',
    'aircraft/aircraft:0612/teardown',
  ])('%s is a page', async (url) => expect((await page(url)).word).toBe('teardown'));
});
