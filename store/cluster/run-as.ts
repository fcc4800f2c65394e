import { readFileSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { Refusal } from '../../engine/index.ts';
import { isRoot } from '../place.ts';

/** PostgreSQL refuses to run as root; this is the user it runs as instead. */
export interface RunAs {
  readonly name: string;
  readonly uid: number;
  readonly gid: number;
}

function userNamed(name: string, users: string): RunAs | null {
  for (const line of readFileSync(users, 'utf8').split('\n')) {
    const [user, , uid, gid] = line.split(':');
    if (user === name && uid && gid) return { name, uid: Number(uid), gid: Number(gid) };
  }
  return null;
}

/** Null: PostgreSQL runs as we do. No user is ever created. @throws Refusal `store.no-user` */
export function runAs(root = isRoot(), users = '/etc/passwd'): RunAs | null {
  if (!root) return null;
  const user = userNamed('postgres', users) ?? userNamed('nobody', users);
  if (user) return user;
  throw new Refusal('store.no-user', {
    given: 'You are root, and this machine knows neither a user postgres nor nobody',
    allowed: 'PostgreSQL never runs as root',
    remedy: 'Start as an ordinary user, or set DATABASE_URL',
  });
}

/** True if this user may pass through every folder above. */
export function canReach(folder: string, as: RunAs): boolean {
  for (let above = dirname(folder); ; above = dirname(above)) {
    const { mode, uid, gid } = statSync(above);
    const may = uid === as.uid ? mode & 0o100 : gid === as.gid ? mode & 0o010 : mode & 0o001;
    if (!may) return false;
    if (dirname(above) === above) return true;
  }
}
