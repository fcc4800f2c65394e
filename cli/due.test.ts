import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDemo } from '../server/demo.ts';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';

const folder = mkdtempSync(join(tmpdir(), 'sparwright-due-'));
let test: Awaited<ReturnType<typeof testStore>>;
beforeAll(async () => {
  test = await testStore();
  await openDemo(test.store);
});
afterAll(async () => {
  await test.done();
  rmSync(folder, { recursive: true, force: true });
});
function due(...args: string[]) {
  const r = spawnSync(process.execPath, [join(rootFolder(), 'scripts', 'sparwright.mjs'), 'due', ...args], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, DATABASE_URL: test.url },
  });
  return { code: r.status, out: r.stdout, err: r.stderr };
}

describe('sparwright due', () => {
  it('computes what no answer is stored for, then tells it as text', () => {
    const r = due('--shop', 'demo');
    expect(r.code).toBe(0);
    expect(r.out).toMatch(/\d+ actions on \d+ aircraft are or fall due from/);
    expect(r.out).toContain('ZQ-');
    expect(r.out).not.toContain('being computed');
  });
  it('writes files', () => {
    expect(due('--shop', 'demo', '--format', 'csv', '--out', 'due.csv').out).toBe('Due sheet written to due.csv.\n');
    const lines = parse(readFileSync(join(folder, 'due.csv')), { bom: true, columns: true }) as Record<
      string,
      string
    >[];
    expect(lines.length).toBeGreaterThan(3);
    expect(lines.some((l) => l['Treat as'] === 'overdue')).toBe(true);
    expect(due('--shop', 'demo', '--format', 'pdf', '--out', 'due.pdf').code).toBe(0);
    expect(readFileSync(join(folder, 'due.pdf')).toString('latin1').startsWith('%PDF')).toBe(true);
  });
  it.each([
    [['--shop', 'demo', '--from', '2027-02-01', '--to', '2027-01-01'], /does not lie before/],
    [['--shop', 'nowhere'], /a shop that was opened/],
    [['--format', 'doc'], /text, pdf, csv, xlsx/],
  ])('refuses %s in words', (args, words) => {
    const r = due(...args);
    expect(r.code).toBe(2);
    expect(r.err).toMatch(words);
  });
});
