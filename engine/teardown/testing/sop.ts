import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export interface SopInstance {
  readonly matrix: readonly (readonly number[])[];
  /** The first stands before the second. */
  readonly before: readonly (readonly [number, number])[];
}

/** A sequential ordering instance in the format of TSPLIB, where it lies beside the repository: -1 at (i, j) is j before i. */
export function sop(name: string): SopInstance | null {
  const file = fileURLToPath(new URL(`../../../../shared/data/sop/${name}.sop`, import.meta.url));
  if (!existsSync(file)) return null;
  const text = readFileSync(file, 'utf8');
  const n = Number(/DIMENSION:\s*(\d+)/.exec(text)![1]);
  const figures = /EDGE_WEIGHT_SECTION([\s\S]*?)(EOF|$)/.exec(text)![1]!.trim().split(/\s+/).map(Number);
  const rows = figures.slice(figures.length - n * n);
  const matrix = Array.from({ length: n }, (_, i) => rows.slice(i * n, (i + 1) * n));
  const before = matrix.flatMap((row, i) => row.flatMap((x, j) => (x === -1 ? [[j, i] as [number, number]] : [])));
  return { matrix, before };
}
