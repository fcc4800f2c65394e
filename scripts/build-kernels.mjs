// node scripts/build-kernels.mjs: AssemblyScript of kernels/assembly to the .wasm beside it, which is committed.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const folder = fileURLToPath(new URL('../kernels/', import.meta.url));
export const KERNELS = ['growth-cycles'];

/** The bytes that a source builds; the same on every machine with the same compiler. */
export async function built(name) {
  const asc = await import('assemblyscript/asc');
  const files = new Map([[`${name}.ts`, readFileSync(join(folder, 'assembly', `${name}.ts`), 'utf8')]]);
  const made = new Map();
  const { error, stderr } = await asc.main(
    [
      `${name}.ts`,
      '--outFile',
      `${name}.wasm`,
      '--runtime',
      'stub',
      '--optimizeLevel',
      '3',
      '--shrinkLevel',
      '0',
      '--converge',
      '--noAssert',
    ],
    {
      readFile: (file) => files.get(file) ?? null,
      writeFile: (file, bytes) => void made.set(file, bytes),
      listFiles: () => [],
    },
  );
  if (error) throw new Error(`${error.message}\n${stderr.toString()}`);
  return made.get(`${name}.wasm`);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  for (const name of KERNELS) {
    const bytes = await built(name);
    writeFileSync(join(folder, `${name}.wasm`), bytes);
    process.stdout.write(`kernels/${name}.wasm, ${bytes.length} bytes\n`);
  }
