import { grow } from '../integrate/adaptive.ts';
import type { CrackSize } from '../model.ts';
import { courseOf, hoursAt } from './course.ts';
import { type Grown, hourLaw, marginOf } from './one-life.ts';
import type { LifeProblem } from './problem.ts';

const POINTS = 300;
const TOUGHNESSES = [0.25, 1, 4];
const TRIES = 60;
const CLOSE = 1e-10;

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
  const falls = TOUGHNESSES.every((t) => {
    const strength = sizes.slice(0, inside + 1).map(problem.strengthOf(t));
    return strength.every((s, i) => i === 0 || s <= strength[i - 1]!);
  });

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

function firstOf(margin: (i: number) => number, last: number): number | null {
  for (let i = 0; i <= last; i++) if (margin(i) <= 0) return i;
  return null;
}
/** The same where the margin never rises. */
function firstFalling(margin: (i: number) => number, last: number): number | null {
  if (margin(last) > 0) return null;
  let [low, high] = [-1, last];
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (margin(mid) <= 0) high = mid;
    else low = mid;
  }
  return high;
}
/** Where a margin that is above zero at 0 and not above it at 1 passes zero; never before it does. */
function zeroOf(margin: (share: number) => number): number {
  let [low, high] = [0, 1];
  let [above, below] = [margin(0), margin(1)];
  for (let i = 0; i < TRIES && high - low > CLOSE; i++) {
    const guess =
      i % 3 === 2 || !(above < Number.POSITIVE_INFINITY) || below === above
        ? (low + high) / 2
        : low + ((high - low) * above) / (above - below);
    const mid = Math.min(Math.max(guess, low + CLOSE / 2), high - CLOSE / 2);
    const m = margin(mid);
    if (m <= 0) [high, below] = [mid, m];
    else [low, above] = [mid, m];
  }
  return high;
}
