import type { ThreePoint } from '../structure-document.ts';

/** Spread of the standard curve: α and β of a beta-PERT add up to 6. */
const SUM = 6;
const STEPS = 1024;
const curves = new Map<number, Float64Array>();

/** Shares below sin²(kπ/2n) of the beta with this α, β = 6 − α, for k = 0..n. By Simpson's rule in the angle. */
function curveOf(alpha: number): Float64Array {
  const known = curves.get(alpha);
  if (known) return known;
  const [p, q] = [2 * alpha - 1, 2 * (SUM - alpha) - 1];
  const at = (angle: number) => {
    const [s, c] = [Math.sin(angle), Math.cos(angle)];
    return s <= 0 || c <= 0 ? 0 : Math.exp(p * Math.log(s) + q * Math.log(c));
  };
  const h = Math.PI / 2 / STEPS;
  const sums = new Float64Array(STEPS + 1);
  let left = at(0);
  for (let k = 0; k < STEPS; k++) {
    const right = k + 1 === STEPS ? 0 : at((k + 1) * h);
    sums[k + 1] = sums[k]! + (left + 4 * at((k + 0.5) * h) + right) / 6;
    left = right;
  }
  const whole = sums[STEPS]!;
  const curve = sums.map((s) => s / whole);
  if (curves.size > 500) curves.clear();
  curves.set(alpha, curve);
  return curve;
}

/**
 * Time that a step stays below with this chance.
 *
 * What: quantile of the beta-PERT curve of three points, α = 1 + 4 (m − a)/(b − a), β = 1 + 4 (b − m)/(b − a).
 * How: the cumulated curve over t = sin²(angle), 1024 steps, straight between them; good to 1e-5 of the spread.
 * Not valid for: shares outside 0 to 1.
 * @param share 0 to 1
 * @returns minutes
 * @see shopfloor text on estimating; held against a statistics package
 */
export function pertQuantile(t: ThreePoint, share: number): number {
  const spread = t.high_min - t.low_min;
  if (spread <= 0 || share <= 0) return t.low_min;
  if (share >= 1) return t.high_min;
  const alpha = Math.round((1 + (4 * (t.likely_min - t.low_min)) / spread) * 1e9) / 1e9;
  const curve = curveOf(alpha);
  let [low, high] = [0, STEPS];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (curve[middle]! <= share) low = middle;
    else high = middle;
  }
  const width = curve[high]! - curve[low]!;
  const at = low + (width > 0 ? Math.min(1, Math.max(0, (share - curve[low]!) / width)) : 0);
  const s = Math.sin((at * Math.PI) / 2 / STEPS);
  return t.low_min + spread * s * s;
}

/** Mean and variance of the same curve: (a + 4m + b)/6 and (μ − a)(b − μ)/7. */
export function pertMoments(t: ThreePoint): { mean: number; variance: number } {
  const mean = (t.low_min + 4 * t.likely_min + t.high_min) / 6;
  return { mean, variance: ((mean - t.low_min) * (t.high_min - mean)) / 7 };
}
