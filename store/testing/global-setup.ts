import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { openCluster } from '../cluster/index.ts';
import { migrate } from '../migrate.ts';
import { TEMPLATE, TEST_URL, urlOf } from './database.ts';

async function makeTemplate(server: string): Promise<void> {
  const admin = new pg.Client(server);
  await admin.connect();
  await admin.query(`drop database if exists ${TEMPLATE}`);
  await admin.query(`create database ${TEMPLATE}`);
  await admin.end();
  const client = new pg.Client(urlOf(server, TEMPLATE));
  await client.connect();
  await migrate(client);
  await client.end();
}

/** One cluster per run, thrown away at the end. DATABASE_URL is used instead where it is set. */
export default async function setup(): Promise<() => Promise<void>> {
  if (process.env.DATABASE_URL) {
    process.env[TEST_URL] = process.env.DATABASE_URL;
    await makeTemplate(process.env.DATABASE_URL);
    return async () => {};
  }
  const folder = mkdtempSync(join(tmpdir(), 'sparwright-test-'));
  const cluster = await openCluster(folder, { settings: { fsync: 'off', max_connections: 100 } });
  const { user, password, host, port } = cluster.address('postgres');
  const server = `postgres://${user}:${password}@${host}:${port}/postgres`;
  process.env[TEST_URL] = server;
  await makeTemplate(server);
  return async () => {
    await cluster.close();
    rmSync(folder, { recursive: true, force: true });
  };
}
