import { createHash } from 'node:crypto';
import { accessSync, constants, existsSync, mkdirSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { rootFolder } from '../root.ts';

const key = (text: string) => createHash('sha256').update(text).digest('hex').slice(0, 12);
export const isRoot = () => process.getuid?.() === 0;

/** Where data lies: SPARWRIGHT_DATA, else for root a folder keyed by the clone, else the platform's data folder. */
export function dataFolder(): string {
  if (process.env.SPARWRIGHT_DATA) return resolve(process.env.SPARWRIGHT_DATA);
  const mine = key(rootFolder());
  if (isRoot()) return join('/var/lib/sparwright', mine);
  if (process.platform === 'win32') return join(process.env.LOCALAPPDATA ?? homedir(), 'Sparwright', mine);
  if (process.platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Sparwright', mine);
  return join(process.env.XDG_DATA_HOME ?? join(homedir(), '.local', 'share'), 'sparwright', mine);
}

/** Makes the folder, or says in one sentence why not. */
export function openFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o755 });
    accessSync(folder, constants.W_OK | constants.X_OK);
  } catch (e) {
    throw new Error(
      `The data folder ${folder} cannot be written (${(e as NodeJS.ErrnoException).code}). Give this user write permission, or set SPARWRIGHT_DATA to another folder.`,
    );
  }
}

/** Can every user walk into this folder? The database does not run as root and must reach its files. */
export function reachable(folder: string): boolean {
  for (let f = folder; ; f = dirname(f)) {
    if (existsSync(f) && (statSync(f).mode & 0o001) === 0) return false;
    if (dirname(f) === f) return true;
  }
}

/** The folder of the cluster: inside the data folder, unless root's database user could not reach it there. */
export function clusterFolder(data: string): string {
  const inside = join(data, 'cluster');
  return !isRoot() || reachable(data) ? inside : join('/var/lib/sparwright', `for-${key(data)}`, 'cluster');
}
