import { and, asc, eq, gt } from 'drizzle-orm';
import type { Db } from './database.ts';
import { hashOf, type LogRow, sha256 } from './entry.ts';
import * as t from './schema.ts';

const CHUNK = 2000;
const NAMED = /"(?:[a-z_]+_)?sha256":"([0-9a-f]{64})"/g;

/** Checks a chain row by row; `at` carries it from chunk to chunk. */
export function chainProblems(rows: readonly LogRow[], at: { number: number; hash: string }): string[] {
  const problems: string[] = [];
  for (const row of rows) {
    if (row.number !== at.number + 1) problems.push(`entry ${at.number + 1} is missing before entry ${row.number}`);
    if (row.previousHash !== at.hash) problems.push(`entry ${row.number} does not follow the entry before it`);
    if (hashOf(row) !== row.hash) problems.push(`entry ${row.number} is not what was recorded`);
    at.number = row.number;
    at.hash = row.hash;
  }
  return problems;
}

export const filesNamed = (row: Pick<LogRow, 'body' | 'paper'>): string[] =>
  [...`${row.body}${row.paper ?? ''}`.matchAll(NAMED)].map((m) => m[1]!);

/** @returns what is wrong, in sentences; empty if the log is whole. Looks at one snapshot, so that writing may go on. */
export const verifyShop = (db: Db, shop: string): Promise<string[]> =>
  db.transaction((tx) => problemsOf(tx, shop), { isolationLevel: 'repeatable read', accessMode: 'read only' });

async function problemsOf(db: Db, shop: string): Promise<string[]> {
  const [head] = await db.select().from(t.shop).where(eq(t.shop.id, shop));
  if (!head) return [`there is no shop ${shop}`];
  const problems: string[] = [];
  const at = { number: 0, hash: '' };
  const named = new Map<string, number>();
  for (;;) {
    const rows = await db
      .select()
      .from(t.log)
      .where(and(eq(t.log.shop, shop), gt(t.log.number, at.number)))
      .orderBy(asc(t.log.number))
      .limit(CHUNK);
    if (rows.length === 0) break;
    problems.push(...chainProblems(rows, at));
    for (const row of rows) for (const sha of filesNamed(row)) named.set(sha, row.number);
  }
  if (at.number !== head.lastNumber || at.hash !== head.lastHash)
    problems.push(`the log ends at entry ${at.number}, but the shop has recorded ${head.lastNumber}`);
  for (const name of [...named.keys()]) {
    const [f] = await db.select({ content: t.file.content }).from(t.file).where(eq(t.file.sha256, name));
    if (!f) continue;
    if (sha256(f.content) !== name) problems.push(`file ${name} is not what was stored`);
    named.delete(name);
  }
  for (const [sha, number] of named) problems.push(`entry ${number} names file ${sha}, which is not here`);
  return problems;
}
