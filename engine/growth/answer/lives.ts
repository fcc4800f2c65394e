import { tabled } from '../chance/hour-table.ts';
import type { GrowthDocument } from '../document.ts';
import { grow, growByBlocks, type HourlyGrowth, hourlyGrowth, MANY_CYCLES } from '../integrate/index.ts';
import type { CrackSize, CycleSequence, GrowthCurve } from '../model.ts';
import { placed } from './placed.ts';
import { carriedBy, type Problem } from './problem.ts';

/** Growth from a size to critical, without interaction. */
export type Life = (from: CrackSize, points?: number) => GrowthCurve;

/** By cycles an hour. @param quick growth an hour as a table, and longer steps: where many lives are held against each other */
export function lifeByHours(p: Problem, quick?: HourlyGrowth): Life {
  const until = { margin: carriedBy(p).margin };
  const growth =
    quick ?? (p.law.power || p.cycles.length <= MANY_CYCLES ? hourlyGrowth(p.law, p.cycles) : quickGrowth(p));
  return (from, points) => {
    const at = placed(p.form, from);
    return grow(at.form, p.law, p.cycles, at.size, until, {
      ...(points === undefined ? {} : { points }),
      growth,
      ...(quick ? { tolerance: QUICK } : {}),
    });
  };
}
const QUICK = 1e-5;
/** Growth an hour for many lives: the sum itself for a pure power, which is one cycle, else a table that fills itself. */
export function quickGrowth(p: Problem): HourlyGrowth {
  const growth = hourlyGrowth(p.law, p.cycles);
  if (p.law.power) return growth;
  const byLogarithm = tabled(growth);
  return (x) => byLogarithm(Math.log(x));
}

/** By the cycles of a sequence in their order, where the law is a pure power; else null. */
export function lifeBySequence(p: Problem, sequence: CycleSequence): Life | null {
  if (!p.law.power) return null;
  const until = { margin: carriedBy(p).margin };
  return (from, points) => {
    const at = placed(p.form, from);
    return growByBlocks(at.form, p.law, sequence, at.size, until, points === undefined ? {} : { points })!;
  };
}

/** Hours of a life; null where no growth was computed. */
export const hoursOf = (curve: GrowthCurve): number | null => (curve.ended === 'no growth' ? null : curve.hours);

/** The sequence of a document that is one. */
export function sequenceGiven({ loading }: GrowthDocument): CycleSequence | null {
  if (loading.as !== 'sequence') return null;
  return {
    max_MPa: Float64Array.from(loading.cycles_MPa, (c) => c[0]),
    min_MPa: Float64Array.from(loading.cycles_MPa, (c) => c[1]),
    hours: loading.hours,
  };
}
