import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { Refusal, type RefusalCode, type RefusalDetail } from '../../engine/index.ts';
import { PROGRAM } from '../version.ts';
import { computeKept, type FleetTask } from './compute.ts';
import type { Kept } from './summary.ts';

/** Beside the built program; run from its source, the work is done in this thread. */
const BUILT = new URL('./fleet-worker.js', import.meta.url);
const MOST_WORKERS = 4;
const LONGEST_MS = 60_000;
const breathe = (): Promise<void> => new Promise((r) => setImmediate(r));

interface Job {
  readonly task: FleetTask;
  readonly done: (kept: Kept) => void;
  readonly failed: (e: unknown) => void;
}
interface Answer {
  /** Said once, when it has been loaded: the version of the program it is part of. */
  readonly ready?: string;
  readonly kept?: Kept;
  readonly refusal?: { readonly code: RefusalCode; readonly detail: RefusalDetail };
  readonly fault?: string;
}

/** Computes aircraft in threads of their own, so that no request waits for one. */
export class Workshop {
  private readonly waiting: Job[] = [];
  private readonly workers = new Map<Worker, { job: Job; alarm: NodeJS.Timeout } | null>();
  private readonly free: Worker[] = [];
  private readonly ready = new Set<Worker>();
  private readonly file: URL;
  private threads: boolean;
  private closed = false;
  private turn: Promise<void> = Promise.resolve();
  /** How many aircraft are best under way at once: one more is read while the others are computed. */
  readonly lanes: number;

  constructor(threads = existsSync(fileURLToPath(BUILT)), file = BUILT) {
    this.threads = threads;
    this.file = file;
    this.lanes = threads ? 1 + this.most : 1;
  }
  private get most(): number {
    return Math.max(1, Math.min(MOST_WORKERS, availableParallelism() - 1));
  }

  /** `urgent` goes before what waits. @throws Refusal */
  async run(task: FleetTask, urgent = false): Promise<Kept> {
    if (!this.threads) return this.here(task);
    return new Promise<Kept>((done, failed) => {
      if (urgent) this.waiting.unshift({ task, done, failed });
      else this.waiting.push({ task, done, failed });
      this.next();
    });
  }
  async close(): Promise<void> {
    this.closed = true;
    for (const job of this.waiting.splice(0)) job.failed(new Error('the program is closing'));
    await Promise.all([...this.workers.keys()].map((w) => w.terminate()));
  }

  /** One after the other in this thread; requests are answered in between. @throws Refusal */
  private here(task: FleetTask): Promise<Kept> {
    const turn = this.turn.then(breathe);
    this.turn = turn;
    return turn.then(() => {
      if (this.closed) throw new Error('the program is closing');
      return computeKept(task);
    });
  }
  /** No thread can be started: what waits, and all that comes, is computed in this one. */
  private withoutThreads(because: string, job: Job | null): void {
    if (this.threads)
      process.stderr.write(`Aircraft are computed beside the requests, which are slower for it: ${because}.\n`);
    this.threads = false;
    for (const j of [...(job ? [job] : []), ...this.waiting.splice(0)]) this.here(j.task).then(j.done, j.failed);
  }
  private next(): void {
    if (this.closed || !this.waiting.length) return;
    const worker = this.free.pop() ?? (this.workers.size < this.most ? this.opened() : null);
    if (worker) this.give(worker, this.waiting.shift()!);
  }
  private opened(): Worker | null {
    try {
      return this.open();
    } catch (e) {
      this.withoutThreads(`a thread of its own could not be started (${(e as Error).message})`, null);
      return null;
    }
  }
  /** Listens once for its whole life: a worker whose listeners are all taken away goes deaf. */
  private open(): Worker {
    const worker = new Worker(this.file);
    this.workers.set(worker, null);
    worker.on('message', (a: Answer) => {
      if (a.ready === PROGRAM) return void this.ready.add(worker);
      if (a.ready !== undefined) return this.lost(worker, new Error(`it is of version ${a.ready}`));
      const job = this.over(worker);
      if (!this.closed) this.free.push(worker);
      if (job) settle(job, a);
      this.next();
    });
    worker.on('error', (e) => this.lost(worker, e));
    worker.on('exit', () => this.lost(worker, new Error('the thread that computed it ended')));
    worker.unref();
    return worker;
  }
  /** A worker that dies, or that works far too long on one aircraft, is replaced; its aircraft has a fault. */
  private give(worker: Worker, job: Job): void {
    const late = () => {
      this.lost(worker, new Error(`${job.task.aircraft} took longer than ${LONGEST_MS / 1000} s`));
      void worker.terminate();
    };
    this.workers.set(worker, { job, alarm: setTimeout(late, LONGEST_MS) });
    worker.postMessage(job.task);
  }
  private over(worker: Worker): Job | null {
    const held = this.workers.get(worker) ?? null;
    if (held) clearTimeout(held.alarm);
    if (this.workers.has(worker)) this.workers.set(worker, null);
    return held?.job ?? null;
  }
  private lost(worker: Worker, e: unknown): void {
    if (!this.workers.has(worker)) return;
    const job = this.over(worker);
    this.workers.delete(worker);
    const at = this.free.indexOf(worker);
    if (at >= 0) this.free.splice(at, 1);
    if (!this.ready.delete(worker) && (job || this.waiting.length) && !this.closed) {
      this.withoutThreads(`a thread of its own did not start (${(e as Error).message.split('\n')[0]})`, job);
      return void worker.terminate();
    }
    job?.failed(e);
    this.next();
  }
}

function settle(job: Job, { kept, refusal, fault }: Answer): void {
  if (kept) job.done(kept);
  else job.failed(refusal ? new Refusal(refusal.code, refusal.detail) : new Error(fault));
}
