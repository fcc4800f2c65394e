import { createHash, randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { open, rename, rm } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { Readable, type Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { asc } from 'drizzle-orm';
import { isRefusal, Refusal } from '../../engine/index.ts';
import { exportLines } from '../carry.ts';
import type { Db } from '../database.ts';
import { diskFull, isDiskFull } from '../faults.ts';
import * as t from '../schema.ts';
import { type BackupHead, type BackupSummary, type BackupTail, type Section, VERSION } from './format.ts';
import { verifyBackupFile } from './read.ts';
import { packed, sealing } from './seal.ts';
import { shapeOfTables, tablesFigure } from './tables.ts';

export interface BackupOptions {
  /** Absent: every shop. */
  readonly shops?: readonly string[] | undefined;
  readonly program: string;
  readonly at: string;
}

const BATCH = 64 * 1024;

/** Lines of all shops chosen, in one snapshot: what is written meanwhile is not in it, and waits for nothing. */
async function* backupLines(tx: Db, o: BackupOptions, done: (head: BackupHead, tail: BackupTail) => void) {
  const all = await tx.select().from(t.shop).orderBy(asc(t.shop.invented), asc(t.shop.id));
  const unknown = o.shops?.find((id) => !all.some((s) => s.id === id));
  if (unknown !== undefined)
    throw new Refusal('store.shop-unknown', {
      given: `shop "${unknown}"`,
      allowed: `a shop of this store: ${all.map((s) => s.id).join(', ') || 'it has none'}`,
      remedy: 'Correct its identity, or leave it away to keep every shop',
    });
  const chosen = all.filter((s) => !o.shops || o.shops.includes(s.id));
  const hash = createHash('sha256');
  let lines = 0;
  const out = (line: string) => {
    lines++;
    hash.update(line).update('\n');
    return `${line}\n`;
  };
  const head: BackupHead = {
    sparwright: VERSION,
    program: o.program,
    made_at: o.at,
    shops: chosen.map((s) => ({
      id: s.id,
      name: s.name,
      invented: s.invented,
      entries: s.lastNumber,
      hash: s.lastHash,
    })),
  };
  yield out(JSON.stringify(head));
  const sections: Section[] = [];
  for (const shop of head.shops) {
    const own = createHash('sha256');
    let first = true;
    let last = '';
    for await (const line of exportLines(tx, shop.id)) {
      if (!first) own.update(line).update('\n');
      first = false;
      last = line;
      yield out(line);
    }
    const { files } = (JSON.parse(last) as { end: { files: number } }).end;
    sections.push({ ...shop, files, sha256: own.digest('hex'), tables: await tablesFigure(tx, shop.id) });
  }
  const dropped = o.shops ? [] : await tx.select().from(t.droppedShop).orderBy(asc(t.droppedShop.droppedAt));
  for (const shop of dropped) yield out(JSON.stringify({ dropped: shop }));
  const tail: BackupTail = {
    lines,
    sha256: hash.digest('hex'),
    shape: await shapeOfTables(tx),
    shops: sections,
    dropped: dropped.length,
  };
  yield `${JSON.stringify({ whole: tail })}\n`;
  done(head, tail);
}

async function* inBatches(lines: AsyncIterable<string>): AsyncGenerator<Buffer> {
  let held: string[] = [];
  let size = 0;
  for await (const line of lines) {
    held.push(line);
    size += line.length;
    if (size < BATCH) continue;
    yield Buffer.from(held.join(''));
    held = [];
    size = 0;
  }
  yield Buffer.from(held.join(''));
}

/** Writes a backup into a stream, while others go on writing. */
export async function backupTo(db: Db, out: Writable, o: BackupOptions): Promise<Omit<BackupSummary, 'problems'>> {
  let made: Omit<BackupSummary, 'problems'> | null = null;
  await db.transaction(
    async (tx) => {
      const lines = backupLines(tx, o, (head, tail) => {
        made = { head, tail };
      });
      await pipeline(Readable.from(inBatches(lines), { objectMode: false }), packed(), sealing(), out);
    },
    { isolationLevel: 'repeatable read', accessMode: 'read only' },
  );
  return made!;
}

const exists = (file: string) =>
  new Refusal('store.file-exists', {
    given: `${file} is already there`,
    allowed: 'a new file: no copy is written over by chance',
    remedy: 'Choose another name, or say --replace',
  });

/** The file just written reads as damaged: then the log it was written from is. */
function ofThisStore(e: unknown): never {
  if (!isRefusal(e)) throw e;
  throw new Refusal('store.not-whole', {
    given: `The log of this store does not agree with itself. ${e.detail.given}`,
    allowed: 'a log whose numbers, hashes and files all agree',
    remedy:
      'No copy was kept. Look with `sparwright verify`, and restore the newest whole copy into an empty data folder',
  });
}

async function durable(path: string): Promise<void> {
  const handle = await open(path, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** The file takes its name only when it is whole, on the disk, and was read again with the same result. */
export async function backupFile(
  db: Db,
  path: string,
  o: BackupOptions & { readonly replace?: boolean | undefined },
): Promise<BackupSummary & { readonly file: string }> {
  const file = resolve(path);
  if (!o.replace && existsSync(file)) throw exists(file);
  const part = `${file}.${randomBytes(4).toString('hex')}.part`;
  try {
    const out = await open(part, 'wx', 0o600);
    const written = await backupTo(db, out.createWriteStream(), o);
    await durable(part);
    const read = await verifyBackupFile(part).catch(ofThisStore);
    if (JSON.stringify(read.tail) !== JSON.stringify(written.tail))
      throw new Error('What was read again is not what was written. Look whether the disk is sound, then try again.');
    if (!o.replace && existsSync(file)) throw exists(file);
    await rename(part, file);
    if (process.platform !== 'win32') await durable(dirname(file));
    return { ...read, file };
  } catch (e) {
    await rm(part, { force: true });
    const { code, syscall } = e as NodeJS.ErrnoException;
    if (isDiskFull(e)) throw diskFull(`of ${dirname(file)}`);
    if (syscall && ['EACCES', 'EPERM', 'ENOENT', 'EISDIR', 'ENOTDIR', 'EROFS'].includes(code ?? ''))
      throw new Refusal('store.folder-closed', {
        given: `${file} cannot be written (${code})`,
        allowed: 'a file in a folder that exists and in which you may create files',
        remedy: 'Choose another place; nothing was written',
      });
    throw e;
  }
}
