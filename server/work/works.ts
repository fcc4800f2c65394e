import { createHash, randomUUID } from 'node:crypto';
import { isRefusal, Refusal } from '../../engine/index.ts';
import { PROGRAM } from '../version.ts';
import { Hands } from './hands.ts';
import type { WorkPart } from './part.ts';
import type { KindName, PartOf } from './tasks.ts';

/** A long work as asked: so many items of one kind, and what becomes of their parts. */
export interface Asked<K extends KindName, Result> {
  readonly task: K;
  readonly input: unknown;
  readonly seed: number;
  readonly items: number;
  /** Parts in item order. @throws Refusal */
  readonly reduce: (parts: readonly PartOf<K>[]) => Result | Promise<Result>;
}
/** What is to be seen of a work. */
export interface Seen<Result = unknown> {
  readonly done: number;
  readonly of: number;
  readonly result?: Result;
  readonly refusal?: Refusal;
  readonly stopped?: boolean;
}
interface Work {
  done: number;
  readonly of: number;
  result?: unknown;
  refusal?: Refusal;
  stopped: boolean;
  /** Settles when nothing of it runs any more. */
  readonly over: Promise<void>;
}

const MOST_KEPT = 8;
const PARTS = 100;
const LEAST_ITEMS = 20;
const MOST_ITEMS = 2000;

/** Long works: cut into parts, computed by the hands, looked at and stopped by their number. */
export class Works {
  private readonly kept = new Map<string, Work>();
  private readonly hands: Pick<Hands, 'lanes' | 'compute' | 'close'>;
  private closing = false;
  constructor(hands: Pick<Hands, 'lanes' | 'compute' | 'close'> = new Hands()) {
    this.hands = hands;
  }

  /** Begins, and answers its number at once. The oldest of too many is stopped and forgotten. */
  begin<K extends KindName, Result>(asked: Asked<K, Result>): string {
    const id = randomUUID();
    const work: Work = { done: 0, of: asked.items, stopped: false, over: Promise.resolve() };
    this.kept.set(id, Object.assign(work, { over: this.carryOut(work, asked) }));
    for (const oldest of [...this.kept.keys()].slice(0, Math.max(0, this.kept.size - MOST_KEPT))) this.forget(oldest);
    return id;
  }
  /** @throws Refusal `server.not-found` */
  look(id: string): Seen {
    const { done, of, result, refusal, stopped } = this.of(id);
    return { done, of, ...(refusal ? { refusal } : stopped ? { stopped } : result === undefined ? {} : { result }) };
  }
  /** Stops it; what was computed is dropped. @throws Refusal `server.not-found` */
  stop(id: string): void {
    this.of(id);
    this.forget(id);
  }
  /** Waits until nothing of it runs, and answers it. */
  async ended(id: string): Promise<Seen> {
    await this.of(id).over;
    return this.look(id);
  }
  async close(): Promise<void> {
    this.closing = true;
    for (const work of this.kept.values()) work.stopped = true;
    await this.hands.close();
    await Promise.all([...this.kept.values()].map((w) => w.over));
  }

  private of(id: string): Work {
    const work = this.kept.get(id);
    if (work) return work;
    throw new Refusal('server.not-found', {
      given: `the computation ${id}`,
      allowed: 'one that is under way, or that ended lately in this run of the program',
      remedy: 'Ask for it again: the same seed gives the same answer',
    });
  }
  private forget(id: string): void {
    const work = this.kept.get(id);
    if (work) work.stopped = true;
    this.kept.delete(id);
  }

  private async carryOut<K extends KindName, Result>(work: Work, asked: Asked<K, Result>): Promise<void> {
    try {
      const parts = await this.partsOf(work, asked);
      if (work.stopped && !this.closing) return;
      if (work.stopped) throw new Error('it was stopped');
      work.result = await asked.reduce(parts);
    } catch (e) {
      work.stopped = true;
      work.refusal = isRefusal(e) ? e : faultOf(e, this.closing);
    }
  }
  private async partsOf<K extends KindName>(work: Work, asked: Asked<K, unknown>): Promise<PartOf<K>[]> {
    const text = JSON.stringify(asked.input);
    const shared = { hash: createHash('sha256').update(text).digest('hex'), input: sharedBytes(text) };
    const every = Math.min(MOST_ITEMS, Math.max(LEAST_ITEMS, Math.ceil(asked.items / PARTS)));
    const starts = Array.from({ length: Math.ceil(asked.items / every) }, (_, i) => i * every);
    const parts = new Array<PartOf<K>>(starts.length);
    let next = 0;
    const lane = async (): Promise<void> => {
      while (next < starts.length && !work.stopped) {
        const at = next++;
        const from = starts[at]!;
        const to = Math.min(asked.items, from + every);
        const { task, seed } = asked;
        const made = (await this.hands.compute({ task, version: PROGRAM, ...shared, seed, from, to })) as WorkPart<K>;
        if ('refusal' in made) throw new Refusal(made.refusal.code, made.refusal.detail);
        parts[at] = made.part;
        work.done += to - from;
      }
    };
    const lanes = Array.from({ length: this.hands.lanes }, lane);
    try {
      await Promise.all(lanes);
    } catch (e) {
      next = starts.length;
      await Promise.allSettled(lanes);
      throw e;
    }
    return parts;
  }
}

function sharedBytes(text: string): SharedArrayBuffer {
  const bytes = new TextEncoder().encode(text);
  const shared = new SharedArrayBuffer(bytes.length);
  new Uint8Array(shared).set(bytes);
  return shared;
}

/** A fault of this program, or its end, told to whoever looks. */
function faultOf(e: unknown, closing: boolean): Refusal {
  if (!closing) process.stderr.write(`Long work: ${(e as Error).stack ?? String(e)}\n`);
  return new Refusal('server.fault', {
    given: closing ? 'the program is closing; the computation was stopped' : 'the computation met a fault of its own',
    allowed: 'a computation that runs to its end',
    remedy: closing
      ? 'Ask for it again when the program runs: the same seed gives the same answer'
      : 'Try again; if it comes back, note what you did and look at the program’s output',
  });
}
