import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import pg from 'pg';
import { isDiskFull } from '../faults.ts';
import { binaries } from './binaries.ts';
import { initialise, password, prepareFolder, USER } from './init.ts';
import { withLock } from './lock.ts';
import { running, type Settings, start, stop } from './postmaster.ts';
import { runAs } from './run-as.ts';

export interface Cluster {
  readonly folder: string;
  /** Where to connect now; the port changes if the cluster had to be started again elsewhere. */
  address(database: string): Address;
  /** Leaves; the last one out stops the cluster. */
  close(): Promise<void>;
}
export interface Address {
  readonly host: string;
  readonly port: number;
  readonly user: string;
  readonly password: string;
  readonly database: string;
}
export interface ClusterOptions {
  readonly settings?: Settings;
  /** Called when the cluster came back after it died under us. */
  readonly onRestart?: () => void;
}

const HOLDER = 'sparwright holder';

/** Opens the cluster of a folder: creates it, starts it or joins the one that runs. */
export async function openCluster(dataFolder: string, options: ClusterOptions = {}): Promise<Cluster> {
  const as = runAs();
  const folder = prepareFolder(dataFolder, as);
  const native = binaries(as);
  const lock = join(folder, 'starting.lock');
  let port: number | null = null;
  let holder: pg.Client | null = null;
  let closing = false;

  const address = (database: string): Address => ({
    host: '127.0.0.1',
    port: port ?? 0,
    user: USER,
    password: password(folder),
    database,
  });

  const hold = async (): Promise<boolean> => {
    const client = new pg.Client({ ...address('postgres'), application_name: HOLDER, keepAlive: true });
    client.on('error', () => {});
    try {
      await client.connect();
    } catch {
      client.end().catch(() => {});
      return false;
    }
    client.once('end', () => {
      if (holder === client && !closing) revive();
    });
    holder = client;
    return true;
  };

  const joinRunning = async (patience_ms: number): Promise<boolean> => {
    for (const end = Date.now() + patience_ms; ; await sleep(50)) {
      const now = running(folder);
      if (!now) return false;
      port = now.port;
      if (now.port > 0 && (await hold())) return true;
      if (Date.now() > end) return false;
    }
  };

  const begin = () =>
    withLock(lock, async () => {
      initialise(folder, native, as);
      if (await joinRunning(10_000)) return;
      for (let i = 0; ; i++) {
        port = (await start(folder, native, as, port, options.settings ?? {})).port;
        if (await hold()) return;
        if (i === 50) throw new Error(`The database in ${folder} does not accept its password.`);
        await sleep(50);
      }
    }).catch(async (e) => {
      // No room for the lock: a cluster that runs can still be joined, to look and to keep a copy elsewhere.
      if (!isDiskFull(e) || !(await joinRunning(2000))) throw e;
    });

  const revive = () => {
    holder = null;
    begin().then(
      () => (closing ? undefined : options.onRestart?.()),
      () => {
        if (!closing) setTimeout(revive, 1000).unref();
      },
    );
  };

  await begin();
  return {
    folder,
    address,
    close: () => {
      closing = true;
      const left = holder;
      return withLock(lock, async () => {
        const client = holder;
        if (!client) return;
        const others = await client
          .query(
            'select count(*)::int as n from pg_stat_activity where application_name = $1 and pid <> pg_backend_pid()',
            [HOLDER],
          )
          .catch(() => null);
        await client.end().catch(() => {});
        if (others === null || others.rows[0].n === 0) await stop(folder, native);
      }).catch(async (e) => {
        if (!isDiskFull(e)) throw e;
        await left?.end().catch(() => {}); // it runs on, and the next one out stops it
      });
    },
  };
}
