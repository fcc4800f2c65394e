import type { CycleSequence, GrowthLaw } from '../model.ts';

type Power = NonNullable<GrowthLaw['power']>;
/** Weight of a cycle: its growth at K = stress over c, (weight(R) Smax)^n. */
export interface Weights {
  readonly of: (max_MPa: number, min_MPa: number) => number;
  /** Bound of the error of one weight. */
  readonly error: number;
}

/** Tables that stay in the nearest cache; where a power has no smooth cubic, at the ends, it is computed. */
const INTERVALS = 512;
const DEEPEST_RATIO = -1;

/**
 * Weights of cycles under a pure power of K, read from tables of cubics: the peak raised, and the stress ratio's
 * weight raised, whose kink at 0 lies between two intervals: one table without a question asked is read twice as fast.
 * Deeper ratios are computed. The error is measured between the points.
 */
export function weightsOf(power: Power, highest_MPa: number): Weights {
  const raised = (x: number) => (x > 0 ? Math.exp(power.n * Math.log(x)) : 0);
  const ratioRaised = (r: number) => raised(power.weight(r));
  const peak = cubics(raised, 0, highest_MPa, INTERVALS);
  const ratios = cubics(ratioRaised, DEEPEST_RATIO, 1, 2 * INTERVALS);
  const [p, t] = [peak.table, ratios.table];
  const scale = peak.scale;
  const exact = (max: number, min: number) => (max > 0 ? raised(max) * ratioRaised(min / max) : 0);
  return {
    of: (max, min) => {
      let x = max * scale;
      let i = x | 0;
      let y = (min / max - DEEPEST_RATIO) * INTERVALS;
      let j = y | 0;
      if (!(x >= 1 && i < INTERVALS && y >= 0 && j < 2 * INTERVALS - 1)) return exact(max, min);
      x -= i;
      y -= j;
      i <<= 2;
      j <<= 2;
      const first = p[i]! + x * (p[i + 1]! + x * (p[i + 2]! + x * p[i + 3]!));
      return first * (t[j]! + y * (t[j + 1]! + y * (t[j + 2]! + y * t[j + 3]!)));
    },
    error: peak.error * ratios.most + raised(highest_MPa) * ratios.error,
  };
}

function cubics(f: (x: number) => number, from: number, to: number, intervals: number) {
  const table = new Float64Array(4 * intervals);
  const width = (to - from) / intervals;
  let error = 0;
  let most = 0;
  for (let i = 0; i < intervals; i++) {
    const at = (u: number) => f(from + (i + u) * width);
    const [a, b, c, d] = [at(0), at(1 / 3), at(2 / 3), at(1)];
    const c1 = -5.5 * a + 9 * b - 4.5 * c + d;
    const c2 = 9 * a - 22.5 * b + 18 * c - 4.5 * d;
    const c3 = -4.5 * a + 13.5 * b - 13.5 * c + 4.5 * d;
    table.set([a, c1, c2, c3], 4 * i);
    if (i > 0 && i < intervals - 1)
      for (const u of [0.12, 0.5, 0.88]) error = Math.max(error, Math.abs(a + u * (c1 + u * (c2 + u * c3)) - at(u)));
    most = Math.max(most, a, d);
  }
  return { table, scale: 1 / width, error: 2 * error, most };
}

/** Sums of the weights of a sequence, block by block: between weight and place in it, both ways. */
export interface WeightSums {
  readonly whole: number;
  /** Mean of the weights, weighted by themselves: what the mean growing cycle adds. */
  readonly mean: number;
  /** How far that mean of a part of the sequence is from the whole's, as a share. */
  readonly unevenness: number;
  /** Bound of the error of the whole, as a share. */
  readonly error: number;
  /** Cycles after which this weight is reached, the sequence repeated. */
  readonly cyclesAt: (weight: number) => number;
  readonly weightAt: (cycles: number) => number;
}
const BLOCK = 1024;
const PARTS = 64;

export function weightSums(power: Power, { max_MPa, min_MPa }: CycleSequence, highest_MPa: number): WeightSums {
  const { of, error } = weightsOf(power, Math.max(highest_MPa, Number.MIN_VALUE));
  const length = max_MPa.length;
  const blocks = Math.ceil(length / BLOCK);
  const before = new Float64Array(blocks + 1);
  const squares = new Float64Array(blocks);
  for (let b = 0; b < blocks; b++) {
    let [sum, square] = [0, 0];
    for (let i = b * BLOCK; i < Math.min(length, (b + 1) * BLOCK); i++) {
      const w = of(max_MPa[i]!, min_MPa[i]!);
      sum += w;
      square += w * w;
    }
    before[b + 1] = before[b]! + sum;
    squares[b] = square;
  }
  const whole = before[blocks]!;
  const meanOf = (from: number, to: number) => {
    let square = 0;
    for (let b = from; b < to; b++) square += squares[b]!;
    const sum = before[to]! - before[from]!;
    return sum > 0 ? square / sum : 0;
  };
  const mean = meanOf(0, blocks);
  let unevenness = 0;
  const part = Math.ceil(blocks / PARTS);
  for (let b = 0; b + part <= blocks; b += part)
    unevenness = Math.max(unevenness, Math.abs(meanOf(b, b + part) - mean));
  const within = (cycles: number): number => {
    const b = Math.floor(cycles / BLOCK);
    let sum = before[b]!;
    for (let i = b * BLOCK; i < cycles; i++) sum += of(max_MPa[i]!, min_MPa[i]!);
    return sum;
  };
  const find = (weight: number): number => {
    let [low, high] = [0, blocks - 1];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (before[middle + 1]! >= weight) high = middle;
      else low = middle + 1;
    }
    let sum = before[low]!;
    let i = low * BLOCK;
    while (i < length && sum < weight) sum += of(max_MPa[i]!, min_MPa[i++]!);
    return i;
  };
  return {
    whole,
    mean,
    unevenness: mean > 0 ? unevenness / mean : 0,
    error: whole > 0 ? (error * length) / whole : 0,
    cyclesAt: (weight) => {
      const passes = Math.floor(weight / whole);
      return passes * length + find(weight - passes * whole);
    },
    weightAt: (cycles) => Math.floor(cycles / length) * whole + within(cycles % length),
  };
}
