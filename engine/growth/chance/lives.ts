import { hoursAt, sizeAt } from './course.ts';
import { missedByAll, missOf } from './detection.ts';
import { gridLives } from './grid-life.ts';
import { type Grown, grownLife } from './one-life.ts';
import { FAN_LIVES, type LifeProblem, type Lives, type PreparedChance } from './problem.ts';
import { scaledLives } from './scaled-life.ts';
import { factorsOf } from './scatter.ts';

/** Hours of the looks of a programme, in order, without end. */
export const lookAt = (programme: { first_h: number; repeat_h: number }, n: number): number =>
  n === 0 || programme.repeat_h > 0 ? programme.first_h + n * programme.repeat_h : Number.POSITIVE_INFINITY;

/** What lives share, made once for a problem however many parts are asked of it. */
interface Shared {
  readonly scaled: ReturnType<typeof scaledLives>;
  readonly grid: ReturnType<typeof gridLives>;
}
const shared = new WeakMap<LifeProblem, Shared>();
function sharedOf(problem: LifeProblem): Shared {
  const known = shared.get(problem);
  if (known) return known;
  const scaled = scaledLives(problem);
  const made = { scaled, grid: scaled ? null : gridLives(problem) };
  shared.set(problem, made);
  return made;
}

/**
 * Lives `from` up to, not with, `to`.
 *
 * What: each is grown from the first flaw to its own critical size with its own stress factor, growth rate and
 * toughness; on its way the chance that each look before the end misses it is gathered, by the size it has then.
 * How: `scaledLives` where growth is a pure power of K, `gridLives` for one tip, `grownLife` otherwise. The draws of a life depend on seed and
 * item alone: whoever computes it, and in whichever part, gets the same figures.
 * Not valid for: load interaction.
 * @param whole integrate every life on its own: the reference that what lives share is held against
 * @throws Refusal what the form refuses, `growth.detection-reversed`
 */
export function livesOf(
  prepared: PreparedChance,
  range: { readonly from: number; readonly to: number },
  whole = false,
): Lives {
  const { problem, chance, programme, sizes_mm } = prepared;
  const { from, to } = range;
  const { scaled, grid } = whole ? { scaled: null, grid: null } : sharedOf(problem);
  const lnSizes = sizes_mm.map(Math.log);
  const wide = lnSizes.length;
  const drawn = Math.max(0, Math.min(to, FAN_LIVES) - from);
  const lives: Lives = {
    from,
    to,
    hours: new Float64Array(to - from),
    missed: new Float64Array(to - from),
    fan: new Float32Array(drawn * wide),
  };
  const { detection } = chance;
  const miss = detection && programme ? missOf(detection) : null;
  const look = (n: number) => lookAt(programme!, n);
  for (let item = from; item < to; item++) {
    const own = factorsOf(chance, item);
    const grown =
      scaled?.(own.stress, own.toughness) ??
      grid?.(own.stress, own.toughness) ??
      grownLife(problem, own.stress, own.toughness);
    const faster = own.rate * (scaled ? Math.exp(problem.power! * Math.log(own.stress)) : 1);
    const at = item - from;
    lives.hours[at] = grown.end ? grown.end.hours / faster : Number.POSITIVE_INFINITY;
    lives.missed[at] = miss ? missedByAll(detection!.most, missedAlong(grown, faster, look, miss, detection!.of)) : 1;
    if (at < drawn) fanOf(grown, faster, lnSizes, lives.fan.subarray(at * wide, (at + 1) * wide));
  }
  return lives;
}

const CERTAINLY_FOUND = 1e-300;
/** Looks beyond these are not counted for a life: fewer looks find less. */
const MOST_LOOKS = 10_000;
/** Π of the chances that each look before the end misses the crack at the size it has then. */
function missedAlong(
  { course, end }: Grown,
  faster: number,
  look: (n: number) => number,
  miss: (size_mm: number) => number,
  of: 'c' | 'a',
): number {
  let missed = 1;
  if (!end) return missed;
  for (let n = 0, i = 0; n < MOST_LOOKS && missed > CERTAINLY_FOUND; n++) {
    const hours = look(n) * faster;
    if (!(hours < end.hours)) return missed;
    while (i < course.hours.length - 2 && course.hours[i + 1]! < hours) i++;
    missed *= miss(sizeAt(course, i, hours, of));
  }
  return missed;
}

/** Hours at which each length is reached. A life that ends before has run through at its end. */
function fanOf({ course, end }: Grown, faster: number, lnSizes: Float64Array, out: Float32Array): void {
  const last = course.lnC.length - 1;
  const ends = end ? end.hours : Number.POSITIVE_INFINITY;
  for (let s = 0, i = 0; s < lnSizes.length; s++) {
    const lnC = lnSizes[s]!;
    while (i < last && course.lnC[i + 1]! < lnC) i++;
    const reached = i < last ? hoursAt(course, i, Math.max(lnC, course.lnC[i]!)) : Number.POSITIVE_INFINITY;
    out[s] = Math.min(reached, ends) / faster;
  }
}
