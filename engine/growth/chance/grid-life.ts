import type { CrackForm } from '../model.ts';
import { hoursAt } from './course.ts';
import { type Grown, marginOf } from './one-life.ts';
import type { LifeProblem } from './problem.ts';
import { firstFalling, neverRises, zeroOf } from './search.ts';

/** Panels of ln c: so many first, so many for a life that they do not serve. */
const PANELS = [96, 384] as const;
/** Share of the hours that the sum may be off by, as told by the same sum over panels twice as wide. */
const CLOSE = 2e-5;

/**
 * Lives of a crack with one tip, its hours summed over lengths that all lives share.
 *
 * What: one tip passes every length in order, so that hours are the sum over ln c of c over the growth an hour there. K
 * at the lengths is worked out once; a life asks the growth at its own stress factor, and seeks its own end.
 * How: Simpson's rule over panels of ln c, held against the same rule over panels twice as wide; where that is not close
 * enough (a threshold within it), over finer ones. A life that these do not serve either, or whose growth stops or runs
 * away within it, is left to `grownLife`.
 * Not valid for: two tips, load interaction.
 * @returns null where it cannot be so; else a function that gives a life, or null for one that it leaves. The course is
 * filled anew by each call
 */
export function gridLives(problem: LifeProblem): OneLife | null {
  const [wide, fine] = PANELS.map((count) => gridOf(problem, count));
  return wide && fine ? (stress, toughness) => wide(stress, toughness) ?? fine(stress, toughness) : null;
}
type OneLife = (stress: number, toughness: number) => Grown | null;

function gridOf(problem: LifeProblem, count: number): OneLife | null {
  const { form, first, perHourAtLn } = problem;
  if (form.tips !== 1) return null;
  const longest = longestWithin(form, first.c_mm);
  const [from, to] = [Math.log(first.c_mm), Math.log(longest)];
  const step = (to - from) / count;
  if (!(step > 0)) return null;
  const length = Float64Array.from({ length: 2 * count + 1 }, (_, i) =>
    Math.min(longest, Math.exp(from + (i / 2) * step)),
  );
  const lnK = length.map((c_mm) => Math.log(form.k({ c_mm }).c));
  const ends = Array.from({ length: count + 1 }, (_, i) => ({ c_mm: length[2 * i]! }));
  if (!neverRises(problem, ends)) return null;
  const course = {
    hours: new Float64Array(count + 1),
    lnC: Float64Array.from(ends, (s) => Math.log(s.c_mm)),
    lnA: new Float64Array(count + 1).fill(Math.log(form.thickness_mm)),
    slope: new Float64Array(count + 1),
  };

  return (stress, toughness) => {
    const margin = marginOf(problem, stress, toughness);
    const last = firstFalling((i) => margin(ends[i]!), count);
    if (last === 0) return { course, end: { hours: 0, lnC: course.lnC[0]! } };
    const panels = Math.min(count, (last ?? count) + ((last ?? count) % 2));
    const lnStress = Math.log(stress);
    const slow = (i: number) => length[i]! / perHourAtLn(lnStress + lnK[i]!);
    const { hours, slope } = course;
    slope[0] = slow(0);
    let [sum, off] = [0, 0];
    for (let p = 1; p <= panels; p++) {
      slope[p] = slow(2 * p);
      sum += (step / 6) * (slope[p - 1]! + 4 * slow(2 * p - 1) + slope[p]!);
      hours[p] = sum;
      if (p % 2 === 0)
        off += Math.abs(sum - hours[p - 2]! - (step / 3) * (slope[p - 2]! + 4 * slope[p - 1]! + slope[p]!)) / 15;
    }
    if (!(off <= CLOSE * sum) || !(slope[panels]! > 0)) return null;
    if (last === null) return { course, end: { hours: sum, lnC: to } };
    const share = zeroOf((u) => margin({ c_mm: Math.min(longest, Math.exp(course.lnC[last - 1]! + u * step)) }));
    const lnC = course.lnC[last - 1]! + share * step;
    return { course, end: { hours: hoursAt(course, last - 1, lnC), lnC } };
  };
}

const HALVINGS = 60;
/** The longest length that the solution reaches without a break. */
function longestWithin(form: CrackForm, from_mm: number): number {
  let [low, high] = [from_mm, form.longest_c_mm];
  if (form.outside({ c_mm: high }) === null) return high;
  for (let i = 0; i < HALVINGS; i++) {
    const mid = (low + high) / 2;
    if (form.outside({ c_mm: mid }) === null) low = mid;
    else high = mid;
  }
  return low;
}
