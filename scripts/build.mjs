// Builds what is stale: dist/server.js and dist/cli.js (packages stay outside), dist/web.
import { copyFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { hashOf, root } from './begin.mjs';

const at = (...p) => join(root, ...p);
const stale = (name, wanted, made) =>
  ![name, ...made].every((f) => existsSync(at('dist', f))) || readFileSync(at('dist', name), 'utf8') !== wanted;

const CODE = [
  'engine',
  'sheets',
  'documents',
  'intake',
  'kernels',
  'store',
  'examples',
  'server',
  'cli',
  'package-lock.json',
  'scripts/build.mjs',
];
const WEB = ['engine', 'sheets', 'web', 'package-lock.json', 'scripts/build.mjs'];

export async function build() {
  mkdirSync(at('dist'), { recursive: true });
  const code = hashOf(CODE);
  if (stale('.code', code, ['server.js', 'cli.js', 'fleet-worker.js', 'work-worker.js'])) {
    const { build: bundle } = await import('esbuild');
    await bundle({
      absWorkingDir: root,
      entryPoints: {
        server: 'server/main.ts',
        cli: 'cli/main.ts',
        'fleet-worker': 'server/fleet/worker.ts',
        'work-worker': 'server/work/worker.ts',
      },
      outdir: 'dist',
      bundle: true,
      packages: 'external',
      platform: 'node',
      target: 'node20',
      format: 'esm',
      sourcemap: true,
      logLevel: 'warning',
      loader: { '.sql': 'text', '.yaml': 'text' },
      define: { 'globalThis.SPARWRIGHT_ROOT': JSON.stringify(root) },
    });
    copyFileSync(at('kernels', 'growth-cycles.wasm'), at('dist', 'growth-cycles.wasm'));
    writeFileSync(at('dist', '.code'), code);
  }
  const web = hashOf(WEB);
  if (stale('.web', web, ['web/index.html'])) {
    const { build: vite } = await import('vite');
    await vite({ configFile: at('web', 'vite.config.ts'), logLevel: 'warn' });
    writeFileSync(at('dist', '.web'), web);
  }
}
