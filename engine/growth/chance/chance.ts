import type { ChanceAnswer } from '../model.ts';
import { lookAt } from './lives.ts';
import { boundsOfMean } from './mean-bounds.ts';
import { rankOf, ranksAround } from './order-statistics.ts';
import type { Lives, PreparedChance } from './problem.ts';

const PERCENTILES = [0.01, 0.05, 0.1, 0.5, 0.9, 0.95, 0.99] as const;
const FAN_SHARES = [0.05, 0.25, 0.5, 0.75, 0.95] as const;
const MOST_LOOKS = 20;

/**
 * The answer of all lives, from their parts.
 *
 * What: percentiles of the hours with the bounds of their sampling, the fan, and the chance that a crack passes critical
 * before a look with no look before having found it. That chance is the mean, over all lives, of the weight of each: 0
 * while it lasts, else the chance that no look before its end found it. No coins are tossed for looks, which leaves only
 * the sampling of the lives.
 * How: parts are put in item order and every sum runs in that order: one part or many give the same figures. A
 * percentile is an order statistic; one that falls on a life that does not end, or that the lives do not bound on both
 * sides, is not given.
 * Not valid for: parts that do not cover the lives.
 */
export function chanceFrom(prepared: PreparedChance, parts: readonly Lives[]): ChanceAnswer {
  const { chance, sizes_mm } = prepared;
  const { hours, missed, fan } = joined(parts, chance.lives);
  const rising = hours.slice().sort();
  const unfinished = rising.length - firstAbove(rising, Number.MAX_VALUE);
  return {
    lives: chance.lives,
    seed: chance.seed,
    percentiles: PERCENTILES.flatMap((share) => percentile(rising, share) ?? []),
    fan: fanLines(fan, sizes_mm),
    passed: chance.detection ? passedBefore(prepared, hours, missed, rising) : [],
    detection: chance.detection
      ? { a50_mm: chance.detection.a50_mm, a90_mm: chance.detection.a90_mm, most: chance.detection.most }
      : null,
    unfinished,
  };
}

function joined(parts: readonly Lives[], lives: number) {
  const ordered = [...parts].sort((a, b) => a.from - b.from);
  let next = 0;
  for (const part of ordered) {
    if (part.from !== next) throw new Error(`lives ${next} to ${part.from} are missing or given twice`);
    next = part.to;
  }
  if (next !== lives) throw new Error(`${next} lives of ${lives} were computed`);
  const hours = new Float64Array(lives);
  const missed = new Float64Array(lives);
  for (const part of ordered) {
    hours.set(part.hours, part.from);
    missed.set(part.missed, part.from);
  }
  return { hours, missed, fan: ordered.map((p) => p.fan) };
}

function percentile(rising: Float64Array, share: number): ChanceAnswer['percentiles'][number] | null {
  const hours = rising[rankOf(rising.length, share) - 1]!;
  const ranks = ranksAround(rising.length, share);
  const low = ranks.low === null ? 0 : rising[ranks.low - 1]!;
  const high = ranks.high === null ? Number.POSITIVE_INFINITY : rising[ranks.high - 1]!;
  return Number.isFinite(hours) && Number.isFinite(high) ? { share, hours, sampling: { low, high } } : null;
}

/** Hours that a share of the lives has reached a length by, at each length; where too few reach it the line ends. */
function fanLines(parts: readonly Float32Array[], sizes_mm: Float64Array): ChanceAnswer['fan'] {
  const wide = sizes_mm.length;
  const count = parts.reduce((n, p) => n + p.length / wide, 0);
  const column = new Float32Array(count);
  const lines = FAN_SHARES.map((share) => ({ share, points: [] as { hours: number; c_mm: number }[] }));
  for (let s = 0; s < wide; s++) {
    let at = 0;
    for (const part of parts) for (let i = s; i < part.length; i += wide) column[at++] = part[i]!;
    column.sort();
    for (const line of lines) {
      const hours = column[rankOf(count, line.share) - 1]!;
      if (Number.isFinite(hours)) line.points.push({ hours, c_mm: sizes_mm[s]! });
    }
  }
  return lines;
}

function passedBefore(
  { programme }: PreparedChance,
  hours: Float64Array,
  missed: Float64Array,
  rising: Float64Array,
): ChanceAnswer['passed'] {
  if (!programme) return [];
  const passed: { look: number; hours: number; chance: number; sampling: { low: number; high: number } }[] = [];
  for (let n = 0; n < MOST_LOOKS; n++) {
    const look = lookAt(programme, n);
    if (!Number.isFinite(look)) break;
    let sum = 0;
    for (let i = 0; i < hours.length; i++) if (hours[i]! <= look) sum += missed[i]!;
    const chance = Math.min(1, sum / hours.length);
    passed.push({ look: n + 1, hours: look, chance, sampling: boundsOfMean(chance, hours.length) });
    if (look >= rising.at(-1)!) break;
  }
  return passed;
}

/** How many of a rising row are at most this. */
function firstAbove(rising: Float64Array, value: number): number {
  let [low, high] = [0, rising.length];
  while (low < high) {
    const mid = (low + high) >> 1;
    if (rising[mid]! <= value) low = mid + 1;
    else high = mid;
  }
  return low;
}
