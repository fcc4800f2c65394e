import { randomUUID } from 'node:crypto';

/** Work that takes long: how far it is, and what came of it. Kept in memory only; a new start of the program forgets it. */
export interface Task<T> {
  readonly id: string;
  readonly shop: string;
  done: number;
  of: number;
  result: T | null;
  failed: unknown;
  stopped: boolean;
  /** Settles when the work is over, however it ended. */
  over: Promise<void>;
}

const MOST = 12;

/** Tasks of a kind. The oldest ones make room; one that still works is stopped then. */
export class Tasks<T> {
  readonly #all = new Map<string, Task<T>>();

  start(shop: string, of: number, work: (task: Task<T>) => Promise<T>): Task<T> {
    const task: Task<T> = {
      id: randomUUID(),
      shop,
      done: 0,
      of,
      result: null,
      failed: null,
      stopped: false,
      over: Promise.resolve(),
    };
    for (const [id, old] of this.#all) {
      if (this.#all.size < MOST) break;
      old.stopped = true;
      this.#all.delete(id);
    }
    this.#all.set(task.id, task);
    task.over = work(task).then(
      (result) => {
        task.result = result;
      },
      (e) => {
        task.failed = e;
      },
    );
    return task;
  }
  get(shop: string, id: string): Task<T> | null {
    const task = this.#all.get(id);
    return task?.shop === shop ? task : null;
  }
  stop(shop: string, id: string): void {
    const task = this.get(shop, id);
    if (!task) return;
    task.stopped = true;
    this.#all.delete(id);
  }
}
