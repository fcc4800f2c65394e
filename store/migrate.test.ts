import pg from 'pg';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openStore } from './index.ts';
import { migrate, migrations } from './migrate.ts';
import { type TestStore, testStore } from './testing/database.ts';

let t: TestStore;
let client: pg.Client;
beforeAll(async () => {
  t = await testStore();
  client = new pg.Client(t.url);
  await client.connect();
});
afterAll(async () => {
  await client.end();
  await t.done();
});
const extra = (sql: string, name = '9999-extra.sql') => ({ name, sql, hash: sql });

it('applies each migration once, also when several begin together', async () => {
  expect(await migrate(client)).toEqual([]);
  const second = new pg.Client(t.url);
  await second.connect();
  const all = [...migrations(), extra('create table extra (id int)')];
  const applied = await Promise.all([migrate(client, all), migrate(second, all)]);
  await second.end();
  expect(applied.flat()).toEqual(['9999-extra.sql']);
});

it('a migration that fails leaves nothing behind', async () => {
  const all = [
    ...migrations(),
    extra('create table extra (id int)'),
    extra('create table half (id int); select 1/0', '9999-z.sql'),
  ];
  await expect(migrate(client, all)).rejects.toThrow(/division by zero/);
  expect((await client.query("select to_regclass('half') as half")).rows[0].half).toBeNull();
});

it('refuses a database that a newer version made, and a migration that has changed', async () => {
  await expect(migrate(client)).rejects.toMatchObject({ code: 'store.migration-changed' });
  await expect(migrate(client, [...migrations(), extra('create table extra (id bigint)')])).rejects.toMatchObject({
    code: 'store.migration-changed',
  });
});

it('a database that does not answer gets a sentence', async () => {
  await expect(openStore({ databaseUrl: 'postgres://nobody@127.0.0.1:1/none' })).rejects.toMatchObject({
    code: 'store.database-unreachable',
  });
});
