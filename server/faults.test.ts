import Fastify from 'fastify';
import { expect, it, vi } from 'vitest';
import { faultInWords } from '../store/faults.ts';
import { answerFaults } from './faults.ts';
import { guardLocal } from './guard.ts';

const app = Fastify({ bodyLimit: 100 });
guardLocal(app);
answerFaults(app);
app.post('/take', async () => ({ taken: true }));
app.get('/fault', async () => {
  throw new TypeError('a slip with a secret in it');
});
const host = '127.0.0.1:4747';
const post = (payload: string, headers: object = {}) =>
  app.inject({
    method: 'POST',
    url: '/take',
    payload,
    headers: { host, 'content-type': 'application/json', ...headers },
  });

it('takes what is whole, small and from here', async () => expect((await post('{"a":1}')).statusCode).toBe(200));
it('too large a body', async () => {
  const r = await post(JSON.stringify({ a: 'x'.repeat(200) }));
  expect([r.statusCode, r.json().code]).toEqual([413, 'server.too-large']);
});
it('a body that is no JSON', async () => {
  const r = await post('{"a":');
  expect([r.statusCode, r.json().code]).toEqual([400, 'server.bad-request']);
});
it('another host, and a page of another site', async () => {
  for (const headers of [{ host: 'example.org' }, { origin: 'http://example.org' }]) {
    const r = await post('{}', headers);
    expect([r.statusCode, r.json().code]).toEqual([403, 'server.not-local']);
  }
});
it('a fault of the program tells nothing of its inside', async () => {
  const log = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  const r = await app.inject({ method: 'GET', url: '/fault', headers: { host } });
  log.mockRestore();
  expect([r.statusCode, r.json().code]).toEqual([500, 'server.fault']);
  expect(r.body).not.toContain('secret');
});
it.each([
  ['disk full, in PostgreSQL’s words', { cause: { code: '53100' } }, 507, 'store.disk-full'],
  ['disk full, in the system’s words', { code: 'ENOSPC' }, 507, 'store.disk-full'],
  ['the database stopped', { cause: { code: '57P01' } }, 503, 'store.database-unreachable'],
  [
    'the connection broke',
    { cause: { message: 'Connection terminated unexpectedly' } },
    503,
    'store.database-unreachable',
  ],
  ['nobody listens', { code: 'ECONNREFUSED' }, 503, 'store.database-unreachable'],
  ['the database stopped, and the disk is full', { cause: { code: '57P02' }, full: true }, 507, 'store.disk-full'],
])('%s: a sentence', async (_, fault, status, code) => {
  const other = Fastify();
  answerFaults(other, (e) => faultInWords(e, 'the data folder', () => !('full' in fault)));
  other.get('/', async () => {
    throw Object.assign(new Error('Failed query'), fault);
  });
  const r = await other.inject('/');
  expect([r.statusCode, r.json().code]).toEqual([status, code]);
});
it('any other fault stays a fault', () => {
  for (const e of [new TypeError('x'), { code: '23505' }, null, 'text'])
    expect(faultInWords(e, '', () => true)).toBe(null);
});
