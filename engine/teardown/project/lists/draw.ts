import { randomSource } from '../../../foundation/random.ts';

/** Small fast generator for the hot loops (xorshift, 32 bits), begun from the seeded source of the house. */
export interface Draw {
  /** Whole number from 0 to below n. */
  below(n: number): number;
  /** True with this chance. */
  chance(p: number): boolean;
}

export function drawFrom(seed: number, item: number): Draw {
  const source = randomSource(seed, item);
  let x = (1 + Math.floor(source.next() * 4294967295)) | 0;
  if (x === 0) x = 1;
  const bits = () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return x >>> 0;
  };
  return {
    below: (n) => Math.floor((bits() / 4294967296) * n),
    chance: (p) => bits() < p * 4294967296,
  };
}
