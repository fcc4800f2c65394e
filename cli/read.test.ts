import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { readInput } from './read.ts';
import { wordOf } from './word.ts';

const folder = mkdtempSync(join(tmpdir(), 'sparwright-read-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const file = (name: string, text: string) => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};
const code = (f: () => unknown) => {
  try {
    return f();
  } catch (e) {
    return (e as { code?: string }).code;
  }
};

it('reads YAML and JSON alike', () => {
  expect(readInput(file('a.yaml', 'a: 1\nb: [2]'))).toEqual({ a: 1, b: [2] });
  expect(readInput(file('a.json', '{"a":1,"b":[2]}'))).toEqual({ a: 1, b: [2] });
});
it('refuses what is not there, empty, too large or neither', () => {
  expect(code(() => readInput(join(folder, 'none.yaml')))).toBe('cli.file-missing');
  expect(code(() => readInput(file('empty.yaml', ' \n')))).toBe('cli.file-empty');
  const large = file('large.yaml', '');
  truncateSync(large, 21 * 1024 * 1024);
  expect(code(() => readInput(large))).toBe('cli.file-too-large');
  expect(code(() => readInput(file('broken.yaml', '{a: [1')))).toBe('foundation.document-invalid');
});
it.each(['fleet', 'toString', ''])('refuses "%s", a word that is none', (word) =>
  expect(code(() => wordOf(word))).toBe('cli.word-unknown'),
);
