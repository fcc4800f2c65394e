import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { REFUSAL_CODES } from '../engine/foundation/refusal-codes.ts';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';
import { openDemo } from './demo.ts';
import { createServer } from './server.ts';
import { provoke } from './testing/gallery/provoke.ts';
import { provoking } from './testing/gallery/read.ts';
import type { Said } from './testing/gallery/said.ts';
import type { Stage } from './testing/gallery/steps.ts';

/** What the program says today must be what its page shows: `UPDATE_GALLERY=1` writes it anew, to be read before it is committed. */
const page = join(rootFolder(), 'examples', 'refusals', 'gallery.json');
const files = provoking();
let stage: Stage;
beforeAll(async () => {
  const test = await testStore();
  await openDemo(test.store);
  await test.store.shops.open({ id: 'own', name: 'This shop', invented: false });
  stage = { test, app: await createServer({ store: test.store, root: '/nowhere', today: () => '2026-01-15' }) };
});
afterAll(async () => {
  await stage.app.close();
  await stage.test.done();
});

/** Folders of this machine, numbers that change from run to run. */
const steady = (said: Said): Said =>
  JSON.parse(
    JSON.stringify(said)
      .replaceAll(/\/(?:var\/)?tmp\/[\w./-]+/g, '/a/folder')
      .replaceAll(/127\.0\.0\.1:\d+\/test_[0-9a-f]{12}/g, 'a database'),
  );

describe('every refusal has a file that provokes it', () => {
  it('one for each code, and none for a code that is gone', () =>
    expect(files.map((f) => f.code)).toEqual([...REFUSAL_CODES].sort()));
  const shown: Record<string, unknown>[] = [];
  it.each(files.map((f) => [f.code, f] as const))('%s', async (code, file) => {
    const said = steady(await provoke(file, stage));
    expect(said.code).toBe(code);
    for (const line of [said.given, said.allowed, said.remedy]) expect(line?.length).toBeGreaterThan(2);
    const { what } = file;
    shown.push({ ...said, what });
  });
  it('and stands on the page as the program says it', () => {
    const text = `${JSON.stringify(shown, null, 2)}\n`;
    if (process.env.UPDATE_GALLERY) writeFileSync(page, text);
    expect(existsSync(page) && JSON.parse(readFileSync(page, 'utf8'))).toEqual(JSON.parse(text));
  });
});
