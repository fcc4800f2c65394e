/**
 * Seeded random numbers, keyed by (seed, item): the n-th draw of an item depends on nothing else,
 * so an answer does not depend on the number of workers.
 *
 * sfc32 (Doty-Humphrey, PractRand), seeded through the 32-bit murmur3 finaliser. Not for secrets.
 */
export interface RandomSource {
  /** Uniform in [0, 1), 53 bits. */
  next(): number;
  /** Standard normal, by Marsaglia's polar method. */
  normal(): number;
  /** Gamma with this shape (> 0) and scale 1, by Marsaglia and Tsang (2000). */
  gamma(shape: number): number;
}

function mix(h0: number): number {
  let h = h0 | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

export function randomSource(seed: number, item = 0): RandomSource {
  let a = mix(seed ^ 0x9e3779b9);
  let b = mix(a + Math.floor(seed / 4294967296) + 0x7f4a7c15);
  let c = mix(b ^ mix(item + 0x3c6ef372));
  let d = 1;
  const bits = () => {
    const t = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return t >>> 0;
  };
  for (let i = 0; i < 15; i++) bits();
  const next = () => ((bits() >>> 5) * 67108864 + (bits() >>> 6)) / 9007199254740992;
  const normal = () => {
    for (;;) {
      const u = 2 * next() - 1;
      const v = 2 * next() - 1;
      const s = u * u + v * v;
      if (s > 0 && s < 1) return u * Math.sqrt((-2 * Math.log(s)) / s);
    }
  };
  const gamma = (shape: number): number => {
    if (shape < 1) {
      const u = 1 - next();
      return gamma(shape + 1) * Math.exp(Math.log(u) / shape);
    }
    const dd = shape - 1 / 3;
    const cc = 1 / Math.sqrt(9 * dd);
    for (;;) {
      const x = normal();
      const v0 = 1 + cc * x;
      if (v0 <= 0) continue;
      const v = v0 * v0 * v0;
      const u = 1 - next();
      if (Math.log(u) < 0.5 * x * x + dd - dd * v + dd * Math.log(v)) return dd * v;
    }
  };
  return { next, normal, gamma };
}
