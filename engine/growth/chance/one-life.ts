import type { Provenance } from '../../foundation/provenance.ts';
import { grow } from '../integrate/adaptive.ts';
import type { CrackSize, GrowthLaw } from '../model.ts';
import { type Course, courseOf } from './course.ts';
import type { LifeProblem } from './problem.ts';

/** A life before its own growth rate is applied. */
export interface Grown {
  readonly course: Course;
  /** Where it ends, hours and ln c; null for one that stops growing. */
  readonly end: { readonly hours: number; readonly lnC: number } | null;
}

/** Error of one step of a life, as a share; far inside the sampling. */
const TOLERANCE = 1e-6;
const FROM: Provenance = { source: 'the law of the document, summed over an hour of its loading', known: 'read' };

/** The loading as one cycle of 1 MPa an hour: K of it is x, and the growth it makes is that of an hour. */
export const hourLaw = (perHour: LifeProblem['perHour']): GrowthLaw => ({
  law: 'paris',
  rate: (kMax) => perHour(kMax),
  power: null,
  from: FROM,
});

/** What it still carries over what it must carry at this life's limit load, less one. */
export function marginOf(problem: LifeProblem, stress: number, toughness: number): (size: CrackSize) => number {
  const strength = problem.strengthOf(toughness);
  const limit = stress * problem.limit_MPa;
  return (size) => strength(size) / limit - 1;
}

/**
 * Integrates one life at its own stress factor and toughness, growth per cycle as stated.
 *
 * What: from the first flaw to the first size that no longer carries the limit load of this life.
 * How: the adaptive integration, the hour's growth read from what all lives share. The factor on growth per cycle is
 * applied after it, which is exact: without load interaction both tips and every size grow by it alike.
 * Not valid for: load interaction.
 * @throws Refusal what the form refuses
 */
export function grownLife(problem: LifeProblem, stress: number, toughness: number): Grown {
  const margin = marginOf(problem, stress, toughness);
  const curve = grow(
    problem.form,
    hourLaw(problem.perHour),
    [{ max_MPa: stress, min_MPa: 0, perHour: 1 }],
    problem.first,
    { margin: (_, size) => margin(size) },
    { tolerance: TOLERANCE, points: 0 },
  );
  const course = courseOf(curve.points, problem.form.thickness_mm, problem.perHour);
  const stopped = curve.ended === 'no growth';
  return { course, end: stopped ? null : { hours: curve.hours, lnC: course.lnC.at(-1)! } };
}
