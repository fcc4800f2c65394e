import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import pg from 'pg';
import { afterAll, expect, it, vi } from 'vitest';
import { isRoot } from '../place.ts';
import { openCluster } from './index.ts';
import { isAlive, withLock } from './lock.ts';
import { running } from './postmaster.ts';

const made: string[] = [];
const freshFolder = () => {
  const name = mkdtempSync(join(tmpdir(), 'sparwright-cluster-'));
  made.push(name);
  return name;
};
/** Making a cluster is what takes time: most tests open the same one again. */
const folder = freshFolder();
afterAll(() => {
  for (const name of made) {
    const left = running(name);
    if (left) process.kill(left.pid, 'SIGKILL');
    rmSync(name, { recursive: true, force: true });
  }
});

const ask = async (address: pg.ClientConfig, question: string) => {
  const client = new pg.Client(address);
  client.on('error', () => {});
  await client.connect();
  try {
    return (await client.query(question)).rows[0];
  } finally {
    await client.end();
  }
};

it('is created for its owner only, on 127.0.0.1, durable, with a password', async () => {
  const cluster = await openCluster(folder);
  const address = cluster.address('postgres');
  const settings = 'fsync synchronous_commit full_page_writes listen_addresses unix_socket_directories'.split(' ');
  const values = await Promise.all(settings.map((s) => ask(address, `show ${s}`).then((r) => r[s])));
  expect(values).toEqual(['on', 'on', 'on', '127.0.0.1', '']);
  expect(await ask(address, "select datlocprovider, datlocale from pg_database where datname = 'postgres'")).toEqual({
    datlocprovider: 'b',
    datlocale: 'C.UTF-8',
  });
  expect(statSync(join(folder, 'password')).mode & 0o777).toBe(0o600);
  await expect(ask({ ...address, password: 'wrong' }, 'select 1')).rejects.toThrow(/password authentication failed/);
  if (isRoot()) expect(statSync(join(folder, 'cluster')).uid).not.toBe(0);
  await cluster.close();
  expect(running(folder)).toBeNull();
});

it('opened together it is one cluster, and the last one out stops it', async () => {
  const all = await Promise.all([openCluster(folder), openCluster(folder), openCluster(folder)]);
  expect(new Set(all.map((c) => c.address('x').port)).size).toBe(1);
  await all[0]!.close();
  await all[1]!.close();
  expect(running(folder)).not.toBeNull();
  expect(await ask(all[2]!.address('postgres'), 'select 1 as one')).toEqual({ one: 1 });
  await all[2]!.close();
  await all[2]!.close();
  expect(running(folder)).toBeNull();
});

it('comes back when it is killed, and tells', async () => {
  let told = 0;
  const cluster = await openCluster(folder, { onRestart: () => told++ });
  process.kill(running(folder)!.pid, 'SIGKILL');
  for (let i = 0; i < 1000 && told === 0; i++) await sleep(10);
  expect(await ask(cluster.address('postgres'), 'select 1 as one')).toEqual({ one: 1 });
  await cluster.close();
});

it('a pid file of a process that is gone, or of another program, does not hinder', async () => {
  const first = await openCluster(folder);
  const { pid } = running(folder)!;
  const file = join(folder, 'cluster', 'postmaster.pid');
  const before = readFileSync(file, 'utf8');
  await first.close();
  // Its pid file goes a moment before the process does.
  await vi.waitFor(() => expect(isAlive(pid)).toBe(false), { timeout: 10_000 });
  const other = spawn(process.execPath, ['-e', 'setTimeout(() => {}, 60000)'], { stdio: 'ignore' });
  for (const stale of [before, before.replace(String(pid), String(other.pid))]) {
    writeFileSync(file, stale);
    const again = await openCluster(folder);
    expect(await ask(again.address('postgres'), 'select 1 as one')).toEqual({ one: 1 });
    await again.close();
  }
  other.kill('SIGKILL');
});

it('a first start cut off half-way is begun again', async () => {
  const half = freshFolder();
  mkdirSync(join(half, 'cluster.new', 'base'), { recursive: true });
  writeFileSync(join(half, 'starting.lock'), '999999 1');
  const cluster = await openCluster(half);
  expect(await ask(cluster.address('postgres'), 'select 1 as one')).toEqual({ one: 1 });
  expect(existsSync(join(half, 'cluster.new'))).toBe(false);
  await cluster.close();
});

it('a folder that cannot be written gets a sentence', async () => {
  const file = join(folder, 'file');
  writeFileSync(file, '');
  await expect(openCluster(join(file, 'below'))).rejects.toMatchObject({
    code: 'store.folder-closed',
    message: expect.stringContaining('SPARWRIGHT_DATA'),
  });
});

it.runIf(isRoot())('root may keep data where other users cannot go: the cluster then lies where they can', async () => {
  const closed = join(freshFolder(), 'closed');
  mkdirSync(closed, { mode: 0o700 });
  const cluster = await openCluster(join(closed, 'data'));
  expect(cluster.folder).toBe(readFileSync(join(closed, 'data', 'database-lies-in'), 'utf8'));
  expect(await ask(cluster.address('postgres'), 'select 1 as one')).toEqual({ one: 1 });
  await cluster.close();
  rmSync(cluster.folder, { recursive: true, force: true });
});

it('a lock is held by one at a time, and taken over from the dead', async () => {
  const lock = join(folder, 'lock');
  writeFileSync(lock, '999999');
  let inside = 0;
  let most = 0;
  await Promise.all(
    Array.from({ length: 8 }, () =>
      withLock(lock, async () => {
        most = Math.max(most, ++inside);
        await sleep(5);
        inside--;
      }),
    ),
  );
  expect(most).toBe(1);
  writeFileSync(lock, `${process.pid} 1`); // our number, but another start: a number used again
  await withLock(lock, async () => {});
  expect(existsSync(lock)).toBe(false);
});
