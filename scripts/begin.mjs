// What every entry script does first. Plain Node, no dependency: it must run before anything is installed.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));
const at = (...p) => join(root, ...p);

/** One sentence and out, where Node.js is too old. */
export function requireNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  process.stderr.write(
    `Sparwright needs Node.js 20.19 or newer; this is ${process.versions.node}. Install a newer Node.js and try again.\n`,
  );
  process.exit(1);
}

const alive = (pid) => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (e) {
    return e.code === 'EPERM';
  }
};

const textOf = (path) => {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
};

/** Takes the lock of a dead process away, but never one that came in the meantime. */
function clearStale(path, holder) {
  const aside = `${path}.stale.${process.pid}`;
  try {
    renameSync(path, aside);
    if (textOf(aside) !== holder) linkSync(aside, path);
  } catch {
    // another one was quicker
  }
  rmSync(aside, { force: true });
}

/** Runs `work` while no other script of this clone installs or builds. A lock of a dead process is taken over. */
export async function withLock(work) {
  const path = at('.sparwright', 'setup.lock');
  const mine = `${path}.${process.pid}`;
  let said = false;
  for (;;) {
    try {
      mkdirSync(at('.sparwright'), { recursive: true });
      writeFileSync(mine, String(process.pid));
      linkSync(mine, path);
      break;
    } catch (e) {
      if (e.code !== 'EEXIST') throw new Error(`Cannot write in ${root} (${e.code}). Make the folder writable.`);
    } finally {
      rmSync(mine, { force: true });
    }
    const holder = textOf(path);
    if (holder === null) continue;
    if (!alive(Number(holder) || 0x7fffffff)) {
      clearStale(path, holder);
      continue;
    }
    if (!said) process.stderr.write(`Waiting for process ${holder}, which is installing or building in this folder.\n`);
    said = true;
    await new Promise((r) => setTimeout(r, 200));
  }
  const release = () => rmSync(path, { force: true });
  process.once('exit', release);
  try {
    return await work();
  } finally {
    process.removeListener('exit', release);
    release();
  }
}

const sha = (text) => createHash('sha256').update(text).digest('hex');

const packagesOf = (path) => JSON.parse(textOf(path) ?? '{}').packages ?? {};

/** True if npm itself has laid this tree, whole and with the tools for building: then nothing is to be done. */
function treeMatches() {
  const laid = packagesOf(at('node_modules', '.package-lock.json'));
  if (Object.keys(laid).length === 0) return false;
  return Object.entries(packagesOf(at('package-lock.json'))).every(
    ([path, p]) => path === '' || p.optional || p.devOptional || p.peer || laid[path]?.version === p.version,
  );
}

/** The native half of a tool comes as an optional package, so that it is there without install scripts. */
const canBuild = () => existsSync(at('node_modules', '@esbuild', `${process.platform}-${process.arch}`));

/** `npm ci --include=dev` where the installed tree is missing or does not match the lock file. */
export function installWhatIsMissing() {
  const wanted = sha(
    readFileSync(at('package-lock.json')) + process.versions.modules + process.platform + process.arch,
  );
  const stamp = at('node_modules', '.sparwright-installed');
  if (textOf(stamp) === wanted) return;
  if (treeMatches() && canBuild()) {
    writeFileSync(stamp, wanted);
    return;
  }
  process.stderr.write('Installing what Sparwright needs (once, a minute or so) ...\n');
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const r = spawnSync(
    npm,
    ['ci', '--include=dev', '--include=optional', '--no-audit', '--no-fund', '--loglevel=error'],
    {
      cwd: root,
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, NODE_ENV: 'development' },
      shell: process.platform === 'win32',
    },
  );
  if (r.status !== 0) {
    process.stderr.write('The packages could not be installed (see above). Check the network, then try again.\n');
    process.exit(1);
  }
  writeFileSync(stamp, wanted);
}

/** Hash of all source files below these folders, by name and content. */
export function hashOf(folders) {
  const hash = createHash('sha256');
  const walk = (path) => {
    if (!existsSync(at(path))) return;
    if (statSync(at(path)).isFile()) {
      hash.update(path).update(readFileSync(at(path)));
      return;
    }
    for (const e of readdirSync(at(path), { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1)))
      if (
        (e.name !== 'node_modules' && e.name !== 'dist' && !/[.](test|stories)[.]tsx?$/.test(e.name)) ||
        /[.]stories[.]tsx$/.test(e.name)
      )
        walk(`${path}/${e.name}`);
  };
  folders.forEach(walk);
  return hash.digest('hex');
}

/** Node, packages and build in order, under one lock. */
export async function begin() {
  requireNode();
  try {
    await withLock(async () => {
      installWhatIsMissing();
      const { build } = await import('./build.mjs');
      await build();
    });
  } catch (e) {
    process.stderr.write(`${e.message}\n`);
    process.exit(1);
  }
}
