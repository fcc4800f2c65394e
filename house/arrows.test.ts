import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const made: string[] = [];
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true, force: true });
});

/** A small house that keeps every rule, with `planted` files on top. Returns the rules that were broken. */
function broken(planted: Readonly<Record<string, string>>): string[] {
  const house = mkdtempSync(join(tmpdir(), 'sparwright-arrows-'));
  made.push(house);
  const files = {
    'engine/index.ts': "export * from './foundation/index.ts';\nexport * as record from './record/index.ts';\n",
    'engine/foundation/index.ts': 'export const one = 1;\n',
    'engine/record/index.ts':
      "import { z } from 'zod';\nimport { one } from '../foundation/index.ts';\nexport const record = [z, one];\n",
    'engine/record/inner.ts': 'export const inner = 1;\n',
    'sheets/index.ts': "export { one } from '../engine/index.ts';\n",
    'store/index.ts': "import 'node:fs';\nexport { one } from '../engine/index.ts';\n",
    'server/index.ts': "import '../store/index.ts';\nimport '../sheets/index.ts';\n",
    'web/index.ts': "import '../sheets/index.ts';\n",
    ...planted,
  };
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(house, name)), { recursive: true });
    writeFileSync(join(house, name), text);
  }
  for (const name of ['.dependency-cruiser.cjs', 'tsconfig.json', 'package.json'])
    copyFileSync(join(root, name), join(house, name));
  symlinkSync(join(root, 'node_modules'), join(house, 'node_modules'), 'junction');
  const cruise = join(root, 'node_modules', 'dependency-cruiser', 'bin', 'dependency-cruise.mjs');
  const args = [
    cruise,
    '--config',
    '.dependency-cruiser.cjs',
    '-T',
    'json',
    'engine',
    'sheets',
    'store',
    'server',
    'web',
  ];
  const done = spawnSync(process.execPath, args, { cwd: house, encoding: 'utf8' });
  const { summary } = JSON.parse(done.stdout) as {
    summary: { totalCruised: number; violations: { rule: { name: string } }[] };
  };
  expect(summary.totalCruised).toBeGreaterThanOrEqual(8);
  return [...new Set(summary.violations.map((v) => v.rule.name))].sort();
}

it('a house that keeps the rules passes', () => {
  expect(broken({})).toEqual([]);
});

it.each([
  ['engine-is-pure', 'engine/record/bad.ts', "import 'node:fs';\n"],
  ['engine-is-pure', 'engine/record/bad.ts', "import 'fastify';\n"],
  ['engine-uses-only-what-it-may', 'engine/record/bad.ts', "import '../../store/index.ts';\n"],
  ['engine-folders-meet-at-their-index', 'engine/outlook/bad.ts', "import '../record/inner.ts';\n"],
  ['outside-sees-only-the-engine-face', 'server/bad.ts', "import '../engine/record/inner.ts';\n"],
  ['web-uses-only-what-it-may', 'web/bad.ts', "import type {} from '../store/index.ts';\n"],
  ['store-uses-only-what-it-may', 'store/bad.ts', "import '../sheets/index.ts';\n"],
  ['no-cycles', 'sheets/bad.ts', "import './worse.ts';\n"],
  ['unresolved', 'sheets/bad.ts', "import './nowhere.ts';\n"],
])('planted: %s in %s', (rule, file, text) => {
  const worse: Record<string, string> = rule === 'no-cycles' ? { 'sheets/worse.ts': "import './bad.ts';\n" } : {};
  expect(broken({ [file]: text, ...worse })).toContain(rule);
});
