#!/usr/bin/env node
// The command: builds what is stale, then runs. Works from any folder and without install scripts.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { begin, root } from './begin.mjs';

await begin();
const r = spawnSync(
  process.execPath,
  ['--enable-source-maps', join(root, 'dist', 'cli.js'), ...process.argv.slice(2)],
  { stdio: 'inherit' },
);
process.exit(r.status ?? 1);
