import { randomBytes } from 'node:crypto';
import pg from 'pg';
import { openStore, type Store } from '../index.ts';

export const TEST_URL = 'SPARWRIGHT_TEST_URL';
export const TEMPLATE = 'sparwright_template';

export function urlOf(server: string, database: string): string {
  const url = new URL(server);
  url.pathname = `/${database}`;
  return url.href;
}

async function asAdmin(sql: string): Promise<void> {
  const admin = new pg.Client(process.env[TEST_URL]);
  await admin.connect();
  try {
    await admin.query('select pg_advisory_lock(1)'); // a template is copied by one at a time
    await admin.query(sql);
  } finally {
    await admin.end();
  }
}

export interface TestStore {
  readonly store: Store;
  readonly url: string;
  /** Straight to the tables, for tests that tamper. */
  readonly pool: pg.Pool;
  done(): Promise<void>;
}

/** A store on a database of its own, copied from the template of this run. */
export async function testStore(): Promise<TestStore> {
  const name = `test_${randomBytes(6).toString('hex')}`;
  await asAdmin(`create database ${name} template ${TEMPLATE}`);
  const url = urlOf(process.env[TEST_URL]!, name);
  const store = await openStore({ databaseUrl: url });
  const pool = new pg.Pool({ connectionString: url, max: 2 });
  return {
    store,
    url,
    pool,
    done: async () => {
      await pool.end();
      await store.close();
      await asAdmin(`drop database if exists ${name} with (force)`);
    },
  };
}
