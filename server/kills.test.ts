import { randomBytes } from 'node:crypto';
import { createWriteStream, existsSync } from 'node:fs';
import { Writable } from 'node:stream';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterEach, expect, it } from 'vitest';
import { testStore } from '../store/testing/database.ts';
import { Trial } from './testing/kills.ts';

let trial: Trial | null = null;
afterEach(async () => {
  await trial?.end();
  trial = null;
});

/** The short form; bench/kills.ts makes as many as one likes. */
it('nine kills of the real program, its database and single database processes: nothing lost, nothing torn', async () => {
  trial = await Trial.open();
  const work = (['entries', 'entries', 'import', 'adopt', 'keep', 'record', 'letter', 'backup'] as const).map((w) =>
    trial!.work(w),
  );
  for (let i = 0; i < 9; i++) {
    await trial.untilMore();
    await sleep(Math.random() * 120);
    await trial.kill((['server', 'database', 'backend'] as const)[i % 3]!);
    if (i % 3 === 2) expect(await trial.check()).toEqual([]);
  }
  expect(Object.values(trial.kills).reduce((a, b) => a + b)).toBeGreaterThanOrEqual(8);
  expect(trial.acknowledged).toBeGreaterThan(20);
  expect(trial.sent.filter((s) => s.work === 'record' && s.acknowledged).length).toBeGreaterThan(2);
  for (const cut of [(ms: number) => trial!.cutBackup(ms), (ms: number) => trial!.cutRestore(ms, 2000)]) {
    const before = performance.now();
    expect(await cut(60_000)).toEqual({ ended: true, wrong: [] });
    const whole_ms = performance.now() - before;
    for (const share of [0.5, 0.8]) expect((await cut(whole_ms * share)).wrong).toEqual([]);
  }
  expect(await trial.check()).toEqual([]);
  trial.stop();
  await Promise.all(work);
}, 300_000);

it('no room for another file: a sentence, and everything else goes on', async () => {
  const BLOCK = 512;
  trial = await Trial.open(undefined, (17 * 1024 * 1024) / BLOCK);
  const answers = [];
  for (let i = 0; i < 14; i++) answers.push(await trial.upload(randomBytes(2e6)));
  const full = answers.at(-1)!;
  expect([full.status, await full.json()]).toEqual([
    507,
    expect.objectContaining({ code: 'store.disk-full', given: expect.stringContaining('is full') }),
  ]);
  expect(answers[0]!.status).toBe(200);
  expect((await trial.append('entries-full')).status).toBe(200);
  expect(await trial.check()).toEqual([]);
}, 120_000);

it('no room for a copy: a sentence, and the store works on', async () => {
  const t = await testStore();
  await t.store.shops.open({ id: 'own', name: 'Own', invented: false });
  const noRoom = Object.assign(new Error('no space left on device'), { code: 'ENOSPC' });
  const out = existsSync('/dev/full')
    ? createWriteStream('/dev/full')
    : new Writable({ write: (_, __, done) => done(noRoom) });
  const fault = await t.store.backupTo(out, { program: 'x', at: '2026-01-01T00:00:00.000Z' }).catch((e) => e);
  expect(t.store.faultInWords(fault)?.code).toBe('store.disk-full');
  expect(await t.store.alive()).toBe(true);
  await t.done();
});
