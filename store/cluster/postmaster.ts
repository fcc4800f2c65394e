import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { closeSync, openSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { cannotSpawn } from './init.ts';
import { isAlive } from './lock.ts';
import type { RunAs } from './run-as.ts';

export interface Postmaster {
  readonly pid: number;
  readonly port: number;
  readonly ready: boolean;
}

/** What the cluster's own pid file says; null if no postmaster can be behind it. */
export function running(folder: string): Postmaster | null {
  try {
    const lines = readFileSync(join(folder, 'cluster', 'postmaster.pid'), 'utf8').split('\n');
    const pid = Number(lines[0]);
    if (!Number.isInteger(pid) || pid <= 0 || !isAlive(pid) || !looksLikePostgres(pid)) return null;
    return { pid, port: Number(lines[3]), ready: lines[7]?.trim() === 'ready' };
  } catch {
    return null;
  }
}

function looksLikePostgres(pid: number): boolean {
  if (process.platform !== 'linux') return true;
  try {
    const status = readFileSync(`/proc/${pid}/status`, 'utf8');
    return /^Name:\s+postgres/.test(status) && !/^State:\s+Z/m.test(status);
  } catch {
    return false;
  }
}

const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      server.close(() => resolve(port));
    });
  });

function launch(folder: string, native: string, as: RunAs | null, port: number, extra: Settings): ChildProcess {
  const log = openSync(join(folder, 'cluster.log'), 'w', 0o600);
  const settings = {
    listen_addresses: '127.0.0.1',
    port,
    unix_socket_directories: '',
    fsync: 'on',
    synchronous_commit: 'on',
    full_page_writes: 'on',
    password_encryption: 'scram-sha-256',
    shared_buffers: '32MB',
    ...extra,
  };
  try {
    const child = spawn(
      join(native, 'bin', 'postgres'),
      ['-D', join(folder, 'cluster'), ...Object.entries(settings).flatMap(([k, v]) => ['-c', `${k}=${v}`])],
      {
        cwd: folder,
        detached: true,
        stdio: ['ignore', log, log],
        env: { ...process.env, LC_ALL: 'C', TZ: 'UTC' },
        ...(as ? { uid: as.uid, gid: as.gid } : {}),
      },
    );
    child.unref();
    return child;
  } finally {
    closeSync(log);
  }
}

export type Settings = Readonly<Record<string, string | number>>;

const lastWords = (folder: string): string => {
  try {
    return readFileSync(join(folder, 'cluster.log'), 'utf8').trim().split('\n').slice(-2).join(' ');
  } catch {
    return 'it left no message';
  }
};

/** Starts the postmaster and waits until it answers. What a killed one left behind is waited out for some seconds. */
export async function start(
  folder: string,
  native: string,
  as: RunAs | null,
  wantedPort: number | null,
  extra: Settings,
): Promise<Postmaster> {
  const end = Date.now() + 20_000;
  let port = wantedPort ?? (await freePort());
  for (;;) {
    if (running(folder) === null) rmSync(join(folder, 'cluster', 'postmaster.pid'), { force: true });
    let failed: Error | null = null;
    const child = launch(folder, native, as, port, extra);
    child.once('error', (e) => {
      failed = e;
    });
    while (failed === null && child.exitCode === null && child.signalCode === null) {
      const now = running(folder);
      if (now?.ready && now.pid === child.pid) return now;
      if (Date.now() > end + 40_000) break;
      await sleep(10);
    }
    if (failed) throw cannotSpawn(as, (failed as Error).message);
    if (Date.now() > end) throw cannotSpawn(as, lastWords(folder));
    await sleep(200);
    port = await freePort();
  }
}

/** Orderly stop; waits until the process is gone. */
export async function stop(folder: string, native: string): Promise<void> {
  const now = running(folder);
  if (!now) return;
  if (process.platform === 'win32')
    spawnSync(join(native, 'bin', 'pg_ctl'), ['stop', '-m', 'fast', '-D', join(folder, 'cluster')]);
  else process.kill(now.pid, 'SIGINT');
  for (let i = 0; i < 500 && isAlive(now.pid) && running(folder) !== null; i++) await sleep(10);
}
