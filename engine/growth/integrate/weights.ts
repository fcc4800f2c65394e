import { stressRatio } from '../material/index.ts';
import type { CycleSequence, GrowthLaw } from '../model.ts';

type Power = NonNullable<GrowthLaw['power']>;
/** Weight of a cycle: its growth at K = stress over c, (weight(R) Smax)^n. */
export interface Weights {
  /** Of the cycles from one to before another: sum of the weights and of their squares. */
  readonly sum: (max_MPa: Float64Array, min_MPa: Float64Array, from: number, to: number) => Sum;
  /** Bound of the error of one weight. */
  readonly error: number;
}
interface Sum {
  readonly sum: number;
  readonly square: number;
}

/** Tables that stay in the nearest cache; where a power has no smooth parabola, at the ends, it is computed. */
const INTERVALS = 512;
const DEEPEST_RATIO = -1;
/** So that the highest peak lies in the table. */
const BEYOND = 1e-9;

/**
 * Weights of cycles under a pure power of K, read from tables of parabolas: the peak raised, and the stress ratio's
 * weight raised, whose kink at 0 lies between two intervals: one table without a question asked is read twice as fast.
 * Deeper ratios are computed. The error is measured between the points.
 *
 * @throws Refusal `growth.stress-ratio`, by `sum`, for a cycle that does not fall
 */
export function weightsOf(power: Power, highest_MPa: number): Weights {
  const raised = (x: number) => (x > 0 ? Math.exp(power.n * Math.log(x)) : 0);
  const ratioRaised = (r: number) => raised(power.weight(r));
  const peak = parabolas(raised, 0, highest_MPa * (1 + BEYOND), INTERVALS);
  const ratios = parabolas(ratioRaised, DEEPEST_RATIO, 1, 2 * INTERVALS);
  const exact = (max: number, min: number) => (max > 0 ? raised(max) * ratioRaised(min / max) : 0);
  const tables = { peaks: peak.table, ratios: ratios.table, scale: peak.scale };
  return {
    sum: (max, min, from, to) => {
      let { sum, square, left } = sumOf(tables, max, min, from, to);
      for (let i = from; left > 0 && i < to; i++)
        if (!inside(tables, max[i]!, min[i]!)) {
          if (!(min[i]! < max[i]!)) stressRatio(max[i]!, min[i]!);
          const weight = exact(max[i]!, min[i]!);
          sum += weight;
          square += weight * weight;
          left--;
        }
      return { sum, square };
    },
    error: peak.error * ratios.most + raised(highest_MPa) * ratios.error,
  };
}
interface Tables {
  readonly peaks: Float64Array;
  readonly ratios: Float64Array;
  readonly scale: number;
}
const inside = ({ scale }: Tables, max: number, min: number): boolean => {
  const x = max * scale;
  const y = (min / max - DEEPEST_RATIO) * INTERVALS;
  return x >= 1 && x < INTERVALS && y >= 0 && y < 2 * INTERVALS - 1;
};

/** Nothing is called within: a call would have both tables looked up anew for every cycle. `left` were not in them. */
function sumOf(
  { peaks: p, ratios: t, scale }: Tables,
  max: Float64Array,
  min: Float64Array,
  from: number,
  to: number,
): Sum & { readonly left: number } {
  let sum = 0;
  let square = 0;
  let left = 0;
  for (let k = from; k < to; k++) {
    const high = max[k]!;
    let x = high * scale;
    let y = (min[k]! / high - DEEPEST_RATIO) * INTERVALS;
    if (!(x >= 1 && x < INTERVALS && y >= 0 && y < 2 * INTERVALS - 1)) {
      left++;
      continue;
    }
    let i = x | 0;
    let j = y | 0;
    x -= i;
    y -= j;
    i *= 3;
    j *= 3;
    const weight = (p[i]! + x * (p[i + 1]! + x * p[i + 2]!)) * (t[j]! + y * (t[j + 1]! + y * t[j + 2]!));
    sum += weight;
    square += weight * weight;
  }
  return { sum, square, left };
}

/** Where a parabola through both ends and the middle is off the most. */
const FARTHEST = [0.21, 0.79];
function parabolas(f: (x: number) => number, from: number, to: number, intervals: number) {
  const table = new Float64Array(3 * intervals);
  const width = (to - from) / intervals;
  let error = 0;
  let most = 0;
  for (let i = 0; i < intervals; i++) {
    const at = (u: number) => f(from + (i + u) * width);
    const [a, b, c] = [at(0), at(0.5), at(1)];
    const c1 = -3 * a + 4 * b - c;
    const c2 = 2 * a - 4 * b + 2 * c;
    table.set([a, c1, c2], 3 * i);
    if (i > 0 && i < intervals - 1)
      for (const u of FARTHEST) error = Math.max(error, Math.abs(a + u * (c1 + u * c2) - at(u)));
    most = Math.max(most, a, c);
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
  const { sum: sumIn, error } = weightsOf(power, Math.max(highest_MPa, Number.MIN_VALUE));
  const length = max_MPa.length;
  const blocks = Math.ceil(length / BLOCK);
  const before = new Float64Array(blocks + 1);
  const squares = new Float64Array(blocks);
  for (let b = 0; b < blocks; b++) {
    const { sum, square } = sumIn(max_MPa, min_MPa, b * BLOCK, Math.min(length, (b + 1) * BLOCK));
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
    return before[b]! + sumIn(max_MPa, min_MPa, b * BLOCK, cycles).sum;
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
    for (; i < length && sum < weight; i++) sum += sumIn(max_MPa, min_MPa, i, i + 1).sum;
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
