import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, it } from 'vitest';
import { prepareFolder } from './cluster/init.ts';
import { runAs } from './cluster/run-as.ts';
import { openStore } from './index.ts';

const folder = mkdtempSync(join(tmpdir(), 'sparwright-kill-'));
const home = prepareFolder(folder, runAs());
const writers: ChildProcess[] = [];
afterAll(() => {
  for (const w of writers) w.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
  if (home !== folder) rmSync(home, { recursive: true, force: true });
});

const acknowledged: number[] = [];
const writerFile = fileURLToPath(new URL('./testing/writer.ts', import.meta.url));

async function startWriter(name: string): Promise<ChildProcess> {
  const child = spawn(process.execPath, ['--import', 'tsx', writerFile, folder, name], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  writers.push(child);
  let rest = '';
  await new Promise<void>((ready, reject) => {
    child.once('exit', () => reject(new Error('the writer ended before it was ready')));
    child.stdout!.on('data', (data: Buffer) => {
      const lines = (rest + data.toString()).split('\n');
      rest = lines.pop()!;
      for (const line of lines) {
        if (line === 'ready') ready();
        else acknowledged.push(Number(line));
      }
    });
  });
  return child;
}

function killPostgres(): boolean {
  try {
    const pid = Number(readFileSync(join(home, 'cluster', 'postmaster.pid'), 'utf8').split('\n')[0]);
    process.kill(pid, 'SIGKILL');
    return true;
  } catch {
    return false;
  }
}

/** Waits until the writer has recorded again, so that the next kill falls into work. */
async function untilMore(): Promise<void> {
  const before = acknowledged.length;
  for (let i = 0; i < 1500 && acknowledged.length < before + 6; i++) await sleep(10);
  expect(acknowledged.length).toBeGreaterThan(before);
}

it('forty-two kills of writer and database at random moments: nothing acknowledged is lost, nothing is torn', async () => {
  let kills = 0;
  for (let round = 0; round < 14; round++) {
    const writer = await startWriter(`writer${round}`);
    for (let i = 0; i < 2; i++) {
      await untilMore();
      await sleep(Math.random() * 40);
      if (killPostgres()) kills++;
    }
    await untilMore();
    await sleep(Math.random() * 40);
    const gone = new Promise((r) => writer.once('close', r));
    writer.kill('SIGKILL');
    kills++;
    await gone;
  }
  expect(kills).toBeGreaterThanOrEqual(42);

  const store = await openStore({ folder });
  try {
    const kept = await store.log.read('kill');
    const numbers = new Set(kept.map((e) => e.number));
    expect(acknowledged.length).toBeGreaterThan(50);
    expect(acknowledged.filter((n) => !numbers.has(n))).toEqual([]);
    expect(await store.log.verify('kill')).toEqual([]);
    const batches = new Map<string, number>();
    for (const e of kept) {
      const { detail } = e.body as { detail: string };
      batches.set(detail, (batches.get(detail) ?? 0) + 1);
    }
    expect([...batches.values()].filter((n) => n !== 3)).toEqual([]);
  } finally {
    await store.close();
  }
}, 400_000);
