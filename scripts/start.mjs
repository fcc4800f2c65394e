// npm start: packages, build, database, address. Never reads the terminal.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { begin, root } from './begin.mjs';

await begin();
const server = spawn(
  process.execPath,
  ['--enable-source-maps', join(root, 'dist', 'server.js'), ...process.argv.slice(2)],
  {
    stdio: ['ignore', 'inherit', 'inherit'],
  },
);
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'])
  process.on(signal, () => server.kill(signal === 'SIGHUP' ? 'SIGTERM' : signal));
server.on('exit', (code, signal) => process.exit(code ?? (signal ? 1 : 0)));
