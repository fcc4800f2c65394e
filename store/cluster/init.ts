import { spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import {
  chmodSync,
  chownSync,
  existsSync,
  linkSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { Refusal } from '../../engine/index.ts';
import { SYSTEM_FOLDER } from '../place.ts';
import { canReach, type RunAs } from './run-as.ts';

export const USER = 'sparwright';

/** Makes the data folder, or says in one sentence why it cannot. Returns where the cluster lies. @throws Refusal `store.folder-closed` */
export function prepareFolder(folder: string, as: RunAs | null): string {
  try {
    mkdirSync(folder, { recursive: true, mode: as ? 0o711 : 0o700 });
    if (as) chmodSync(folder, 0o711);
    const probe = join(folder, `.probe.${process.pid}`);
    writeFileSync(probe, '');
    rmSync(probe);
  } catch (e) {
    throw new Refusal('store.folder-closed', {
      given: `The data folder ${folder} cannot be written (${(e as NodeJS.ErrnoException).code})`,
      allowed: 'a folder in which you may create files',
      remedy: 'Give yourself write permission there, or set SPARWRIGHT_DATA to another folder',
    });
  }
  return as && !canReach(folder, as) ? elsewhere(folder) : folder;
}

/** For root: a folder that the database's user can reach. The data folder says which, so that removing it forgets the data. */
function elsewhere(folder: string): string {
  const pointer = join(folder, 'database-lies-in');
  if (!existsSync(pointer)) {
    const fresh = `${pointer}.${process.pid}`;
    writeFileSync(fresh, join(SYSTEM_FOLDER, `for-${randomBytes(6).toString('hex')}`));
    try {
      linkSync(fresh, pointer);
    } catch {
      /* another process was quicker */
    }
    rmSync(fresh);
  }
  const place = readFileSync(pointer, 'utf8');
  mkdirSync(place, { recursive: true, mode: 0o711 });
  chmodSync(place, 0o711);
  return place;
}

/** The password, made once, readable to its owner only. */
export function password(folder: string): string {
  const file = join(folder, 'password');
  if (!existsSync(file)) {
    const fresh = `${file}.${process.pid}`;
    writeFileSync(fresh, randomBytes(24).toString('base64url'), { mode: 0o600 });
    renameSync(fresh, file);
  }
  chmodSync(file, 0o600);
  return readFileSync(file, 'utf8');
}

export const cannotSpawn = (as: RunAs | null, why: string) =>
  new Refusal('store.cannot-run', {
    given: `PostgreSQL could not be started${as ? ` as the user ${as.name}` : ''}: ${why}`,
    allowed: as ? 'root must be able to change to an ordinary user here' : 'a system that runs its programs',
    remedy: as ? 'Start as an ordinary user, or set DATABASE_URL' : 'Set DATABASE_URL to a PostgreSQL database',
  });

/** Creates the cluster beside its place and moves it in when it is whole, so that a killed first start leaves nothing. */
export function initialise(folder: string, native: string, as: RunAs | null): void {
  const place = join(folder, 'cluster');
  if (existsSync(join(place, 'PG_VERSION'))) return;
  const fresh = join(folder, 'cluster.new');
  const secret = join(folder, 'password.new');
  rmSync(fresh, { recursive: true, force: true });
  mkdirSync(fresh, { mode: 0o700 });
  writeFileSync(secret, password(folder), { mode: 0o600 });
  try {
    if (as) {
      chownSync(fresh, as.uid, as.gid);
      chownSync(secret, as.uid, as.gid);
    }
    const options = ['-D', fresh, '-U', USER, `--pwfile=${secret}`, '-A', 'scram-sha-256', '-E', 'UTF8'];
    const locale = ['--locale-provider=builtin', '--builtin-locale=C.UTF-8', '--locale=C', '--no-instructions'];
    const done = spawnSync(join(native, 'bin', 'initdb'), [...options, ...locale], {
      env: { ...process.env, LC_ALL: 'C', TZ: 'UTC' },
      cwd: folder,
      encoding: 'utf8',
      ...(as ? { uid: as.uid, gid: as.gid } : {}),
    });
    if (done.error) throw done.error;
    if (done.status !== 0) throw new Error(done.stderr.trim().split('\n').slice(-3).join(' '));
    renameSync(fresh, place);
  } catch (e) {
    rmSync(fresh, { recursive: true, force: true });
    throw cannotSpawn(as, (e as Error).message);
  } finally {
    rmSync(secret, { force: true });
  }
}
