import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** A file of the published sets beside the repository; null where they are missing. */
export function shared(name: string): string | null {
  const file = fileURLToPath(new URL(`../../../../../shared/data/psplib/${name}`, import.meta.url));
  return existsSync(file) ? readFileSync(file, 'utf8') : null;
}
