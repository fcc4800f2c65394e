import { type Bounds, bounds } from '../../foundation/bounds.ts';

/** Σ of the relative entropy of two coins, natural logarithm; 0 · ln 0 is 0. */
const apart = (p: number, q: number): number =>
  (p > 0 ? p * Math.log(p / q) : 0) + (p < 1 ? (1 - p) * Math.log((1 - p) / (1 - q)) : 0);

/**
 * Bounds of a chance that was found as the mean of weights between 0 and 1.
 *
 * What: both ends at which `count` · relative entropy reaches ln(2 / (1 − level)): outside them the true mean lies with
 * a chance of at most 1 − level, however the weights are spread (Chernoff and Hoeffding). For weights that are 0 or 1
 * this holds the exact binomial bounds inside; for smaller weights it is wider than need be, never narrower. Where
 * nothing was seen in n lives the upper end is about 3.7 / n.
 * Not valid for: weights outside 0 to 1, or draws that depend on each other.
 * @param mean 0 to 1 @param count of lives
 * @see Hoeffding, Journal of the American Statistical Association 58 (1963), theorem 1 (from memory; coverage is tested)
 */
export function boundsOfMean(mean: number, count: number, level = 0.95): Bounds {
  const reach = Math.log(2 / (1 - level)) / count;
  const end = (from: number, to: number): number => {
    let [near, far] = [from, to];
    for (let i = 0; i < 100; i++) {
      const mid = (near + far) / 2;
      if (apart(mean, mid) < reach) near = mid;
      else far = mid;
    }
    return far;
  };
  return bounds(mean > 0 ? end(mean, 0) : 0, mean < 1 ? end(mean, 1) : 1);
}
