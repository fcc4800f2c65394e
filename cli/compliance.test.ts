import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openDemo } from '../server/demo.ts';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';

const folder = mkdtempSync(join(tmpdir(), 'sparwright-compliance-'));
let test: Awaited<ReturnType<typeof testStore>>;
beforeAll(async () => {
  test = await testStore();
  await openDemo(test.store);
});
afterAll(async () => {
  await test.done();
  rmSync(folder, { recursive: true, force: true });
});
function compliance(...args: string[]) {
  const all = [join(rootFolder(), 'scripts', 'sparwright.mjs'), 'compliance', '--shop', 'demo', ...args];
  const env = { ...process.env, DATABASE_URL: test.url };
  const r = spawnSync(process.execPath, all, { cwd: folder, encoding: 'utf8', env });
  return { code: r.status, out: r.stdout, err: r.stderr };
}
const PEM = ['--aircraft', 'ZQ-PEM', '--day', '2026-11-25'];

it('prints the list of one aircraft, the unproven side as it is', () => {
  const r = compliance(...PEM);
  expect(r.code).toBe(0);
  expect(r.out).toContain('treat as overdue');
  expect(r.out).toContain('not proven: its paper names the left side only');
  expect(r.out).toMatch(/approve nothing/i);
});
it.each([
  ['pdf', '%PDF-'],
  ['csv', '\ufeff'],
  ['xlsx', 'PK'],
])('writes it as %s', (format, begins) => {
  const out = join(folder, `list.${format}`);
  expect(compliance(...PEM, '--format', format, '--out', out)).toMatchObject({
    code: 0,
    out: expect.stringContaining(out),
  });
  expect(readFileSync(out).toString('utf8').startsWith(begins)).toBe(true);
});
it('says in three lines what it cannot do, and helps', () => {
  for (const args of [
    ['--aircraft', 'nobody'],
    [...PEM, '--known', '999999'],
  ]) {
    const r = compliance(...args);
    expect(r.code).toBe(2);
    expect(r.err).toMatch(/^Given: .*\nAllowed: .*\nDo: /m);
  }
  expect(compliance('--help').out).toContain('--format');
});
