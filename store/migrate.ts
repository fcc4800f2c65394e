import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type pg from 'pg';
import { Refusal } from '../engine/index.ts';
import { rootFolder } from './place.ts';

const LOCK = 7_305_214;

interface Migration {
  readonly name: string;
  readonly sql: string;
  readonly hash: string;
}

export function migrations(folder = join(rootFolder(), 'store', 'migrations')): Migration[] {
  return readdirSync(folder)
    .filter((name) => /^\d{4}-.*\.sql$/.test(name))
    .sort()
    .map((name) => {
      const sql = readFileSync(join(folder, name), 'utf8').replaceAll('\r\n', '\n');
      return { name, sql, hash: createHash('sha256').update(sql).digest('hex') };
    });
}

const changed = (name: string, what: string) =>
  new Refusal('store.migration-changed', {
    given: `Migration ${name} ${what}`,
    allowed: 'the migrations this database was made with, and newer ones',
    remedy: 'Run the version of the program that made this database',
  });

/** Brings the database to the newest shape, in one transaction, one process at a time. */
export async function migrate(client: pg.ClientBase, all = migrations()): Promise<string[]> {
  const applied: string[] = [];
  await client.query('begin');
  try {
    await client.query('select pg_advisory_xact_lock($1)', [LOCK]);
    await client.query('create table if not exists migration (name text primary key, hash text not null)');
    const { rows } = await client.query<{ name: string; hash: string }>('select name, hash from migration');
    const before = new Map(rows.map((r) => [r.name, r.hash]));
    for (const { name } of rows)
      if (!all.some((m) => m.name === name)) throw changed(name, 'is unknown to this version');
    for (const { name, sql, hash } of all) {
      const known = before.get(name);
      if (known === hash) continue;
      if (known !== undefined) throw changed(name, 'has changed since it was applied');
      await client.query(sql);
      await client.query('insert into migration (name, hash) values ($1, $2)', [name, hash]);
      applied.push(name);
    }
    await client.query('commit');
    return applied;
  } catch (e) {
    await client.query('rollback').catch(() => {});
    throw e;
  }
}
