import { spawnSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { growth } from '../../engine/index.ts';
import { recordOf } from '../../kernels/growth-cycles.ts';

/** The same arithmetic in C, compiled now; null where there is no compiler. */
export function inC() {
  const folder = mkdtempSync(join(tmpdir(), 'sparwright-growth-'));
  const program = join(folder, 'cycles');
  const source = fileURLToPath(new URL('./cycles.c', import.meta.url));
  const done = () => rmSync(folder, { recursive: true, force: true });
  const { status } = spawnSync('cc', ['-O3', '-ffp-contract=off', '-o', program, source, '-lm']);
  if (status !== 0) {
    done();
    return null;
  }
  const run = (input: growth.KernelInput, runs: number) => {
    const file = join(folder, 'input');
    const out = openSync(file, 'w');
    for (const part of [Float64Array.from(recordOf(input)), input.max_MPa, input.min_MPa])
      writeSync(out, new Uint8Array(part.buffer, part.byteOffset, part.byteLength));
    closeSync(out);
    const said = spawnSync(program, [file, String(runs)], { encoding: 'utf8' })
      .stdout.split(' ')
      .map(Number);
    return { seconds: said[0]! / 1e9, made: { cycles: said[1]!, c_mm: said[2]!, a_mm: said[3]! } };
  };
  return { run, done };
}
