import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Piscina } from 'piscina';
import { PROGRAM } from '../version.ts';
import { computePart, type WorkPart, type WorkTask } from './part.ts';

/** Beside the built program; run from its source, parts are computed in this thread, requests answered in between. */
const BUILT = new URL('./work-worker.js', import.meta.url);
const MOST_THREADS = 8;
const IDLE_MS = 30_000;
const LONGEST_START_MS = 20_000;
const breathe = (): Promise<void> => new Promise((r) => setImmediate(r));

/** Who computes the parts: threads where there are any, else this one. */
export class Hands {
  private pool: Promise<Piscina | null> | null = null;
  private threads: boolean;
  private closed = false;
  private readonly file: URL;
  private readonly most: number;
  private readonly longestStart_ms: number;

  constructor(
    threads = existsSync(fileURLToPath(BUILT)),
    file = BUILT,
    most = availableParallelism(),
    longestStart_ms = LONGEST_START_MS,
  ) {
    this.threads = threads;
    this.file = file;
    this.most = Math.max(1, Math.min(MOST_THREADS, most));
    this.longestStart_ms = longestStart_ms;
  }
  /** How many parts are best under way at once. */
  get lanes(): number {
    return this.threads ? this.most : 1;
  }

  /** @throws what the part throws, or that the program is closing */
  async compute(task: WorkTask): Promise<WorkPart> {
    if (this.threads && !this.closed) this.pool ??= this.opened();
    const pool = this.threads && !this.closed ? await this.pool : null;
    if (pool) return pool.run(task);
    await breathe();
    if (this.closed) throw new Error('the program is closing');
    return computePart(task);
  }
  async close(): Promise<void> {
    this.closed = true;
    await (await this.pool)?.destroy();
  }

  /** Threads of this version that have answered once; else none, said once. */
  private async opened(): Promise<Piscina | null> {
    const pool = new Piscina({
      filename: this.file.href,
      minThreads: 0,
      maxThreads: this.most,
      idleTimeout: IDLE_MS,
    });
    const why = await cannotStart(pool, this.longestStart_ms);
    if (why === null) return pool;
    this.threads = false;
    if (!this.closed) process.stderr.write(`Long work is done beside the requests, which are slower for it: ${why}.\n`);
    await pool.destroy();
    return null;
  }
}

async function cannotStart(pool: Piscina, longest_ms: number): Promise<string | null> {
  let alarm: NodeJS.Timeout | undefined;
  const failed = new Promise<string>((r) => {
    pool.on('error', (e: unknown) =>
      r(`a thread did not start (${e instanceof Error ? e.message.split('\n')[0] : e})`),
    );
    alarm = setTimeout(() => r(`no thread answered within ${longest_ms / 1000} s`), longest_ms);
  });
  const asked = pool.run('which version?').then(
    (version) => (version === PROGRAM ? null : `the threads are of version ${version}`),
    (e: Error) => `a thread did not start (${e.message.split('\n')[0]})`,
  );
  const why = await Promise.race([asked, failed]);
  clearTimeout(alarm);
  return why;
}
