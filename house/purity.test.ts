import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { impurities } from './purity.ts';

const root = fileURLToPath(new URL('..', import.meta.url));

function sources(folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((e) => e.isFile() && /\.tsx?$/.test(e.name))
    .map((e) => relative(root, join(e.parentPath, e.name)).replaceAll('\\', '/'))
    .filter((name) => !/\.(test|stories)\.tsx?$|\/testing\//.test(name));
}
const read = (name: string) => readFileSync(join(root, name), 'utf8');

it('the engine is free of powers, chance and clocks', () => {
  const files = sources('engine');
  expect(files.length).toBeGreaterThan(15);
  expect(files.flatMap((f) => impurities(f, read(f), { pure: true, factors: false }))).toEqual([]);
});

it('conversion factors stand in one file only', () => {
  const files = ['engine', 'sheets', 'documents', 'intake', 'store', 'server', 'cli', 'web'].flatMap(sources);
  const elsewhere = files.filter((f) => f !== 'engine/foundation/convert.ts');
  expect(elsewhere.flatMap((f) => impurities(f, read(f), { pure: false, factors: true }))).toEqual([]);
});

it.each([
  ['Math.pow(x, 2)', 1],
  ["Math['pow'](x, 2)", 1],
  ['const { pow } = Math;', 1],
  ['const { random: chance } = Math;', 1],
  ['Math.random()', 1],
  ['const now = Date.now;', 1],
  ['x ** 2.5', 1],
  ['x ** m', 1],
  ['x **= 0.5', 1],
  ['x ** -(1.5)', 1],
  ['x * 3600', 1],
  ['const mm = inch * 25.40;', 1],
  ['kg = 0.45359237 * lb; n = kg * 9.80665;', 2],
  ['x ** 2 + y ** -3 + Math.exp(m * Math.log(x)); // Math.pow 3600', 0],
  ['const text = "Date.now() 25.4"; const n = 13600 + 25.41;', 0],
])('planted: %s', (source, faults) => {
  expect(impurities('planted.ts', source, { pure: true, factors: true })).toHaveLength(faults);
});
