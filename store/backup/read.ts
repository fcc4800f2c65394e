import { createHash } from 'node:crypto';
import { open } from 'node:fs/promises';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGunzip } from 'node:zlib';
import { Refusal } from '../../engine/index.ts';
import { damaged, type ExportRead, readExport } from '../carry.ts';
import {
  type BackupHead,
  type BackupSummary,
  type BackupTail,
  type DroppedShop,
  type ShopMark,
  VERSION,
} from './format.ts';
import { unsealing } from './seal.ts';

const LONGEST_LINE = 128 * 1024 * 1024;
const LINE_END = 10;

async function* linesOf(bytes: AsyncIterable<Buffer>): AsyncGenerator<string> {
  let held: Buffer[] = [];
  let size = 0;
  for await (const chunk of bytes) {
    let from = 0;
    for (let to = chunk.indexOf(LINE_END); to >= 0; to = chunk.indexOf(LINE_END, from)) {
      held.push(chunk.subarray(from, to));
      yield Buffer.concat(held).toString('utf8');
      held = [];
      size = 0;
      from = to + 1;
    }
    held.push(chunk.subarray(from));
    size += chunk.length - from;
    if (size > LONGEST_LINE) throw damaged('a line has no end');
  }
  if (size > 0) throw damaged('its last line is cut short');
}

/** What becomes of a backup while it is read. Nothing given: it is only checked. */
export interface BackupTake {
  /** Must read the lines to their end. */
  shop?(mark: ShopMark, lines: AsyncIterable<string>, sha256: () => string): Promise<ExportRead>;
  dropped?(shop: DroppedShop): Promise<unknown>;
}

const json = (line: string): Record<string, unknown> => {
  try {
    return JSON.parse(line) as Record<string, unknown>;
  } catch {
    throw damaged('a line of it is not JSON');
  }
};

function headOf(line: string | undefined): BackupHead {
  const head = (line === undefined ? {} : json(line)) as Partial<BackupHead>;
  if (head.sparwright === VERSION && Array.isArray(head.shops)) return head as BackupHead;
  throw damaged(`it is not a backup of the version ${VERSION}`);
}

async function readLines(all: AsyncGenerator<string>, take: BackupTake): Promise<BackupSummary> {
  const hash = createHash('sha256');
  let lines = 0;
  const next = async (): Promise<string> => {
    const { value, done } = await all.next();
    if (done) throw damaged('it ends too early');
    return value;
  };
  const count = (line: string) => {
    hash.update(line).update('\n');
    lines++;
    return line;
  };
  const head = headOf(count(await next()));
  const shops: { entries: number; files: number; hash: string; sha256: string }[] = [];
  const problems: string[] = [];
  for (const mark of head.shops) {
    const own = createHash('sha256');
    async function* section() {
      yield count(await next());
      for (;;) {
        const line = count(await next());
        own.update(line).update('\n');
        yield line;
        if (line.startsWith('{"end":')) return;
      }
    }
    let sum = '';
    const sha256 = () => {
      sum ||= own.digest('hex');
      return sum;
    };
    const read = await (take.shop ? take.shop(mark, section(), sha256) : readExport(section()));
    if (read.shop.id !== mark.id || read.entries !== mark.entries || read.hash !== mark.hash)
      throw damaged(`shop ${mark.id} does not end where its first line says`);
    shops.push({ entries: read.entries, files: read.files, hash: read.hash, sha256: sha256() });
    for (const [name, number] of read.missing)
      problems.push(`shop ${mark.id}: entry ${number} names file ${name}, which the store did not have`);
  }
  let dropped = 0;
  for (;;) {
    const line = await next();
    const row = json(line);
    if (row.whole) {
      const tail = row.whole as BackupTail;
      const same = tail.shops?.every((s, i) => {
        const r = shops[i];
        return s.entries === r?.entries && s.files === r.files && s.hash === r.hash && s.sha256 === r.sha256;
      });
      if (!same || tail.shops.length !== shops.length || tail.dropped !== dropped || tail.lines !== lines)
        throw damaged('its last line counts other entries or files');
      if (tail.sha256 !== hash.digest('hex')) throw damaged('its content is not what was written');
      if (!(await all.next()).done) throw damaged('something follows its last line');
      return { head, tail, problems };
    }
    if (!row.dropped) throw damaged('a line of it is of no known kind');
    count(line);
    dropped++;
    await take.dropped?.(row.dropped as DroppedShop);
  }
}

const UNPACKING = ['Z_DATA_ERROR', 'Z_BUF_ERROR', 'Z_STREAM_ERROR'];

/** Reads a backup in constant memory and proves it whole. @throws Refusal `store.export-damaged` */
export async function readBackup(source: Readable, take: BackupTake = {}): Promise<BackupSummary> {
  let read: BackupSummary | null = null;
  try {
    await pipeline(source, unsealing(), createGunzip(), async (bytes: AsyncIterable<Buffer>) => {
      read = await readLines(linesOf(bytes), take);
    });
  } catch (e) {
    if (UNPACKING.includes((e as NodeJS.ErrnoException).code ?? ''))
      throw damaged('it cannot be unpacked: it was cut short, has changed, or is no backup');
    throw e;
  }
  return read!;
}

const UNREADABLE = ['ENOENT', 'EACCES', 'EISDIR', 'EPERM', 'ENOTDIR'];

/** Opens a file and hands its bytes on; one that cannot be read gets a sentence. @throws Refusal `cli.file-missing` */
export async function readFile<T>(path: string, work: (bytes: Readable) => Promise<T>): Promise<T> {
  try {
    const bytes = (await open(path, 'r')).createReadStream();
    try {
      return await work(bytes);
    } finally {
      bytes.destroy();
    }
  } catch (e) {
    const { code, syscall } = e as NodeJS.ErrnoException;
    if (!syscall || !UNREADABLE.includes(code ?? '')) throw e;
    throw new Refusal('cli.file-missing', {
      given: `the file "${path}" (${code})`,
      allowed: 'a copy that exists and that you may read',
      remedy: 'Correct the name',
    });
  }
}

/** @throws Refusal `store.export-damaged`, `cli.file-missing` */
export const verifyBackupFile = (path: string): Promise<BackupSummary> => readFile(path, (bytes) => readBackup(bytes));
