import { grow } from '../integrate/adaptive.ts';
import type { CrackSize } from '../model.ts';
import { courseOf, hoursAt } from './course.ts';
import { type Grown, hourLaw, marginOf } from './one-life.ts';
import type { LifeProblem } from './problem.ts';
import { firstFalling, firstOf, neverRises, zeroOf } from './search.ts';

const POINTS = 300;

/**
 * Lives of a growth that is a pure power of K, all read from one course.
 *
 * What: with rate = C Kⁿ a stress factor s multiplies the growth of both tips at every size by sⁿ. Which sizes follow
 * each other does not change, so that hours are those of the middle course over sⁿ; only the size at which a life ends
 * is its own, and is sought along the course. Exact for this law alone: with a threshold, or a toughness in the law, it
 * is not, and every life is integrated.
 * Not valid for: other laws, load interaction.
 * @returns null where growth is no pure power; else a function of stress factor and toughness factor. Hours of the
 * course are those at a stress factor of 1, `end` too
 */
export function scaledLives(problem: LifeProblem): ((stress: number, toughness: number) => Grown) | null {
  if (problem.power === null) return null;
  const cycle = { max_MPa: 1, min_MPa: 0, perHour: 1 };
  const { points, ended } = grow(
    problem.form,
    hourLaw(problem.perHour),
    [cycle],
    problem.first,
    {},
    { points: POINTS },
  );
  const course = courseOf(points, problem.form.thickness_mm, problem.perHour);
  const last = points.length - 1;
  const stands = ended === 'no growth';
  const sizes = points.map((p): CrackSize => (p.a_mm === null ? { c_mm: p.c_mm } : { c_mm: p.c_mm, a_mm: p.a_mm }));
  const between = (i: number, share: number): CrackSize => {
    const c_mm = Math.exp(course.lnC[i]! + share * (course.lnC[i + 1]! - course.lnC[i]!));
    if (points[i]!.a_mm === null) return { c_mm };
    return { c_mm, a_mm: Math.exp(course.lnA[i]! + share * (course.lnA[i + 1]! - course.lnA[i]!)) };
  };
  // The end of the solution has no strength to ask for: it ends what has not ended before.
  const form = points[last]!.a_mm === null ? (problem.form.through ?? problem.form) : problem.form;
  const inside = form.outside(sizes[last]!) === null ? last : last - 1;
  const falls = neverRises(problem, sizes.slice(0, inside + 1));

  return (stress, toughness) => {
    const margin = marginOf(problem, stress, toughness);
    const at = (i: number) => margin(sizes[i]!);
    const i = falls ? firstFalling(at, inside) : firstOf(at, inside);
    if (i === null) return { course, end: stands ? null : { hours: course.hours[last]!, lnC: course.lnC[last]! } };
    if (i === 0) return { course, end: { hours: 0, lnC: course.lnC[0]! } };
    if (!(course.lnC[i]! > course.lnC[i - 1]! || course.lnA[i]! > course.lnA[i - 1]!))
      return { course, end: { hours: course.hours[i]!, lnC: course.lnC[i]! } };
    const share = zeroOf((u) => (u === 1 ? at(i) : margin(between(i - 1, u))));
    const lnC = course.lnC[i - 1]! + share * (course.lnC[i]! - course.lnC[i - 1]!);
    return { course, end: { hours: hoursAt(course, i - 1, lnC), lnC } };
  };
}
