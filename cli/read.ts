import { readFileSync, statSync } from 'node:fs';
import { parse } from 'yaml';
import { Refusal } from '../engine/index.ts';

const LARGEST = 20 * 1024 * 1024;

function textOf(file: string): string {
  if (file === '-') return readFileSync(0, 'utf8');
  const size = statSync(file, { throwIfNoEntry: false })?.size;
  if (size === undefined)
    throw new Refusal('cli.file-missing', {
      given: `the file "${file}"`,
      allowed: 'a file that exists, or - for standard input',
      remedy: 'Correct the name',
    });
  if (size > LARGEST)
    throw new Refusal('cli.file-too-large', {
      given: `the file "${file}" of ${Math.round(size / 1024 / 1024)} MB`,
      allowed: 'at most 20 MB',
      remedy: 'Send it in parts',
    });
  return readFileSync(file, 'utf8');
}

/** One document from a file or standard input (`-`), YAML or JSON. @throws Refusal */
export function readInput(file: string): unknown {
  const text = textOf(file);
  if (!text.trim())
    throw new Refusal('cli.file-empty', {
      given: `"${file}" is empty`,
      allowed: 'one document in YAML or JSON',
      remedy: 'Begin from `sparwright example WORD`',
    });
  try {
    return parse(text, { maxAliasCount: 50 });
  } catch (e) {
    throw new Refusal('foundation.document-invalid', {
      given: `"${file}" is neither YAML nor JSON: ${(e as Error).message.split('\n')[0]}`,
      allowed: 'one document in YAML or JSON',
      remedy: 'Correct it at the place named',
    });
  }
}
