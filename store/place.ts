import { createHash } from 'node:crypto';
import { existsSync, readFileSync, realpathSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Folder that only root may write, and that every user can reach. */
export const SYSTEM_FOLDER = '/var/lib/sparwright';

export const isRoot = (): boolean => process.getuid?.() === 0;

/** The clone this program runs from: the nearest folder above with our package.json. */
export function rootFolder(): string {
  for (let folder = dirname(fileURLToPath(import.meta.url)); ; folder = dirname(folder)) {
    const file = join(folder, 'package.json');
    if (existsSync(file) && JSON.parse(readFileSync(file, 'utf8')).name === 'sparwright') return realpathSync(folder);
    if (dirname(folder) === folder) throw new Error('The program has lost its package.json: run it from its clone.');
  }
}

const keyed = (root: string) => createHash('sha256').update(root).digest('hex').slice(0, 12);

function platformFolder(): string {
  if (process.platform === 'win32') return process.env.LOCALAPPDATA ?? join(homedir(), 'AppData', 'Local');
  if (process.platform === 'darwin') return join(homedir(), 'Library', 'Application Support');
  return process.env.XDG_DATA_HOME ?? join(homedir(), '.local', 'share');
}

/** Where the data lies: SPARWRIGHT_DATA, or a folder keyed by the clone (for root one that every user can reach). */
export function dataFolder(): string {
  if (process.env.SPARWRIGHT_DATA) return resolve(process.env.SPARWRIGHT_DATA);
  const key = keyed(rootFolder());
  return isRoot() ? join(SYSTEM_FOLDER, key) : join(platformFolder(), 'sparwright', key);
}
