import { readFileSync } from 'node:fs';
import { isRoot } from './folders.ts';

/** PostgreSQL refuses to run as root: then an unprivileged user that exists already runs it. */
export function databaseUser(): { uid: number; gid: number } | null {
  if (!isRoot()) return null;
  const lines = readFileSync('/etc/passwd', 'utf8').split('\n').map((l) => l.split(':'));
  const user = lines.find((l) => l[0] === 'postgres') ?? lines.find((l) => l[0] === 'nobody');
  if (!user) throw new Error('The database cannot run as root and there is no user postgres or nobody: set DATABASE_URL, or start as another user.');
  return { uid: Number(user[2]), gid: Number(user[3]) };
}
