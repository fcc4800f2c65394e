import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { REFUSAL_CODES } from '../engine/foundation/refusal-codes.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const FOLDERS = ['engine', 'sheets', 'documents', 'intake', 'store', 'server', 'cli', 'web', 'e2e'];
const all = FOLDERS.flatMap((folder) =>
  readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((e) => e.isFile() && /\.tsx?$/.test(e.name))
    .map((e) => relative(root, join(e.parentPath, e.name)).replaceAll('\\', '/')),
).filter((name) => !name.endsWith('refusal-codes.ts'));
const isTest = (name: string) => /\.test\.tsx?$|\/testing\//.test(name) || name.startsWith('e2e/');
/** Comments name codes too, and do not count. */
const text = (names: readonly string[]) =>
  names
    .map((n) => readFileSync(join(root, n), 'utf8'))
    .join('\n')
    .replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '');
const sources = text(all.filter((n) => !isTest(n)));
/** A code is written out, or put together from its room and its second word. */
const names = (where: string, code: string): boolean => {
  const [room, word] = [code.slice(0, code.indexOf('.')), code.slice(code.indexOf('.') + 1)];
  const quoted = (s: string) => ["'", '"', '`'].some((q) => where.includes(`${q}${s}${q}`));
  return quoted(code) || (where.includes(`\`${room}.\${`) && quoted(word));
};
describe('every refusal in the list', () => {
  it('stands there once', () => expect(new Set(REFUSAL_CODES).size).toBe(REFUSAL_CODES.length));
  it('is made somewhere', () => expect(REFUSAL_CODES.filter((c) => !names(sources, c))).toEqual([]));
  it('has a file of its own that provokes it', () =>
    expect(
      readdirSync(join(root, 'examples', 'refusals'))
        .filter((f) => f.endsWith('.yaml'))
        .sort(),
    ).toEqual(REFUSAL_CODES.map((c) => `${c}.yaml`).sort()));
  it('a code that nothing makes is found', () => {
    expect(names(sources, ['record', 'never-made'].join('.'))).toBe(false);
    expect(names("throw new Refusal('a.b')", 'a.b')).toBe(true);
    expect(names(`refuse(\`room.\${code}\`); refuse("word")`, 'room.word')).toBe(true);
  });
});
