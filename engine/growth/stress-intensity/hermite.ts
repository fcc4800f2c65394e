/**
 * Piecewise cubic Hermite through points, its slopes by Fritsch and Butland's weighted harmonic mean: the curve goes
 * through every point and between two points never above or below both.
 *
 * @param xs rising
 * @param ys as many
 * @returns the curve, for x within the first and last of xs
 */
export function hermite(xs: readonly number[], ys: readonly number[]): (x: number) => number {
  const slopes = xs.map((_, i) => slopeAt(xs, ys, i));
  const last = xs.length - 2;
  return (x) => {
    let i = 0;
    while (i < last && x > xs[i + 1]!) i++;
    const h = xs[i + 1]! - xs[i]!;
    const t = (x - xs[i]!) / h;
    const u = 1 - t;
    const bent = h * t * u * (u * slopes[i]! - t * slopes[i + 1]!);
    return u * u * (1 + 2 * t) * ys[i]! + t * t * (3 - 2 * t) * ys[i + 1]! + bent;
  };
}

const chord = (xs: readonly number[], ys: readonly number[], i: number): number =>
  (ys[i + 1]! - ys[i]!) / (xs[i + 1]! - xs[i]!);

function slopeAt(xs: readonly number[], ys: readonly number[], i: number): number {
  const last = xs.length - 1;
  if (last === 1) return chord(xs, ys, 0);
  if (i === 0) return endSlope(xs, ys, 0, 1);
  if (i === last) return endSlope(xs, ys, last - 1, last - 2);
  const [before, after] = [chord(xs, ys, i - 1), chord(xs, ys, i)];
  if (before * after <= 0) return 0;
  const [h0, h1] = [xs[i]! - xs[i - 1]!, xs[i + 1]! - xs[i]!];
  const [w0, w1] = [2 * h1 + h0, h1 + 2 * h0];
  return (w0 + w1) / (w0 / before + w1 / after);
}

/** Three-point slope at an end, held back so that the curve keeps its direction. */
function endSlope(xs: readonly number[], ys: readonly number[], near: number, next: number): number {
  const [d0, d1] = [chord(xs, ys, near), chord(xs, ys, next)];
  const [h0, h1] = [xs[near + 1]! - xs[near]!, xs[next + 1]! - xs[next]!];
  const slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (slope * d0 <= 0) return 0;
  return d0 * d1 <= 0 && Math.abs(slope) > 3 * Math.abs(d0) ? 3 * d0 : slope;
}
