import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { expect, it } from 'vitest';
import { testStore } from '../store/testing/database.ts';
import { entry } from '../store/testing/entries.ts';
import { clockCaution } from './clock.ts';
import { servesAlready } from './running.ts';

it('a clock that was set back is said, also after the next entry', async () => {
  const { store, done } = await testStore();
  await store.shops.open({ id: 'own', name: 'Own', invented: false });
  const at = '2026-03-02T10:00:00.000Z';
  expect(await clockCaution(store, 'own', at)).toBeNull();
  await store.log.append('own', [entry('a', 'reading', '2020-01-01', {})], 'me', at);
  expect(await clockCaution(store, 'own', '2026-03-02T10:00:00.001Z')).toBeNull();
  const early = '2026-03-01T09:30:00.000Z';
  for (let i = 0; i < 2; i++) {
    expect(await clockCaution(store, 'own', early)).toBe(
      'The clock of this machine (2026-03-01 09:30 UTC) is behind the last entry (2026-03-02 10:00 UTC). Set it right before you record; entries keep their order by number.',
    );
    await store.log.append('own', [entry('a', 'reading', '2020-01-01', {})], 'me', early);
  }
  await done();
});

it('a second start knows its own kind on the same data, and nobody else', async () => {
  const answer = { body: JSON.stringify({ program: 'sparwright', version: '1', data: '/data/one' }) };
  const other = createServer((_, r) => r.end(answer.body)).listen(0, '127.0.0.1');
  await new Promise((r) => other.once('listening', r));
  const address = `http://127.0.0.1:${(other.address() as AddressInfo).port}`;
  expect(await servesAlready(address, '/data/one')).toBe(true);
  expect(await servesAlready(address, '/data/two')).toBe(false);
  answer.body = 'hello';
  expect(await servesAlready(address, '/data/one')).toBe(false);
  other.close();
  expect(await servesAlready('http://127.0.0.1:1', '/data/one')).toBe(false);
});
