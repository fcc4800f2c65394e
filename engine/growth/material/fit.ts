import { Refusal } from '../../foundation/refusal.ts';

/** A crack of a test: its length, the cycles that it took, and the range of stress intensity at that length. */
export interface CrackReading {
  readonly length_mm: number;
  readonly cycles: number;
  /** ΔK by the test's own crack form, MPa√m. */
  readonly range_MPa_sqrt_m: number;
}
/** da/dN = c ΔK^n, mm and MPa√m, and what the fit leaves. */
export interface FittedParis {
  readonly c: number;
  readonly n: number;
  /** Standard deviation of what is left, cycles. */
  readonly left_cycles: number;
  /** Range of ΔK that the readings span: the law is not known beyond it. */
  readonly from_MPa_sqrt_m: number;
  readonly to_MPa_sqrt_m: number;
}

const [LEAST_N, MOST_N] = [1, 15];
const LEAST_READINGS = 4;

/**
 * Paris constants of one crack that was read as it grew: least squares on the cycles.
 *
 * Cycles from the first reading to each other one are ∫ da / (C ΔK^n), by the trapezium rule between readings. For
 * each n the best C is in closed form; n is found by halving the bracket of the least sum of squares.
 *
 * Not valid for readings at several stress ratios, for a spectrum, or far apart: each step should change ΔK little.
 *
 * @param readings four or more, in order; length mm, cycles, ΔK MPa√m
 * @returns C and n in mm and MPa√m, the standard deviation left, and the range of ΔK spanned
 * @throws Refusal `growth.cannot-be-fitted`
 * @see Fatigue crack growth of 68 specimens: the fit that this repeats is described in docs/methods/growth.md
 */
export function fitParis(readings: readonly CrackReading[]): FittedParis {
  requireGrowing(readings);
  const first = readings[0]!;
  const logs = readings.map((r) => Math.log(r.range_MPa_sqrt_m));
  const middle = logs.reduce((sum, l) => sum + l, 0) / logs.length;
  const at = (n: number) => {
    let [area, nn, ni, ii] = [0, 0, 0, 0];
    for (let i = 1; i < readings.length; i++) {
      const growth = readings[i]!.length_mm - readings[i - 1]!.length_mm;
      area += (growth * (Math.exp(-n * (logs[i]! - middle)) + Math.exp(-n * (logs[i - 1]! - middle)))) / 2;
      const cycles = readings[i]!.cycles - first.cycles;
      nn += cycles * cycles;
      ni += cycles * area;
      ii += area * area;
    }
    return { left: nn - (ni * ni) / ii, c: (ii / ni) * Math.exp(-n * middle) };
  };
  const n = leastOf((x) => at(x).left);
  if (n < LEAST_N + 1e-6 || n > MOST_N - 1e-6) unfit(`an exponent that runs to ${n < 2 ? LEAST_N : MOST_N}`);
  const { left, c } = at(n);
  return {
    c,
    n,
    left_cycles: Math.sqrt(Math.max(0, left) / (readings.length - 3)),
    from_MPa_sqrt_m: Math.min(...readings.map((r) => r.range_MPa_sqrt_m)),
    to_MPa_sqrt_m: Math.max(...readings.map((r) => r.range_MPa_sqrt_m)),
  };
}

/** The least of a function of n: best of a grid, then golden section about it. */
function leastOf(f: (n: number) => number): number {
  const grid = Array.from({ length: 57 }, (_, i) => LEAST_N + i / 4);
  const best = grid.reduce((b, n) => (f(n) < f(b) ? n : b));
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [Math.max(LEAST_N, best - 0.25), Math.min(MOST_N, best + 0.25)];
  for (let i = 0; i < 60; i++) {
    const [p, q] = [high - golden * (high - low), low + golden * (high - low)];
    if (f(p) < f(q)) high = q;
    else low = p;
  }
  return (low + high) / 2;
}

function requireGrowing(readings: readonly CrackReading[]): void {
  if (readings.length < LEAST_READINGS) unfit(`${readings.length} readings`);
  readings.forEach((r, i) => {
    if (!(r.range_MPa_sqrt_m > 0 && Number.isFinite(r.range_MPa_sqrt_m)))
      unfit(`a range of ${r.range_MPa_sqrt_m} MPa√m at reading ${i + 1}`);
    if (i > 0 && !(r.length_mm > readings[i - 1]!.length_mm && r.cycles > readings[i - 1]!.cycles))
      unfit(`reading ${i + 1}, at ${r.length_mm} mm after ${r.cycles} cycles, not beyond the one before`);
  });
}

function unfit(given: string): never {
  throw new Refusal('growth.cannot-be-fitted', {
    given,
    allowed: `${LEAST_READINGS} or more readings of one crack, length and cycles rising, ΔK above zero, from which an exponent from ${LEAST_N} to ${MOST_N} follows`,
    remedy: 'Put the readings in order, or add readings',
  });
}
