// npm test: types, lint, arrows, then unit, store and browser tests; closes with one line of counts.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { begin, root } from './begin.mjs';
import { findChromium } from './chromium.mjs';

await begin();
const bin = (name) => join(root, 'node_modules', '.bin', process.platform === 'win32' ? `${name}.cmd` : name);
const count = { passed: 0, failed: 0, skipped: 0 };
const run = (name, args, env = {}) =>
  spawnSync(bin(name), args, {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, NODE_ENV: 'test', ...env },
    shell: process.platform === 'win32',
  }).status === 0;

function check(label, ok) {
  count[ok ? 'passed' : 'failed'] += 1;
  process.stdout.write(`${label}: ${ok ? 'passed' : 'FAILED'}\n`);
}
check('types', run('tsc', ['--noEmit', '-p', 'tsconfig.json']));
check('types of the engine, without DOM and Node', run('tsc', ['--noEmit', '-p', 'engine/tsconfig.json']));
check('lint', run('biome', ['check', '.']));
const folders = [
  'engine',
  'sheets',
  'documents',
  'intake',
  'kernels',
  'store',
  'server',
  'cli',
  'web',
  'examples',
].filter((f) => existsSync(join(root, f)));
check('arrows', run('depcruise', ['--config', '.dependency-cruiser.cjs', ...folders]));

const chromium = findChromium();
for (const project of ['unit', 'store', 'browser']) {
  if (project === 'browser' && !chromium) {
    process.stdout.write('browser: not run\n');
    count[process.env.CI ? 'failed' : 'skipped'] += 1;
    continue;
  }
  const report = join(root, '.sparwright', `report-${project}.json`);
  rmSync(report, { force: true });
  const ok = run(
    'vitest',
    ['run', '--project', project, '--reporter=default', '--reporter=json', `--outputFile.json=${report}`],
    { CHROMIUM: chromium ?? '' },
  );
  const r = existsSync(report) ? JSON.parse(readFileSync(report, 'utf8')) : null;
  count.passed += r?.numPassedTests ?? 0;
  count.failed += r?.numFailedTests ?? 0;
  count.skipped += (r?.numPendingTests ?? 0) + (r?.numTodoTests ?? 0);
  // A run that failed without a failed test (a file that does not load, an unhandled error) is a failure too.
  if (!ok && !(r?.numFailedTests > 0)) count.failed += 1;
  if (!r?.numTotalTests) count.failed += 1;
}
process.stdout.write(`${count.passed} passed, ${count.failed} failed, ${count.skipped} skipped\n`);
process.exit(count.failed ? 1 : 0);
