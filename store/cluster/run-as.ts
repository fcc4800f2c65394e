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

function userNamed(name: string): RunAs | null {
  for (const line of readFileSync('/etc/passwd', 'utf8').split('\n')) {
    const [user, , uid, gid] = line.split(':');
    if (user === name && uid && gid) return { name, uid: Number(uid), gid: Number(gid) };
  }
  return null;
}

/** Null: PostgreSQL runs as we do. No user is ever created. @throws Refusal `store.no-user` */
export function runAs(): RunAs | null {
  if (!isRoot()) return null;
  const user = userNamed('postgres') ?? userNamed('nobody');
  if (user) return user;
  throw new Refusal('store.no-user', {
    given: 'You are root, and this machine knows neither a user postgres nor nobody',
    allowed: 'PostgreSQL never runs as root',
    remedy: 'Start as an ordinary user, or set DATABASE_URL',
  });
}

/** Every folder above must let this user pass. @throws Refusal `store.folder-closed` */
export function mustReach(folder: string, as: RunAs): void {
  for (let above = dirname(folder); ; above = dirname(above)) {
    const { mode, uid, gid } = statSync(above);
    const may = uid === as.uid ? mode & 0o100 : gid === as.gid ? mode & 0o010 : mode & 0o001;
    if (!may)
      throw new Refusal('store.folder-closed', {
        given: `The data folder ${folder} lies under ${above}, which the user ${as.name} cannot enter`,
        allowed: 'PostgreSQL never runs as root, so it needs a folder that another user can reach',
        remedy: 'Leave SPARWRIGHT_DATA unset, or point it to a folder under /var/lib',
      });
    if (dirname(above) === above) return;
  }
}
