/**
 * Distribution functions that the outlook needs, as plain functions of plain numbers.
 *
 * Incomplete gamma: power series below the mean, continued fraction (modified Lentz) above it; incomplete beta:
 * continued fraction. Not valid for shapes above about 1e9 (too slow) or below 1e-12. Out-of-range arguments give
 * NaN, never a wrong figure: the callers refuse before they get here.
 *
 * @see DLMF 8.7.1, 8.9.2, 8.17.22, 5.2.1 (formulas from memory; every function is held against a statistics package)
 */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];
const HALF_LOG_2PI = 0.9189385332046727;

/** Natural logarithm of the gamma function, x > 0. */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.abs(Math.sin(Math.PI * x))) - logGamma(1 - x);
  if (x > 15) {
    const i = 1 / (x * x);
    return (
      (x - 0.5) * Math.log(x) -
      x +
      HALF_LOG_2PI +
      (1 / 12 - i * (1 / 360 - i * (1 / 1260 - i * (1 / 1680 - i / 1188)))) / x
    );
  }
  const z = x - 1;
  let sum = LANCZOS[0]!;
  for (let i = 1; i < 9; i++) sum += LANCZOS[i]! / (z + i);
  const t = z + 7.5;
  return HALF_LOG_2PI + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

const CLOSE = 1e-15;
const TINY = 1e-300;

function gammaSeries(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = a + 1; term > sum * CLOSE; n++) {
    term *= x / n;
    sum += term;
  }
  return sum * Math.exp(a * Math.log(x) - x - logGamma(a));
}

function gammaFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let h = d;
  for (let i = 1; i < 100_000; i++) {
    const an = -i * (i - a);
    b += 2;
    d = an * d + b;
    if (Math.abs(d) < TINY) d = TINY;
    c = b + an / c;
    if (Math.abs(c) < TINY) c = TINY;
    d = 1 / d;
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < CLOSE) break;
  }
  return h * Math.exp(a * Math.log(x) - x - logGamma(a));
}

/** P(a, x): the chance that a gamma variable with this shape and scale 1 is at most x. */
export function gammaP(a: number, x: number): number {
  if (!(a > 0) || Number.isNaN(x)) return Number.NaN;
  if (x <= 0) return 0;
  if (x === Number.POSITIVE_INFINITY) return 1;
  return x < a + 1 ? gammaSeries(a, x) : 1 - gammaFraction(a, x);
}

/** Q(a, x) = 1 - P(a, x), exact in its own tail. */
export function gammaQ(a: number, x: number): number {
  if (!(a > 0) || Number.isNaN(x)) return Number.NaN;
  if (x <= 0) return 1;
  if (x === Number.POSITIVE_INFINITY) return 0;
  return x < a + 1 ? 1 - gammaSeries(a, x) : gammaFraction(a, x);
}

/** Logarithm of the gamma density with this shape and scale, x > 0. */
export const gammaLogDensity = (shape: number, scale: number, x: number): number =>
  (shape - 1) * Math.log(x / scale) - x / scale - logGamma(shape) - Math.log(scale);

/** x with P(a, x) = p, by halving the interval in log x; scale 1. */
export function gammaQuantile(a: number, p: number): number {
  if (!(a > 0) || !(p >= 0 && p <= 1)) return Number.NaN;
  if (p === 0) return 0;
  if (p === 1) return Number.POSITIVE_INFINITY;
  let low = -700;
  let high = Math.log(a + 10 * Math.sqrt(a) + 800);
  for (let i = 0; i < 70; i++) {
    const mid = (low + high) / 2;
    if (gammaP(a, Math.exp(mid)) < p) low = mid;
    else high = mid;
  }
  return Math.exp((low + high) / 2);
}

/** Standard normal distribution function. */
export const normalCdf = (z: number): number => {
  if (Number.isNaN(z)) return Number.NaN;
  const tail = 0.5 * gammaQ(0.5, (z * z) / 2);
  return z < 0 ? tail : 1 - tail;
};

/** z with normalCdf(z) = p. */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) return Number.NaN;
  if (p === 0.5) return 0;
  const tail = p < 0.5 ? p : 1 - p;
  const z = Math.sqrt(2 * gammaQuantile(0.5, 1 - 2 * tail));
  if (tail > 1e-6) return p < 0.5 ? -z : z;
  // Far out 1 - 2 tail has lost its digits: Newton steps on the tail itself.
  let t = Math.sqrt(-2 * Math.log(tail)) || 0;
  if (tail === 0) t = Number.POSITIVE_INFINITY;
  else for (let i = 0; i < 60; i++) t += (normalCdf(-t) / tail - 1) / (t + 1 / t);
  return p < 0.5 ? -t : t;
}

function betaFraction(a: number, b: number, x: number): number {
  let c = 1;
  let d = 1 - ((a + b) * x) / (a + 1);
  d = 1 / (Math.abs(d) < TINY ? TINY : d);
  let h = d;
  for (let m = 1; m < 100_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    let step = 1;
    for (const n of [even, odd]) {
      d = 1 + n * d;
      d = 1 / (Math.abs(d) < TINY ? TINY : d);
      c = 1 + n / c;
      if (Math.abs(c) < TINY) c = TINY;
      step = d * c;
      h *= step;
    }
    if (Math.abs(step - 1) < CLOSE) break;
  }
  return h;
}

/** I_x(a, b): the chance that a beta variable is at most x. */
export function betaI(a: number, b: number, x: number): number {
  if (!(a > 0) || !(b > 0) || Number.isNaN(x)) return Number.NaN;
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2) ? (front * betaFraction(a, b, x)) / a : 1 - (front * betaFraction(b, a, 1 - x)) / b;
}

/** Logarithm of the chance of k failures before the size-th success, chance of success p; size need not be whole. */
export const negativeBinomialLogMass = (size: number, p: number, k: number): number =>
  logGamma(size + k) - logGamma(size) - logGamma(k + 1) + size * Math.log(p) + k * Math.log1p(-p);

/** Chance of at most k. */
export const negativeBinomialCdf = (size: number, p: number, k: number): number =>
  k < 0 ? 0 : betaI(size, Math.floor(k) + 1, p);

/** Smallest k with chance of at most k not below q. */
export function negativeBinomialQuantile(size: number, p: number, q: number): number {
  if (!(q >= 0 && q < 1)) return q === 1 ? Number.POSITIVE_INFINITY : Number.NaN;
  let high = 1;
  while (negativeBinomialCdf(size, p, high) < q) high *= 2;
  let low = -1;
  while (high - low > 1) {
    const mid = Math.floor((low + high) / 2);
    if (negativeBinomialCdf(size, p, mid) < q) low = mid;
    else high = mid;
  }
  return high;
}

/** Chance that a Brownian path with drift has passed by t: inverse Gaussian with this mean and shape. */
export function inverseGaussianCdf(mean: number, shape: number, t: number): number {
  if (t <= 0) return 0;
  const s = Math.sqrt(shape / t);
  return normalCdf(s * (t / mean - 1)) + Math.exp((2 * shape) / mean) * normalCdf(-s * (t / mean + 1));
}
