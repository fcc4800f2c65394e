import { spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { dirname, join } from 'node:path';
import pg from 'pg';
import { giveTo, nativeFolder } from './binaries.ts';
import { clusterFolder, dataFolder, openFolder } from './folders.ts';
import { databaseUser } from './user.ts';

export interface Cluster {
  /** Address of one database of the cluster. */
  url(database: string): string;
  /** Leaves the cluster; the last one out stops it. */
  leave(): Promise<void>;
}

const exe = (native: string, name: string) => join(native, 'bin', process.platform === 'win32' ? `${name}.exe` : name);
const pause = (ms: number) => new Promise((r) => setTimeout(r, ms));

function alive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (e) {
    return (e as NodeJS.ErrnoException).code === 'EPERM';
  }
}

async function freePort(): Promise<number> {
  return await new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as { port: number };
      probe.close(() => resolve(port));
    });
  });
}

/** One process at a time opens or stops a cluster; a lock of a dead process is taken over. */
async function locked<T>(folder: string, work: () => Promise<T>): Promise<T> {
  const lock = join(folder, 'opening.lock');
  for (let tries = 0; ; tries++) {
    try {
      writeFileSync(lock, String(process.pid), { flag: 'wx' });
      break;
    } catch (e) {
      if ((e as NodeJS.ErrnoException).code !== 'EEXIST') throw e;
      const holder = Number(existsSync(lock) ? readFileSync(lock, 'utf8') : 0);
      if (holder && !alive(holder)) rmSync(lock, { force: true });
      else if (tries > 600) throw new Error(`Process ${holder} has been opening the database for a minute; stop it and try again.`);
      else await pause(100);
    }
  }
  try {
    return await work();
  } finally {
    rmSync(lock, { force: true });
  }
}

async function answers(url: string): Promise<boolean> {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 2000 });
  client.on('error', () => {});
  try {
    await client.connect();
    await client.query('select 1');
    return true;
  } catch {
    return false;
  } finally {
    await client.end().catch(() => {});
  }
}

/**
 * Opens the embedded PostgreSQL of a data folder: creates it the first time, joins it where it already runs
 * (left by a killed parent, or serving another command), starts it otherwise.
 */
export async function openCluster(data: string = dataFolder()): Promise<Cluster> {
  openFolder(data);
  const folder = clusterFolder(data);
  openFolder(dirname(folder));
  const user = databaseUser();
  const native = nativeFolder(folder);
  const as = user ?? {};
  const passwordFile = join(data, 'database-password');
  const guests = join(data, 'in-use-by');
  mkdirSync(guests, { recursive: true });

  const run = (program: string, args: string[], wait = 60_000) => {
    const r = spawnSync(exe(native, program), args, {
      ...as,
      cwd: '/',
      encoding: 'utf8',
      timeout: wait,
      env: { PATH: process.env.PATH ?? '', LC_ALL: 'C', TZ: 'UTC' },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    return { ok: r.status === 0, said: `${r.stdout ?? ''}${r.stderr ?? ''}${r.error?.message ?? ''}`.trim() };
  };

  const create = () => {
    rmSync(folder, { recursive: true, force: true });
    const password = randomBytes(24).toString('base64url');
    writeFileSync(passwordFile, password, { mode: 0o600 });
    const parent = dirname(folder);
    const handed = join(parent, `handed-${process.pid}`);
    mkdirSync(folder, { mode: 0o700 });
    giveTo(folder, user);
    writeFileSync(handed, password, { mode: 0o600 });
    giveTo(handed, user);
    const made = run('initdb', ['-D', folder, '-U', 'sparwright', '--pwfile', handed, '-A', 'scram-sha-256', '--encoding=UTF8', '--locale-provider=builtin', '--builtin-locale=C.UTF-8', '--locale=C']);
    rmSync(handed, { force: true });
    if (!made.ok) {
      rmSync(folder, { recursive: true, force: true });
      throw new Error(`The database could not be created in ${folder}: ${made.said.split('\n').at(-1)}`);
    }
    // Written last: a folder without it was cut off while it was made, and is made again.
    writeFileSync(join(data, 'cluster-made'), folder);
  };

  const port = () => Number(readFileSync(join(folder, 'postmaster.pid'), 'utf8').split('\n')[3] ?? 0);
  const url = (database: string) =>
    `postgres://sparwright:${readFileSync(passwordFile, 'utf8')}@127.0.0.1:${port()}/${database}`;

  const start = async () => {
    const log = join(folder, 'server.log');
    let said = '';
    for (let tries = 0; tries < 12; tries++) {
      if (existsSync(join(folder, 'postmaster.pid')) && (await answers(url('postgres')).catch(() => false))) return;
      const started = run('pg_ctl', [
        'start', '-D', folder, '-w', '-t', '30', '-l', log,
        '-o', `-p ${await freePort()} -c listen_addresses=127.0.0.1 -c unix_socket_directories='' -c max_connections=60 -c shared_buffers=64MB -c fsync=on -c synchronous_commit=on -c timezone=UTC`,
      ]);
      if (started.ok && (await answers(url('postgres')))) return;
      said = started.said;
      await pause(400);
    }
    throw new Error(`The database in ${folder} did not start: ${said.split('\n').at(-1)} (its log: ${log})`);
  };

  const me = join(guests, String(process.pid));
  await locked(data, async () => {
    if (!existsSync(join(data, 'cluster-made')) || !existsSync(join(folder, 'PG_VERSION'))) create();
    await start();
    writeFileSync(me, '');
  });

  return {
    url,
    leave: () =>
      locked(data, async () => {
        rmSync(me, { force: true });
        const others = readdirSync(guests).filter((pid) => {
          if (alive(Number(pid))) return true;
          rmSync(join(guests, pid), { force: true });
          return false;
        });
        if (!others.length) run('pg_ctl', ['stop', '-D', folder, '-m', 'fast', '-w', '-t', '20'], 25_000);
      }),
  };
}
