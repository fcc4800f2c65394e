import type { CrackForm, CrackSize, GrowthCurve, GrowthLaw } from '../model.ts';
import { pointsAlong } from './curve.ts';
import { eventsOf } from './events.ts';
import { type HourlyGrowth, hourlyGrowth } from './hourly.ts';
import type { HourlyCycle, Until } from './model.ts';
import { slopeAlong } from './path.ts';
import { walk } from './walk.ts';

export interface GrowOptions {
  /** Error of one step, as a share of length, depth and hours. */
  readonly tolerance?: number;
  /** Points of the curve at least; more are laid between the steps. 0: the steps alone. */
  readonly points?: number;
  /** Growth an hour made before, of the same law and cycles: as a table, for many lives. */
  readonly growth?: HourlyGrowth;
}

const TOLERANCE = 1e-7;
const POINTS = 40;

/**
 * Grows a crack under cycles an hour that do not act on each other, step by step in its own size.
 *
 * Length and depth each grow by their own K; a step is as long as its error allows. A part-through crack that reaches
 * the thickness goes on as a through crack of the same length. The cycles of an hour are taken as spread evenly over
 * it, so that a life of few hours, or of fewer than about a thousand cycles, belongs to `growCycleByCycle`.
 *
 * Not valid with load interaction. Where the solution for K reaches no further the growth ends as `ligament`: what
 * would come after is not counted.
 *
 * @param cycles MPa, times an hour
 * @param from size at the start, mm
 * @param until what ends it: critical size, asked length, asked cycles
 * @returns the curve, why it ended, and the bound of the error of its hours as a share of them
 * @throws Refusal `growth.no-cycles`, `growth.stress-ratio`, `growth.outside-solution` where `from` is outside
 * @see docs/methods/growth.md, Integration
 */
export function grow(
  form: CrackForm,
  law: GrowthLaw,
  cycles: readonly HourlyCycle[],
  from: CrackSize,
  until: Until,
  options: GrowOptions = {},
): GrowthCurve {
  const growth = options.growth ?? hourlyGrowth(law, cycles);
  const perHour = cycles.reduce((n, s) => n + s.perHour, 0);
  const highest = cycles.reduce(
    (most, s) => (s.perHour > 0 && s.max_MPa > most ? s.max_MPa : most),
    Number.NEGATIVE_INFINITY,
  );
  const count = { evaluations: 0 };
  form.k(from);
  const way = walk(
    form,
    from,
    (now) => slopeAlong(now, growth, count),
    (now) => eventsOf(now, until, perHour),
    options.tolerance ?? TOLERANCE,
  );
  const point = pointsAlong(way.stretches, highest, (hours) => ({ hours, cycles: hours * perHour }));
  const hours = way.end[2];
  return {
    points: point.all(options.points ?? POINTS),
    ended: way.ended,
    hours,
    cycles: hours * perHour,
    errorBound: way.error,
    evaluations: count.evaluations,
    by: 'adaptive',
    through: way.through && point.at(form, way.through),
  };
}
