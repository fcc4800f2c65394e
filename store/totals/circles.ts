import type pg from 'pg';
import type { record } from '../../engine/index.ts';
import { copyText } from './copy.ts';

/** An aircraft with the standing entries of it and of all that ever sat in it. */
export interface Circle {
  readonly aircraft: string;
  readonly entries: readonly record.Entry[];
  /** Number of the newest of them. */
  readonly last: number;
}
interface Group {
  readonly key: string;
  readonly lines: string[][];
}

const FIELDS = 'l.subject, l.number, l.kind, l.day, l.day_order, l.body';
const RECORD = `l.schema like 'record/%'`;

/**
 * Every aircraft of a shop with the entries of its circle, in the order of the subjects, read once through two
 * streams: the aircraft's own rows, and the rows of what sat in them. No more than a few aircraft are held.
 *
 * Bodies are as the log keeps them, not checked again; the paper of an entry is left out.
 */
export async function* circlesOf(pool: pg.Pool, shop: string): AsyncGenerator<Circle> {
  const own = await pool.connect();
  const other = await pool.connect();
  let broken = true;
  try {
    await own.query('begin isolation level repeatable read read only');
    const { rows } = await own.query<{ id: string }>('select pg_export_snapshot() as id');
    await other.query('begin isolation level repeatable read read only');
    await other.query(`set transaction snapshot ${other.escapeLiteral(rows[0]!.id)}`);
    const replaced = await replacedIn(own, shop);
    // In the order of the index: nothing is sorted or held, however long the log.
    await own.query('set local enable_seqscan = off; set local enable_bitmapscan = off; set local enable_sort = off');
    const name = own.escapeLiteral(shop);
    const parts = groups(copyText(other, partsQuery(name)));
    let part = await parts.next();
    for await (const group of groups(copyText(own, aircraftQuery(name)))) {
      if (!group.lines.some((f) => f[2] === 'aircraft')) continue;
      while (!part.done && part.value.key < group.key) part = await parts.next();
      const lines = [...group.lines];
      if (!part.done && part.value.key === group.key) for (const f of part.value.lines) lines.push(f.slice(1));
      yield circleOf(group.key, lines, replaced);
    }
    while (!part.done) part = await parts.next();
    for (const client of [own, other]) await client.query('commit');
    broken = false;
  } finally {
    // A reader that stops half way leaves a stream in the connection: it is closed, not used again.
    own.release(broken);
    other.release(broken);
  }
}

const aircraftQuery = (shop: string): string =>
  `select ${FIELDS} from log l where l.shop = ${shop} and ${RECORD} order by l.subject, l.number`;
const partsQuery = (shop: string): string => `
  with recursive up (subject, root) as (
    select subject, sits_in from fitment where shop = ${shop}
    union
    select up.subject, f.sits_in from up join fitment f on f.shop = ${shop} and f.subject = up.root
  )
  select up.root, ${FIELDS} from up
  join aircraft a on a.shop = ${shop} and a.subject = up.root
  join log l on l.shop = ${shop} and l.subject = up.subject and ${RECORD}
  order by up.root, l.subject, l.number`;

async function replacedIn(client: pg.ClientBase, shop: string): Promise<ReadonlySet<number>> {
  const { rows } = await client.query<{ n: number }>(
    'select replaces as n from log where shop = $1 and replaces is not null',
    [shop],
  );
  return new Set(rows.map((r) => r.n));
}

/** Lines that follow each other with the same first field. */
async function* groups(batches: AsyncIterable<string[][]>): AsyncGenerator<Group> {
  let group = null as Group | null;
  for await (const lines of batches)
    for (const fields of lines) {
      if (group?.key !== fields[0]) {
        if (group) yield group;
        group = { key: fields[0]!, lines: [] };
      }
      group!.lines.push(fields);
    }
  if (group) yield group;
}

function circleOf(aircraft: string, lines: readonly string[][], replaced: ReadonlySet<number>): Circle {
  const entries: record.Entry[] = [];
  let last = 0;
  for (const f of lines) {
    const [subject, id, kind, day, order, body] = f as [string, string, string, string, string, string];
    const number = Number(id);
    if (number > last) last = number;
    if (replaced.size > 0 && replaced.has(number)) continue;
    const made = { id, subject, kind, day, order: Number(order), evidence: 'copy', body: JSON.parse(body) };
    entries.push(made as unknown as record.Entry);
  }
  return { aircraft, entries, last };
}
