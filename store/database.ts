import { statfsSync } from 'node:fs';
import type { ExtractTablesWithRelations } from 'drizzle-orm';
import { drizzle, type NodePgQueryResultHKT } from 'drizzle-orm/node-postgres';
import type { PgDatabase } from 'drizzle-orm/pg-core';
import pg from 'pg';
import { Refusal } from '../engine/index.ts';
import { type Cluster, type ClusterOptions, openCluster } from './cluster/index.ts';
import { diskFull, isDiskFull } from './faults.ts';
import { migrate } from './migrate.ts';

type None = Record<string, never>;
/** A connection or a transaction: every repository works on either. */
export type Db = PgDatabase<NodePgQueryResultHKT, None, ExtractTablesWithRelations<None>>;

export interface Database {
  readonly db: Db;
  readonly pool: pg.Pool;
  /** In words, for the start message. */
  readonly where: string;
  /** False if the disk under the data has no room left; true where that cannot be seen. */
  readonly hasRoom: () => boolean;
  close(): Promise<void>;
}

const APPLICATION = 'sparwright';
const DATABASE = 'sparwright';

async function open(
  config: pg.PoolConfig,
  where: string,
  after: () => Promise<void>,
  room: () => boolean,
): Promise<Database> {
  const pool = new pg.Pool({ max: 8, application_name: APPLICATION, ...config });
  // A lost connection, idle or at work, is made anew by the next question; it must not end the program.
  pool.on('error', () => {});
  pool.on('connect', (client) => client.on('error', () => {}));
  try {
    const client = await pool.connect().catch((e: Error) => {
      throw new Refusal('store.database-unreachable', {
        given: `The database at ${where} does not answer: ${e.message || (e as NodeJS.ErrnoException).code}`,
        allowed: 'a PostgreSQL database that accepts this user',
        remedy: 'Check that it runs and that DATABASE_URL is right',
      });
    });
    try {
      await migrate(client);
    } finally {
      client.release();
    }
  } catch (e) {
    await pool.end();
    await after();
    throw e;
  }
  const close = async () => {
    await pool.end();
    await after();
  };
  return { db: drizzle(pool) as unknown as Db, pool, where, hasRoom: room, close };
}

/** A database of a server that somebody runs. */
export function openUrl(url: string): Promise<Database> {
  let where = 'DATABASE_URL';
  try {
    const { host, pathname } = new URL(url);
    where = `${host}${pathname}`;
  } catch {
    /* the driver will say what is wrong with it */
  }
  return open(
    { connectionString: url },
    where,
    async () => {},
    () => true,
  );
}

/** The database stops when it cannot begin its next 16 MB of journal. */
const JOURNAL = 16 * 1024 * 1024;
function roomIn(folder: string): boolean {
  try {
    const { bavail, bsize } = statfsSync(folder);
    return bavail * bsize > JOURNAL;
  } catch {
    return true;
  }
}

async function ensureDatabase(cluster: Cluster): Promise<void> {
  const client = new pg.Client(cluster.address('postgres'));
  client.on('error', () => {});
  await client.connect();
  try {
    const known = await client.query('select 1 from pg_database where datname = $1', [DATABASE]);
    if (known.rowCount === 0) await client.query(`create database ${DATABASE}`);
  } catch (e) {
    if (!['42P04', '23505'].includes((e as { code?: string }).code ?? '')) throw e; // another process was quicker
  } finally {
    await client.end();
  }
}

/** The database of the embedded cluster in a folder. @throws Refusal `store.disk-full` */
export const openFolder = (folder: string, options: ClusterOptions = {}): Promise<Database> =>
  openIn(folder, options).catch((e) => {
    throw isDiskFull(e) ? diskFull(`with the data (${folder})`) : e;
  });

async function openIn(folder: string, options: ClusterOptions): Promise<Database> {
  let pool: pg.Pool | null = null;
  const onRestart = () => {
    if (pool) Object.assign((pool as unknown as { options: object }).options, cluster.address(DATABASE));
  };
  const cluster: Cluster = await openCluster(folder, { ...options, onRestart });
  try {
    await ensureDatabase(cluster);
  } catch (e) {
    await cluster.close();
    throw e;
  }
  const database = await open(
    cluster.address(DATABASE),
    folder,
    () => cluster.close(),
    () => roomIn(cluster.folder),
  );
  pool = database.pool;
  return database;
}
