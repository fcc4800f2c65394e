// npm start: packages, build, database, address. Never reads the terminal.
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { begin, root } from './begin.mjs';

/** npm runs this through a shell that passes no signals on: both are watched. */
const startedBy = () => {
  try {
    return `${process.ppid} ${readFileSync(`/proc/${process.ppid}/stat`, 'utf8').split(') ').at(-1).split(' ')[1]}`;
  } catch {
    return `${process.ppid}`;
  }
};
const before = startedBy();
await begin();
const server = spawn(
  process.execPath,
  ['--enable-source-maps', join(root, 'dist', 'server.js'), ...process.argv.slice(2)],
  // The channel carries nothing: the server stops in order when it closes, even if this script is killed.
  { stdio: ['ignore', 'inherit', 'inherit', 'ipc'] },
);
let asked = false;
const stop = (signal) => {
  if (asked) return;
  asked = true;
  server.kill(signal === 'SIGHUP' ? 'SIGTERM' : signal);
};
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => stop(signal));
if (process.env.npm_lifecycle_event) setInterval(() => startedBy() !== before && stop('SIGTERM'), 250).unref();
server.on('exit', (code, signal) => process.exit(code ?? (signal && !asked ? 1 : 0)));
