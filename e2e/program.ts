import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { rootFolder } from '../store/index.ts';

const base = process.getuid?.() === 0 ? '/var/tmp' : (process.env.TMPDIR ?? '/tmp');

/** The program as `npm start` runs it, on a data folder of its own. */
export class Program {
  readonly folder: string;
  #child: ChildProcess | null = null;
  url = '';

  constructor(folder = mkdtempSync(join(base, 'sparwright-e2e-'))) {
    this.folder = folder;
  }

  async start(): Promise<number> {
    const before = performance.now();
    const child = spawn(process.execPath, [join(rootFolder(), 'scripts', 'start.mjs')], {
      env: { ...process.env, SPARWRIGHT_DATA: this.folder, NODE_ENV: 'production' },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    this.#child = child;
    this.url = await new Promise((resolve, reject) => {
      let said = '';
      child.stdout?.on('data', (d) => {
        said += d;
        const found = /Sparwright is ready: (http:\S+)/.exec(said);
        if (found?.[1]) resolve(found[1]);
      });
      child.on('exit', (code) => reject(new Error(`the program ended with ${code}: ${said}`)));
    });
    return performance.now() - before;
  }

  async stop(signal: NodeJS.Signals = 'SIGTERM'): Promise<void> {
    const child = this.#child;
    if (!child || child.exitCode !== null || child.signalCode !== null) return;
    const gone = new Promise((r) => child.once('exit', r));
    child.kill(signal);
    await gone;
  }

  async end(): Promise<void> {
    await this.stop();
    rmSync(this.folder, { recursive: true, force: true });
  }
}

export const openBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: process.env.CHROMIUM || '/usr/bin/chromium',
    args: [
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
