import type { CrackForm, CrackSize, CycleSequence, GrowthCurve, GrowthLaw } from '../model.ts';
import { pointsAlong } from './curve.ts';
import { eventsOf } from './events.ts';
import { highestOf } from './hourly.ts';
import type { Until } from './model.ts';
import { kAt, NO_GROWTH_PER_H, sizeOf, slopeAlong } from './path.ts';
import type { Slope, State } from './step.ts';
import { walk } from './walk.ts';
import { weightSums } from './weights.ts';

/**
 * Grows a crack under a sequence whose cycles do not act on each other, in blocks.
 *
 * Under a pure power of K a cycle adds its weight, whatever the crack. So the crack is walked along the sum of the
 * weights with steps as long as their error allows, and the cycles are read back from the sums. Cycle by cycle K stays
 * behind by half a cycle's growth; the mean of that is taken off, so that the count is that of `growCycleByCycle`.
 *
 * Not valid with load interaction, nor for laws with a threshold or a toughness: those have no `power`.
 *
 * @param sequence MPa, repeated when its end is reached
 * @returns the curve and the bound of its error as a share of its hours; null where the law is no pure power
 * @throws Refusal `growth.no-cycles`, `growth.stress-ratio`, `growth.outside-solution` where `from` is outside
 * @see docs/methods/growth.md, Integration
 */
export function growByBlocks(
  form: CrackForm,
  law: GrowthLaw,
  sequence: CycleSequence,
  from: CrackSize,
  until: Until,
  options: { readonly tolerance?: number; readonly points?: number } = {},
): GrowthCurve | null {
  const { power } = law;
  if (!power) return null;
  const highest = highestOf(sequence);
  const sums = weightSums(power, sequence, highest);
  const count = { evaluations: 0 };
  const growth = (k: number) => (k > 0 ? power.c * Math.exp(power.n * Math.log(k)) : 0);
  form.k(from);
  const asked = until.cycles === undefined ? until : { ...until, cycles: sums.weightAt(until.cycles) };
  const way = walk(
    form,
    from,
    (now) =>
      sums.whole > 0
        ? behind(now, growth, sums.mean, count, (NO_GROWTH_PER_H * sequence.hours) / sums.whole)
        : () => 'stuck',
    (now) => eventsOf(now, asked, 1),
    options.tolerance ?? TOLERANCE,
  );
  const clock = (weight: number) => {
    const cycles = weight > 0 ? sums.cyclesAt(weight * (1 - ROUNDING)) : 0;
    return { cycles, hours: (cycles / sequence.max_MPa.length) * sequence.hours };
  };
  const point = pointsAlong(way.stretches, highest, clock);
  const { hours, cycles } = clock(way.end[2]);
  return {
    points: point.all(options.points ?? POINTS),
    ended: way.ended,
    hours,
    cycles,
    errorBound:
      cycles > 0 ? way.error + sums.error + lag(way.stretches, sums.mean) * (0.01 + sums.unevenness) + 1 / cycles : 0,
    evaluations: count.evaluations,
    by: 'blocks',
    through: way.through && point.at(form, way.through),
  };
}
const TOLERANCE = 1e-9;
const POINTS = 40;
/** Sums of many weights agree to so much; a crossing on the end of a cycle belongs to that cycle. */
const ROUNDING = 1e-13;

/** Slope by weight, less the half cycle that K stays behind: f − ½ (f(x + mean f) − f(x)). */
function behind(
  form: CrackForm,
  growth: (k: number) => number,
  mean: number,
  count: { evaluations: number },
  slowest: number,
): (at: State) => Slope {
  const plain = slopeAlong(form, growth, count, slowest);
  const rates = (at: State): readonly [number, number] | null => {
    const k = kAt(form, sizeOf(form, at));
    return k && [growth(k.c), form.tips === 2 ? growth(k.a ?? 0) : 0];
  };
  return (at) => {
    const slope = plain(at);
    const now = typeof slope === 'string' ? null : rates(at);
    if (!now) return slope;
    const after = rates([at[0] + mean * now[0], at[1] + mean * now[1], 0]);
    count.evaluations += 2;
    if (!after) return slope;
    const [c, a] = [1.5 * now[0] - 0.5 * after[0], 1.5 * now[1] - 0.5 * after[1]];
    const speed = c / at[0] + (form.tips === 2 ? a / at[1] : 0);
    return speed > 0 ? [c / speed, a / speed, 1 / speed] : slope;
  };
}

/** Half a cycle's growth behind, along the whole way, as a share of it. */
function lag(stretches: ReturnType<typeof walk>['stretches'], mean: number): number {
  let sum = 0;
  for (const { steps } of stretches)
    for (let i = 1; i < steps.length; i++) {
      const [before, after] = [steps[i - 1]!.slope[2], steps[i]!.slope[2]];
      if (before > 0 && after > 0) sum += Math.abs(Math.log(before / after)) + (steps[i]!.along - steps[i - 1]!.along);
    }
  const weight = stretches.at(-1)!.steps.at(-1)!.at[2];
  return weight > 0 ? (0.5 * mean * sum) / weight : 0;
}
