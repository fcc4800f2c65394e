import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The clone this program runs from: the nearest folder above whose package is ours. Works bundled and unbundled. */
export function rootFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  for (;;) {
    const manifest = join(folder, 'package.json');
    if (existsSync(manifest) && JSON.parse(readFileSync(manifest, 'utf8')).name === 'sparwright') return folder;
    const up = dirname(folder);
    if (up === folder) throw new Error('The folder of Sparwright was not found above this file.');
    folder = up;
  }
}
