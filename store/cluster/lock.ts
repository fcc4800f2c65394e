import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';

/** A process and the moment it began, so that a number used again is not taken for the same process. */
const mark = (pid: number): string => {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return `${pid} ${stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19]}`;
  } catch {
    return `${pid}`;
  }
};

export const isAlive = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (e) {
    return (e as NodeJS.ErrnoException).code === 'EPERM';
  }
};

const read = (file: string): string | null => {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return null;
  }
};

/** Takes a lock left by a dead process away, but never one that came in the meantime. */
function clearStale(file: string, holder: string): void {
  const aside = `${file}.stale.${process.pid}`;
  try {
    renameSync(file, aside);
    if (read(aside) !== holder) linkSync(aside, file);
  } catch {
    /* another one was quicker */
  }
  rmSync(aside, { force: true });
}

/** Runs `work` while no other process holds the same lock file. A lock of a dead process is taken over. */
export async function withLock<T>(file: string, work: () => Promise<T>, patience_ms = 60_000): Promise<T> {
  mkdirSync(dirname(file), { recursive: true });
  const own = mark(process.pid);
  const mine = `${file}.${process.pid}.${Math.random().toString(36).slice(2)}`;
  const end = Date.now() + patience_ms;
  for (;;) {
    try {
      writeFileSync(mine, own);
      linkSync(mine, file);
      break;
    } catch (e) {
      if ((e as NodeJS.ErrnoException).code !== 'EEXIST') throw e;
    } finally {
      rmSync(mine, { force: true });
    }
    const holder = read(file);
    if (holder !== null) {
      const pid = Number.parseInt(holder, 10);
      if (!Number.isInteger(pid) || !isAlive(pid) || mark(pid) !== holder) clearStale(file, holder);
    }
    if (Date.now() > end) throw new Error(`${file} is held by process ${holder}; end that process and start again.`);
    await sleep(25);
  }
  try {
    return await work();
  } finally {
    rmSync(file, { force: true });
  }
}
