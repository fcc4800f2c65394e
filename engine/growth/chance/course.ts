import type { GrowthCurve, GrowthPoint } from '../model.ts';

/** A crack along its growth, read at any hour or any length. Hours at the growth rate as stated. */
export interface Course {
  readonly hours: Float64Array;
  readonly lnC: Float64Array;
  /** A through crack is as deep as the place is thick. */
  readonly lnA: Float64Array;
  /** Hours per unit of ln c; Infinity where the length stands still. */
  readonly slope: Float64Array;
}

/** @param perHour growth at a tip from the K of the points, mm/h */
export function courseOf(points: GrowthCurve['points'], thickness_mm: number, perHour: (k: number) => number): Course {
  const of = (f: (p: GrowthPoint) => number) => Float64Array.from(points, f);
  return {
    hours: of((p) => p.hours),
    lnC: of((p) => Math.log(p.c_mm)),
    lnA: of((p) => Math.log(p.a_mm ?? thickness_mm)),
    slope: of((p) => p.c_mm / perHour(p.kc_MPa_sqrt_m)),
  };
}

/**
 * Hours at a length between two points, by the cubic through both with their own growth rates; straight where one of
 * them is not of use (the length stands still, or the cubic would not rise).
 */
export function hoursAt(course: Course, i: number, lnC: number): number {
  const step = course.lnC[i + 1]! - course.lnC[i]!;
  const [h0, h1] = [course.hours[i]!, course.hours[i + 1]!];
  if (!(step > 0)) return h1;
  const t = (lnC - course.lnC[i]!) / step;
  const mean = (h1 - h0) / step;
  const [s0, s1] = [course.slope[i]!, course.slope[i + 1]!];
  if (!(s0 <= 3 * mean && s1 <= 3 * mean)) return h0 + t * (h1 - h0);
  const u = 1 - t;
  return u * u * (1 + 2 * t) * h0 + t * t * (1 + 2 * u) * h1 + t * u * step * (u * s0 - t * s1);
}

const TRIES = 40;
const CLOSE = 1e-7;
/** The size at an hour between two points. */
export function sizeAt(course: Course, i: number, hours: number, of: 'c' | 'a'): number {
  const [from, to] = [course.lnC[i]!, course.lnC[i + 1]!];
  const [h0, h1] = [course.hours[i]!, course.hours[i + 1]!];
  const lnC = to > from ? lengthAt(course, i, hours) : from;
  if (of === 'c') return Math.exp(lnC);
  const share = to > from ? (lnC - from) / (to - from) : h1 > h0 ? (hours - h0) / (h1 - h0) : 1;
  return Math.exp(course.lnA[i]! + share * (course.lnA[i + 1]! - course.lnA[i]!));
}

/** By false position, halving where that is slow. */
function lengthAt(course: Course, i: number, hours: number): number {
  let [low, high] = [course.lnC[i]!, course.lnC[i + 1]!];
  let [short, over] = [course.hours[i]! - hours, course.hours[i + 1]! - hours];
  for (let n = 0; n < TRIES && high - low > CLOSE; n++) {
    const guess = n % 3 === 2 || !(over > short) ? (low + high) / 2 : low - ((high - low) * short) / (over - short);
    const off = hoursAt(course, i, guess) - hours;
    if (Math.abs(off) <= CLOSE * hours) return guess;
    if (off < 0) [low, short] = [guess, off];
    else [high, over] = [guess, off];
  }
  return low;
}
