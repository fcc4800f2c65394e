import { connect } from 'node:net';
import { setTimeout as sleep } from 'node:timers/promises';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { rootFolder } from '../store/index.ts';
import { type TestStore, testStore } from '../store/testing/database.ts';
import { createServer } from './server.ts';

const host = '127.0.0.1:4747';
const headers = { host, origin: `http://${host}` };
const opened: { test: TestStore; app: FastifyInstance }[] = [];
async function program() {
  const test = await testStore();
  const app = await createServer({ store: test.store, root: rootFolder(), today: () => '2026-11-25' });
  opened.push({ test, app });
  return { test, app };
}
let full: Awaited<ReturnType<typeof program>>;
let copy: Buffer;
beforeAll(async () => {
  full = await program();
  await full.app.inject({ method: 'POST', url: '/api/demo', headers, payload: {} });
  const r = await full.app.inject({ method: 'GET', url: '/api/backup', headers: { host } });
  expect(r.statusCode).toBe(200);
  expect(r.headers['content-disposition']).toBe('attachment; filename="sparwright-2026-11-25.jsonl.gz"');
  copy = r.rawPayload;
});
afterAll(async () => {
  for (const { app, test } of opened) {
    await app.close();
    await test.done();
  }
});

function upload(app: FastifyInstance, bytes: Buffer | null, more: object = headers) {
  const line = '--copy';
  const head = `${line}\r\ncontent-disposition: form-data; name="file"; filename="c.gz"\r\ncontent-type: application/gzip\r\n\r\n`;
  const parts = bytes ? [Buffer.from(head), bytes, Buffer.from('\r\n')] : [];
  return app.inject({
    method: 'POST',
    url: '/api/restore',
    headers: { ...more, 'content-type': 'multipart/form-data; boundary=copy' },
    payload: Buffer.concat([...parts, Buffer.from(`${line}--\r\n`)]),
  });
}

it('the download comes back identical in an empty store', async () => {
  const { app, test } = await program();
  await app.inject({ method: 'GET', url: '/api/shops', headers: { host } });
  const r = await upload(app, copy);
  expect(r.statusCode).toBe(200);
  expect(r.json()).toMatchObject({ shops: [{ id: 'demo', outcome: 'restored', sameTables: true }], problems: [] });
  const lines = async (t: TestStore) => {
    const all: string[] = [];
    for await (const line of t.store.exportLines('demo')) all.push(line);
    return all;
  };
  expect(await lines(test)).toEqual(await lines(full.test));
  const page = {
    method: 'GET' as const,
    url: '/api/shops/demo/aircraft/aircraft:0612?day=2026-11-25',
    headers: { host },
  };
  expect((await app.inject(page)).json()).toEqual((await full.app.inject(page)).json());
});

it('a store that is not empty, a copy cut short, no file, a page of another site', async () => {
  const { app, test } = await program();
  const code = async (r: ReturnType<typeof upload>) => (await r).json().code;
  expect(await code(upload(full.app, copy))).toBe('store.shop-exists');
  expect(await code(upload(app, copy.subarray(0, copy.length - 20)))).toBe('store.export-damaged');
  expect(await code(upload(app, Buffer.from('Date,Hours\n')))).toBe('store.export-damaged');
  expect(await code(upload(app, null))).toBe('cli.file-missing');
  expect(await code(upload(app, copy, { host, origin: 'http://example.org' }))).toBe('server.not-local');
  expect(await test.store.shops.list()).toEqual([]);
});

/** A browser that goes away in the middle of sending. */
async function cutOff(at: string, path: string, bytes: Buffer): Promise<void> {
  const { port } = new URL(at);
  const head = '--copy\r\ncontent-disposition: form-data; name="file"; filename="c.csv"\r\n\r\n';
  const socket = connect(Number(port), '127.0.0.1');
  socket.on('error', () => {});
  await new Promise((r) => socket.once('connect', r));
  socket.write(
    `POST ${path} HTTP/1.1\r\nhost: 127.0.0.1:${port}\r\ncontent-type: multipart/form-data; boundary=copy\r\ncontent-length: 9999999\r\n\r\n${head}`,
  );
  await new Promise((r) => socket.write(bytes, r));
  await sleep(150);
  socket.destroy();
  await sleep(150);
}

it('a logbook or a copy cut off in the middle of sending leaves nothing, and the next one is taken', async () => {
  const { app, test } = await program();
  const at = await app.listen({ host: '127.0.0.1', port: 0 });
  await app.inject({ method: 'GET', url: '/api/shops', headers: { host } });
  await cutOff(at, '/api/shops/own/import/read', Buffer.from('Date,Total hours\n2020-01-01,10.0\n'));
  await cutOff(at, '/api/restore', copy.subarray(0, copy.length - 300));
  const open =
    "select count(*)::int as n from pg_stat_activity where datname = current_database() and state like 'idle in%'";
  expect((await test.pool.query(open)).rows[0].n).toBe(0);
  expect((await test.pool.query('select count(*)::int as n from file')).rows[0].n).toBe(0);
  expect((await test.store.shops.list()).map((s) => [s.id, s.last])).toEqual([['own', 0]]);
  expect((await upload(app, copy)).statusCode).toBe(200);
});
