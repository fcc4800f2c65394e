import { once } from 'node:events';
import type { Duplex } from 'node:stream';
import pg from 'pg';
import { entriesOf, SHOP } from './fleet.ts';

interface Copying {
  sendCopyFromChunk(chunk: Buffer): void;
  endCopyFrom(): void;
  query(text: string): void;
  readonly stream: Duplex;
}
/** `COPY ... FROM STDIN`, fed as fast as the server takes it. */
function copyIn(client: pg.Client, text: string, feed: Iterable<string>): Promise<void> {
  return new Promise((done, failed) => {
    const copy = {
      submit: (connection: Copying) => connection.query(text),
      handleCopyInResponse: async (connection: Copying) => {
        for (const lines of feed) {
          connection.sendCopyFromChunk(Buffer.from(lines));
          if (connection.stream.writableLength > 4_000_000) await once(connection.stream, 'drain');
        }
        connection.endCopyFrom();
      },
      handleError: failed,
      handleReadyForQuery: () => done(),
      handleCommandComplete: () => {},
      handleRowDescription: () => {},
    };
    client.query(copy as never);
  });
}

const escaped = (s: string) => s.replaceAll('\\', '\\\\');
const CHUNK = 100;

/** Lines for the log. The seals are of the right length but seal nothing: no question here reads them. */
function* lines(aircraft: number): Generator<string> {
  let number = 0;
  for (let i = 0; i < aircraft; i += CHUNK) {
    let text = '';
    for (let k = i; k < Math.min(aircraft, i + CHUNK); k++)
      for (const e of entriesOf(k, number + 1)) {
        number++;
        const seal = String(number).padStart(32, '0');
        const paper = `{"page":"${number % 200}","title":"Journey log ${k}"}`;
        text += `${SHOP}\t${number}\t${e.subject}\t${e.kind}\t${e.day}\t${e.order}\trecord/1\t${escaped(e.body)}\tcopy\t${paper}\t\\N\t${e.replaces ?? '\\N'}\t2026-11-20T08:00:00.000Z\tbench\t${seal}${seal}\t${seal}${seal}\n`;
      }
    yield text;
  }
}

/** Fills an empty database with the fleet; returns how many entries. */
export async function load(url: string, aircraft: number): Promise<number> {
  const client = new pg.Client(url);
  await client.connect();
  await client.query(`set session_replication_role = replica`);
  await client.query(`insert into shop (id, name, invented) values ($1, 'Bench', true)`, [SHOP]);
  // Checks and indexes come after: the rows are the program's own form.
  const { rows: checks } = await client.query<{ conname: string; def: string }>(
    `select conname, pg_get_constraintdef(oid) def from pg_constraint where conrelid = 'log'::regclass and contype in ('c', 'p', 'f')
     order by contype = 'p', contype = 'f' desc`,
  );
  for (const c of checks) await client.query(`alter table log drop constraint ${c.conname}`);
  await client.query('drop index log_subject; drop index log_replaces');
  await copyIn(client, 'copy log from stdin', lines(aircraft));
  await client.query(`set maintenance_work_mem = '512MB'`);
  await client.query('alter table log add primary key (shop, number)');
  await client.query('create index log_subject on log (shop, subject, number)');
  await client.query('create unique index log_replaces on log (shop, replaces) where replaces is not null');
  await client.query(`
    insert into aircraft (shop, subject, registration, type, model, serial, built, last_number)
    select shop, subject, b->>'registration', b->>'type', b->>'model', b->>'serial', b->>'built', number
    from (select *, body::jsonb b from log where kind = 'aircraft') l`);
  await client.query(`
    insert into part (shop, subject, part, hand, part_number, built, sits_in, place, since, last_number)
    select l.shop, l.subject, l.b->>'part', l.b->>'hand', l.b->>'part_number', l.b->>'built', f.b->>'into', f.b->>'place', f.day, f.number
    from (select *, body::jsonb b from log where kind = 'part') l
    join (select *, body::jsonb b from log where kind = 'fitment') f using (shop, subject)`);
  await client.query(`
    insert into fitment (shop, subject, number, sits_in, place, from_day, to_day)
    select shop, subject, number, b->>'into', b->>'place', day, null from (select *, body::jsonb b from log where kind = 'fitment') f`);
  const { rows } = await client.query<{ n: number }>('select max(number) n from log');
  await client.query('update shop set last_number = $1', [rows[0]!.n]);
  await client.query('vacuum (freeze, analyze) log');
  for (const table of ['aircraft', 'part', 'fitment']) await client.query(`vacuum (analyze) ${table}`);
  await client.end();
  return rows[0]!.n;
}
