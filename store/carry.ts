import { and, asc, eq, gt } from 'drizzle-orm';
import { Refusal } from '../engine/index.ts';
import type { Db } from './database.ts';
import { type LogRow, sha256 } from './entry.ts';
import { rebuild } from './project.ts';
import * as t from './schema.ts';
import { chainProblems, filesNamed } from './verify.ts';

const VERSION = 'log/1';
const CHUNK = 500;

export const damaged = (why: string) =>
  new Refusal('store.export-damaged', {
    given: `This copy is damaged: ${why}`,
    allowed: 'a whole, unchanged copy of a log',
    remedy: 'Nothing was taken in. Make the copy again, or use an older one',
  });

/** The log of a shop with its files, as lines of JSON: head, entries, files, and a last line that proves it whole. */
export async function* exportLines(db: Db, shop: string): AsyncGenerator<string> {
  const [head] = await db.select().from(t.shop).where(eq(t.shop.id, shop));
  if (!head)
    throw new Refusal('store.shop-unknown', {
      given: `Shop "${shop}"`,
      allowed: 'a shop of this store',
      remedy: 'Correct its identity',
    });
  yield JSON.stringify({ sparwright: VERSION, shop: { id: head.id, name: head.name, invented: head.invented } });
  let last = 0;
  let lastHash = '';
  const named = new Set<string>();
  while (last < head.lastNumber) {
    const rows = await db
      .select()
      .from(t.log)
      .where(and(eq(t.log.shop, shop), gt(t.log.number, last)))
      .orderBy(asc(t.log.number))
      .limit(Math.min(CHUNK, head.lastNumber - last));
    if (rows.length === 0) break;
    for (const row of rows) {
      const { shop: _, ...entry } = row;
      for (const name of filesNamed(row)) named.add(name);
      yield JSON.stringify({ entry });
    }
    last = rows.at(-1)!.number;
    lastHash = rows.at(-1)!.hash;
  }
  let files = 0;
  for (const name of [...named].sort()) {
    const [f] = await db.select().from(t.file).where(eq(t.file.sha256, name));
    if (!f) continue;
    files++;
    yield JSON.stringify({ file: { sha256: name, mediaType: f.mediaType, base64: f.content.toString('base64') } });
  }
  yield JSON.stringify({ end: { entries: last, files, hash: lastHash } });
}

export interface Head {
  readonly id: string;
  readonly name: string;
  readonly invented: boolean;
}
export interface ExportedFile {
  readonly sha256: string;
  readonly mediaType: string;
  readonly content: Buffer;
}
interface Line {
  sparwright?: string;
  shop?: Head;
  entry?: Omit<LogRow, 'shop'>;
  file?: { sha256: string; mediaType: string; base64: string };
  end?: { entries: number; files: number; hash: string };
}
/** What becomes of an export while it is read; whatever is left out is only checked. */
export interface ExportSink {
  head?(shop: Head): Promise<unknown>;
  /** Rows that follow one another and whose hashes were checked. */
  entries?(rows: LogRow[]): Promise<unknown>;
  file?(file: ExportedFile): Promise<unknown>;
}
export interface ExportRead {
  readonly shop: Head;
  readonly entries: number;
  readonly files: number;
  readonly hash: string;
  /** Files that an entry names and the export does not hold, with the entry. */
  readonly missing: ReadonlyMap<string, number>;
}

const parse = (line: string, number: number): Line => {
  try {
    return JSON.parse(line);
  } catch {
    throw damaged(`line ${number} is not JSON`);
  }
};

function headOf(line: Line): Head {
  if (line.sparwright !== VERSION || !line.shop) throw damaged(`it does not begin with the version ${VERSION}`);
  return { id: line.shop.id, name: line.shop.name, invented: line.shop.invented };
}

/** Reads an export line by line, in constant memory, and proves it: numbers, chain, hashes, files, counts. */
export async function readExport(
  lines: Iterable<string> | AsyncIterable<string>,
  sink: ExportSink = {},
): Promise<ExportRead> {
  let shop: Head | null = null;
  let end: Line['end'];
  let number = 0;
  let files = 0;
  const at = { number: 0, hash: '' };
  const waiting: LogRow[] = [];
  const missing = new Map<string, number>();
  const flush = async () => {
    const rows = waiting.splice(0);
    if (rows.length === 0) return;
    const [problem] = chainProblems(rows, at);
    if (problem) throw damaged(problem);
    for (const row of rows) for (const name of filesNamed(row)) missing.set(name, row.number);
    await sink.entries?.(rows);
  };
  for await (const text of lines) {
    if (text.trim() === '') continue;
    number++;
    const line = parse(text, number);
    if (end) throw damaged('something follows its last line');
    if (!shop) {
      shop = headOf(line);
      await sink.head?.(shop);
    } else if (line.entry) {
      if (files > 0) throw damaged('an entry follows the files');
      if (waiting.push({ ...line.entry, shop: shop.id }) === CHUNK) await flush();
    } else if (line.file) {
      await flush();
      const content = Buffer.from(line.file.base64, 'base64');
      if (sha256(content) !== line.file.sha256) throw damaged(`file ${line.file.sha256} has changed`);
      missing.delete(line.file.sha256);
      await sink.file?.({ sha256: line.file.sha256, mediaType: line.file.mediaType, content });
      files++;
    } else if (line.end) end = line.end;
    else throw damaged(`line ${number} is neither an entry nor a file`);
  }
  if (!shop) throw damaged('it is empty');
  await flush();
  if (!end) throw damaged('its last line is missing');
  if (end.entries !== at.number || end.files !== files || end.hash !== at.hash)
    throw damaged('entries or files are missing');
  return { shop, entries: at.number, files, hash: at.hash, missing };
}

/** Writes what an export holds into the tables of the log. */
export const intoLog = (tx: Db): Required<Pick<ExportSink, 'entries' | 'file'>> => ({
  entries: (rows) => tx.insert(t.log).values(rows),
  file: (file) => tx.insert(t.file).values(file).onConflictDoNothing(),
});

/** After the last entry: the shop stands at it, and its projections are made again. */
export async function closeLog(tx: Db, read: ExportRead): Promise<void> {
  await tx.update(t.shop).set({ lastNumber: read.entries, lastHash: read.hash }).where(eq(t.shop.id, read.shop.id));
  await rebuild(tx, read.shop.id);
}

async function takeHead(tx: Db, shop: Head): Promise<void> {
  const made = await tx.insert(t.shop).values(shop).onConflictDoNothing().returning();
  if (made.length === 0)
    throw new Refusal('store.shop-exists', {
      given: `Shop "${shop.id}" is already in this store`,
      allowed: 'taking in a shop that is not there yet',
      remedy: 'Use an empty store, or drop the shop first if it is an invented one',
    });
}

/** Takes an export in: all of it, proved, or nothing. */
export function importLines(db: Db, lines: Iterable<string> | AsyncIterable<string>): Promise<Head> {
  return db.transaction(async (tx) => {
    const read = await readExport(lines, { head: (shop) => takeHead(tx, shop), ...intoLog(tx) });
    await closeLog(tx, read);
    return read.shop;
  });
}
