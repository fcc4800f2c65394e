import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { growthExample } from '../examples/index.ts';
import { type TestStore, testStore } from '../store/testing/database.ts';
import { openDemo } from './demo.ts';
import { createServer } from './server.ts';

let test: TestStore;
let app: FastifyInstance;
const host = '127.0.0.1:4747';
beforeAll(async () => {
  test = await testStore();
  await openDemo(test.store);
  app = await createServer({ store: test.store, root: '/nowhere', today: () => '2026-11-25' });
});
afterAll(async () => {
  await app.close();
  await test.done();
});
const ask = async (body: object) => {
  const r = await app.inject({
    method: 'POST',
    url: '/api/shops/demo/growth/chance',
    headers: { host, origin: `http://${host}`, 'content-type': 'application/json' },
    payload: JSON.stringify(body),
  });
  return { status: r.statusCode, ...r.json<{ work: string; code?: string; given?: string }>() };
};
interface Looked {
  done: number;
  of: number;
  sheet?: { blocks: { title: string }[]; provenance: { invented: boolean }; warnings: string[] };
  refusal?: { code: string };
  code?: string;
}
const look = async (work: string) => (await app.inject({ url: `/api/work/${work}`, headers: { host } })).json<Looked>();
async function ended(work: string): Promise<Looked> {
  for (;;) {
    const seen = await look(work);
    if (seen.sheet || seen.refusal || seen.code) return seen;
    await new Promise((r) => setTimeout(r, 10));
  }
}

describe('chance over the API', () => {
  it('answers at once with a number, says how far it is, and ends in the whole sheet', async () => {
    const { status, work } = await ask({ document: growthExample, lives: 2000 });
    expect(status).toBe(202);
    const early = await look(work);
    expect(early.of).toBe(2000);
    const seen = await ended(work);
    expect(seen.done).toBe(2000);
    expect(early.done).toBeLessThanOrEqual(seen.done);
    expect(seen.sheet!.blocks.map((b) => b.title)).toContain('How the lives scatter');
    expect(seen.sheet!.provenance.invented).toBe(true);
    expect(JSON.stringify(seen.sheet)).not.toMatch(/NaN|Infinity/);
  });

  it('the same seed gives the same sheet, another seed another', async () => {
    const sheets = await Promise.all(
      [5, 5, 6].map(
        async (seed) => (await ended((await ask({ document: growthExample, lives: 60, seed })).work)).sheet,
      ),
    );
    expect(sheets[1]).toEqual(sheets[0]);
    expect(sheets[2]).not.toEqual(sheets[0]);
  });

  it('stopped, it is not there any more', async () => {
    const { work } = await ask({ document: growthExample, lives: 100_000 });
    const headers = { host, origin: `http://${host}` };
    const stopped = await app.inject({ method: 'DELETE', url: `/api/work/${work}`, headers });
    expect(stopped.statusCode).toBe(200);
    const gone = await app.inject({ url: `/api/work/${work}`, headers });
    expect(gone.statusCode).toBe(404);
    expect(gone.json<Looked>().code).toBe('server.not-found');
    expect((await app.inject({ method: 'DELETE', url: `/api/work/${work}`, headers })).statusCode).toBe(404);
  });

  it.each([
    ['no scatter', { document: { ...growthExample, chance: undefined } }, 'growth.chance-incomplete'],
    [
      'sizes the wrong way round',
      {
        document: {
          ...growthExample,
          chance: { ...growthExample.chance!, detection: { ...growthExample.chance!.detection!, a50_mm: 3 } },
        },
      },
      'growth.detection-reversed',
    ],
    ['a name that is not kept', { name: 'none' }, 'server.not-found'],
    ['too many lives', { document: growthExample, lives: 1e9 }, 'foundation.document-invalid'],
    ['a word it does not know', { document: growthExample, life: 10 }, 'foundation.document-invalid'],
  ])('%s is refused at once, not by a work that fails', async (_, body, code) => {
    const answer = await ask(body);
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.code).toBe(code);
  });

  it('of an aircraft: its own part, hours and limits in force', async () => {
    const list = await app.inject({ url: '/api/shops/demo/growth', headers: { host } });
    expect(list.statusCode).toBe(200);
    const name = (await test.store.bases.list('demo', 'growth'))[0]!.name;
    const aircraft = (await test.store.aircraft.list('demo')).find((a) => a.model === 'W4' || a.model === 'W4-T')!;
    const { work } = await ask({ name, aircraft: aircraft.id, lives: 100 });
    const seen = await ended(work);
    expect(seen.refusal).toBeUndefined();
    // Without a name it is the document that the page of the aircraft is answered with.
    expect((await ended((await ask({ aircraft: aircraft.id, lives: 100 })).work)).sheet).toEqual(seen.sheet);
    expect(seen.sheet!.blocks.map((b) => b.title)).toContain('How the lives scatter');
  });
});

it('closing answers those who look, and leaves nothing running', async () => {
  const closing = await createServer({ store: test.store, root: '/nowhere', today: () => '2026-11-25' });
  const r = await closing.inject({
    method: 'POST',
    url: '/api/shops/demo/growth/chance',
    headers: { host, origin: `http://${host}`, 'content-type': 'application/json' },
    payload: JSON.stringify({ document: growthExample, lives: 1_000_000 }),
  });
  expect(r.statusCode).toBe(202);
  const { work } = r.json<{ work: string }>();
  const looks = Promise.all([closing.close(), closing.inject({ url: `/api/work/${work}`, headers: { host } })]);
  // Answered as it stands, or told that the program closes; never left waiting.
  const [, seen] = await looks;
  expect([200, 503]).toContain(seen.statusCode);
});
