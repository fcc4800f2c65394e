import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { CrackReading } from '../material/index.ts';
import { crackForm } from '../stress-intensity/index.ts';

/**
 * Virkler, Hillberry and Goel (1979): 68 like specimens of 2024-T3, cycles at 164 half lengths from 9.0 to 49.8 mm.
 * Conditions from memory: centre crack, W 152.4 mm, t 2.54 mm, 4.67 to 23.35 kN, so R 0.2 and a range of 48.28 MPa as
 * the recomputed fit was made with.
 */
export const SPECIMENS = 68;
export const RANGE_MPA = 48.28;
export const cycle = { max_MPa: RANGE_MPA / 0.8, min_MPa: (0.2 * RANGE_MPA) / 0.8, perHour: 72_000 };
export const form = crackForm({ shape: 'centre_through', width_mm: 152.4, thickness_mm: 2.54 });

/** Computed from the raw table apart from this program: cycles at a half length, mean and, where at hand, deviation. */
export const SUMMARY = {
  means: [
    [10, 31_856.7],
    [12, 74_857.6],
    [15, 118_341.8],
    [20, 163_870.3],
    [25, 193_801.4],
    [30, 215_857.6],
    [35, 232_625.3],
    [39.8, 244_147.5],
    [45, 252_519.3],
    [49.8, 257_164.47],
  ],
  deviations: [
    [10, 4308],
    [15, 10_873],
    [20, 12_489],
    [30, 14_502],
    [49.8, 18_446.8],
  ],
  /** At 49.8 mm. */
  end: {
    least: 222_792,
    most: 320_996,
    median: 253_467,
    meanLog10: 5.4091583,
    deviationLog10: 0.0301458,
    percentile5: 234_962,
    percentile95: 294_797,
  },
  law: { n: 3.0649, c_m: 5.4326e-11 },
  specimens: { n: 3.0682, n_deviation: 0.2108, log10c_m: -10.267, log10c_deviation: 0.2263 },
} as const;

export interface Table {
  readonly length_mm: readonly number[];
  /** Cycles of each specimen at each length. */
  readonly cycles: readonly (readonly number[])[];
}

/** The raw table, where it lies beside the repository; null where it does not. */
export function rawTable(): Table | null {
  const file = fileURLToPath(new URL('../../../../shared/data/virkler_2024T3.csv', import.meta.url));
  if (!existsSync(file)) return null;
  const [, ...lines] = readFileSync(file, 'utf8').trim().split('\n');
  const rows = lines.map((line) => line.split(',').map(Number));
  return {
    length_mm: rows.map((row) => row[0]!),
    cycles: Array.from({ length: SPECIMENS }, (_, j) => rows.map((row) => row[j + 1]!)),
  };
}

export const readingsOf = (lengths: readonly number[], cycles: readonly number[]): CrackReading[] =>
  lengths.map((length_mm, i) => ({
    length_mm,
    cycles: cycles[i]!,
    range_MPa_sqrt_m: RANGE_MPA * form.k({ c_mm: length_mm }).c,
  }));

export const mean = (x: readonly number[]) => x.reduce((sum, v) => sum + v, 0) / x.length;
export const deviation = (x: readonly number[]) => {
  const m = mean(x);
  return Math.sqrt(x.reduce((sum, v) => sum + (v - m) * (v - m), 0) / (x.length - 1));
};
export const meanCurve = (curves: readonly (readonly number[])[]) =>
  curves[0]!.map((_, i) => mean(curves.map((c) => c[i]!)));
