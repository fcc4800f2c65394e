import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { parseDay } from '../../engine/index.ts';
import { PROGRAM } from '../version.ts';
import { computeKept, type FleetTask } from './compute.ts';
import { Workshop } from './workshop.ts';

const folder = mkdtempSync(join(tmpdir(), 'workshop-'));
const fileOf = (text: string): URL => {
  const file = join(folder, `w${Math.random()}.mjs`);
  writeFileSync(file, text);
  return pathToFileURL(file);
};
const task = (n: number): FleetTask => ({
  aircraft: `aircraft:${n}`,
  day: parseDay('2026-11-25'),
  source: {
    day: parseDay('2026-11-25'),
    entries: [
      {
        id: '1',
        subject: `aircraft:${n}`,
        kind: 'aircraft',
        day: parseDay('2008-04-11'),
        order: 0,
        evidence: 'copy',
        body: { registration: 'ZQ-A', type: 'Whimbrel', model: 'W4', serial: '1', built: parseDay('2008-04-11') },
      },
    ],
    policy: { soon_days: 90, soon_h: 50, soon_landings: 100, stale_after_days: 120 },
    invented: true,
  } as unknown as FleetTask['source'],
  unread: [],
  documents: '[]',
  known: { entry: 1, touches: [], changesOn: null },
});

const said: string[] = [];
const listening = () =>
  vi.spyOn(process.stderr, 'write').mockImplementation((t) => {
    said.push(String(t));
    return true;
  });
afterEach(() => {
  vi.restoreAllMocks();
  said.length = 0;
});

describe('where no thread can be started, aircraft are computed all the same, and it is said once', () => {
  const there = fileOf('');
  rmSync(there);
  const missing = fileOf("import 'a-package-that-is-not-there'");
  const other = fileOf(
    "import { parentPort } from 'node:worker_threads'; parentPort.on('message', () => {}); parentPort.postMessage({ ready: '9.9.9' });",
  );
  const ends = fileOf('process.exit(3)');
  it.each([
    ['its file is gone', there],
    ['a module of it is gone', missing],
    ['it is of another version', other],
    ['it ends at once', ends],
  ])('%s', async (_, file) => {
    listening();
    const workshop = new Workshop(true, file);
    const kept = await Promise.all([1, 2, 3].map((n) => workshop.run(task(n))));
    expect(kept).toEqual([1, 2, 3].map((n) => computeKept(task(n))));
    expect(await workshop.run(task(4), true)).toEqual(computeKept(task(4)));
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/^Aircraft are computed beside the requests.*\n$/);
    await workshop.close();
  });
});

it('a thread that had started and dies costs its own aircraft, and no other', async () => {
  listening();
  const file = fileOf(`import { parentPort } from 'node:worker_threads';
    parentPort.on('message', (t) => t.aircraft === 'aircraft:2' ? process.exit(1) : parentPort.postMessage({ kept: t.aircraft }));
    parentPort.postMessage({ ready: '${PROGRAM}' });`);
  const workshop = new Workshop(true, file);
  const all = await Promise.allSettled([1, 2, 3, 4].map((n) => workshop.run(task(n))));
  expect(all.map((x) => x.status)).toEqual(['fulfilled', 'rejected', 'fulfilled', 'fulfilled']);
  expect(said).toEqual([]);
  await workshop.close();
});
