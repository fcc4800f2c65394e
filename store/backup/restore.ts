import { createHash } from 'node:crypto';
import type { Readable } from 'node:stream';
import { and, between, eq } from 'drizzle-orm';
import { Refusal } from '../../engine/index.ts';
import { closeLog, damaged, type ExportRead, exportLines, type Head, intoLog, readExport } from '../carry.ts';
import type { Db } from '../database.ts';
import type { LogRow } from '../entry.ts';
import * as t from '../schema.ts';
import type { BackupSummary, DroppedShop, ShopMark } from './format.ts';
import { readBackup, readFile } from './read.ts';
import { shapeOfTables, tablesFigure } from './tables.ts';

export interface RestoreOptions {
  /** Append what the backup holds beyond a shop that is here. */
  readonly proceed?: boolean | undefined;
  /** Only into a store in which nothing is recorded. */
  readonly emptyOnly?: boolean | undefined;
}
export interface Restored {
  readonly id: string;
  readonly name: string;
  /** `restored`: it was not here. `continued`: the missing entries were appended. `identical`, `ahead`: nothing to do. */
  readonly outcome: 'restored' | 'continued' | 'identical' | 'ahead';
  /** Entries here now. */
  readonly entries: number;
  readonly added: number;
  readonly files: number;
  readonly hash: string;
  /** Its tables, made again, are those of the day of the backup; null where they were made by another version. */
  readonly sameTables: boolean | null;
}

const partsWays = (shop: ShopMark, here: number, at: number) =>
  new Refusal('store.shop-exists', {
    given: `Shop "${shop.id}" is here with ${here} entries, and from entry ${at} on they are not those of the backup`,
    allowed: 'a shop that is not here, or whose entries are the beginning of the backup',
    remedy: 'Nothing was changed. Restore into an empty data folder (SPARWRIGHT_DATA) and compare the two',
  });

async function compare(tx: Db, shop: ShopMark, here: number, rows: readonly LogRow[]): Promise<void> {
  const known = await tx
    .select({ number: t.log.number, hash: t.log.hash })
    .from(t.log)
    .where(and(eq(t.log.shop, shop.id), between(t.log.number, rows[0]!.number, rows.at(-1)!.number)));
  const hashes = new Map(known.map((k) => [k.number, k.hash]));
  const other = rows.find((r) => hashes.get(r.number) !== r.hash);
  if (other) throw partsWays(shop, here, other.number);
}

async function openShop(tx: Db, head: Head): Promise<number> {
  await tx.insert(t.shop).values(head).onConflictDoNothing();
  const [now] = await tx.select().from(t.shop).where(eq(t.shop.id, head.id)).for('update');
  if (now!.invented !== head.invented)
    throw new Refusal('store.shop-exists', {
      given: `Shop "${head.id}" is here and is ${now!.invented ? 'invented' : 'real'}, in the backup it is not`,
      allowed: 'one kind for the whole life of a shop',
      remedy: 'Nothing was changed. Restore into an empty data folder (SPARWRIGHT_DATA)',
    });
  if (now!.lastNumber === 0) await tx.update(t.shop).set({ name: head.name }).where(eq(t.shop.id, head.id));
  return now!.lastNumber;
}

/** SHA-256 over the export of a shop, head line left out: the same figure as in the backup. */
async function sumOfExport(tx: Db, shop: string): Promise<string> {
  const sum = createHash('sha256');
  let first = true;
  for await (const line of exportLines(tx, shop)) {
    if (!first) sum.update(line).update('\n');
    first = false;
  }
  return sum.digest('hex');
}

async function takeShop(
  tx: Db,
  mark: ShopMark,
  lines: AsyncIterable<string>,
  sha256: () => string,
  o: RestoreOptions,
): Promise<{ read: ExportRead; restored: Omit<Restored, 'sameTables'> }> {
  let here = 0;
  const into = intoLog(tx);
  const read = await readExport(lines, {
    head: async (head) => {
      if (head.id !== mark.id) throw damaged(`it names shop ${mark.id} and holds ${head.id}`);
      here = await openShop(tx, head);
    },
    entries: async (rows) => {
      const known = rows.filter((r) => r.number <= here);
      if (known.length > 0) await compare(tx, mark, here, known);
      const fresh = rows.slice(known.length);
      if (fresh.length === 0) return;
      if (here > 0 && !o.proceed)
        throw new Refusal('store.shop-exists', {
          given: `Shop "${mark.id}" is here with ${here} entries, and the backup goes on to entry ${mark.entries}`,
          allowed: 'a shop that is not here, unless the missing entries are asked for',
          remedy: `Nothing was changed. Say --continue to append the missing ${mark.entries - here}`,
        });
      await into.entries(fresh);
    },
    file: into.file,
  });
  const added = Math.max(0, read.entries - here);
  if (added > 0) await closeLog(tx, read);
  const ahead = here > read.entries;
  if (!ahead && (await sumOfExport(tx, mark.id)) !== sha256())
    throw new Refusal('store.not-whole', {
      given: `Shop "${mark.id}" in this store is not, line by line, what the backup holds`,
      allowed: 'a copy that comes back identical',
      remedy: 'Nothing was changed. Look with `sparwright verify`, or restore into an empty data folder',
    });
  const outcome = ahead ? 'ahead' : here === 0 ? 'restored' : added > 0 ? 'continued' : 'identical';
  const { entries, files, hash } = read;
  return {
    read,
    restored: { id: mark.id, name: mark.name, outcome, entries: Math.max(here, entries), added, files, hash },
  };
}

async function takeDropped(tx: Db, row: DroppedShop): Promise<void> {
  const { shop, droppedAt } = row;
  const [known] = await tx
    .select()
    .from(t.droppedShop)
    .where(and(eq(t.droppedShop.shop, shop), eq(t.droppedShop.droppedAt, droppedAt)));
  if (!known) await tx.insert(t.droppedShop).values(row);
}

async function refuseUnlessEmpty(tx: Db): Promise<void> {
  const filled = (await tx.select().from(t.shop)).find((s) => s.lastNumber > 0);
  if (!filled) return;
  throw new Refusal('store.shop-exists', {
    given: `This store is not empty: "${filled.name}" has ${filled.lastNumber} entries`,
    allowed: 'bringing a copy back into an empty store',
    remedy: 'Nothing was changed. Use `sparwright restore` in a terminal, or another data folder',
  });
}

/** Brings a backup back: all of it, proved identical before it counts, or nothing. */
export async function restore(
  db: Db,
  source: Readable,
  o: RestoreOptions = {},
): Promise<BackupSummary & { readonly shops: readonly Restored[] }> {
  return db.transaction(async (tx) => {
    if (o.emptyOnly) await refuseUnlessEmpty(tx);
    const taken: Omit<Restored, 'sameTables'>[] = [];
    const read = await readBackup(source, {
      shop: async (mark, lines, sha256) => {
        const { read, restored } = await takeShop(tx, mark, lines, sha256, o);
        taken.push(restored);
        return read;
      },
      dropped: (row) => takeDropped(tx, row),
    });
    const comparable = (await shapeOfTables(tx)) === read.tail.shape;
    const shops: Restored[] = [];
    for (const [i, s] of taken.entries()) {
      const skip = !comparable || s.outcome === 'ahead';
      const sameTables = skip ? null : (await tablesFigure(tx, s.id)) === read.tail.shops[i]!.tables;
      shops.push({ ...s, sameTables });
    }
    return { ...read, shops };
  });
}

export const restoreFile = (db: Db, path: string, o: RestoreOptions = {}) =>
  readFile(path, (bytes) => restore(db, bytes, o));
