import { type RandomSource, randomSource } from '../foundation/random.ts';
import { Refusal } from '../foundation/refusal.ts';
import { peaksOnly } from './counting/peaks-only.ts';
import { curvesOf, type LevelCurve } from './curves.ts';
import type { UsageDocument } from './document.ts';
import { allOf, type Levels, levelAt } from './levels.ts';
import type { StressSequence } from './model.ts';
import { loadsOf } from './refusals.ts';
import { type StressLine, shapeLine, stressLine } from './stress-line.ts';

/** Something that happens so often an hour; drawn by its own frequency it is a pair of increments, g. */
export interface EventKind {
  readonly load: LevelCurve['load'];
  readonly ground: boolean;
  readonly perHour: number;
  readonly up: Levels | null;
  readonly down: Levels | null;
}
const kind = (c: LevelCurve, up: Levels | null, down: Levels | null): EventKind[] => {
  const perHour = Math.max(up ? allOf(up) : 0, down ? allOf(down) : 0);
  return perHour > 0 ? [{ load: c.load, ground: c.ground, perHour, up, down }] : [];
};
/** The kinds of events of these loads: gusts and ground loads as pairs of equal frequency, manoeuvres each way by itself. */
export const eventKinds = (curves: readonly LevelCurve[]): EventKind[] =>
  curves.flatMap((c) => {
    const { up, down } = c.levels;
    return c.load === 'manoeuvre' ? [...kind(c, up, null), ...kind(c, null, down)] : kind(c, up, down);
  });

/** Takes one event: stress at its upper and at its lower increment, MPa. */
export type Drawn = (up_MPa: number, down_MPa: number) => void;

/** Poisson events in some hours of flights, in the order of their times: the gaps between them are exponential. */
export function eachEvent(
  kinds: readonly EventKind[],
  hours: number,
  line: StressLine,
  random: RandomSource,
  take: Drawn,
): void {
  const all = kinds.reduce((t, k) => t + k.perHour, 0);
  if (all === 0) return;
  const gap = () => -Math.log(1 - random.next()) / all;
  for (let t = gap(); t < hours; t += gap()) {
    let times = (1 - random.next()) * all;
    let i = 0;
    while (i < kinds.length - 1 && times > kinds[i]!.perHour) times -= kinds[i++]!.perHour;
    const { ground, up, down } = kinds[i]!;
    const stress = ground ? line.ground : line.flight;
    const rise = up ? levelAt(up, times) : 0;
    const fall = down === up ? rise : down ? levelAt(down, times) : 0;
    take(stress(1 + rise), stress(1 - fall));
  }
}

/** Turning points that are held at once. */
export const MOST_TURNING_POINTS = 4_000_000;
/** @throws Refusal `usage.sequence-too-long` */
export function refuseTooLong(curves: readonly LevelCurve[], flight_h: number, flights: number, place: string): void {
  const events = eventKinds(curves).reduce((t, k) => t + k.perHour, 0) * flight_h;
  const points = flights * (2 * events + 4);
  if (points <= MOST_TURNING_POINTS) return;
  throw new Refusal('usage.sequence-too-long', {
    given: `${place}: ${flights} flights of about ${Math.round(events)} events, ${Math.round(points)} turning points`,
    allowed: `up to ${MOST_TURNING_POINTS} turning points`,
    remedy: 'Draw fewer flights, or begin the tables at a higher level',
  });
}

/**
 * A flight-by-flight sequence of stress.
 *
 * Each flight starts and ends on the ground. Its events are Poisson numbers at the rates of the curves, in random order
 * within the flight; taxi before and after, landing impacts after. A gust goes up and then down by increments of equal
 * frequency, a manoeuvre from or to 1 g. Random numbers are keyed by seed and flight, so that flight n is the same
 * however many are drawn.
 *
 * Not valid for questions about the order of flights: no season, no missions, no rare flight by plan.
 *
 * @param asked seed and number of flights
 * @returns turning points, MPa, and the hours they stand for
 * @throws Refusal `usage.sequence-too-long`, `usage.stress-unknown` and what `curvesOf` refuses
 */
export const sequenceOf = (
  document: UsageDocument,
  use: string,
  asked: { readonly seed: number; readonly flights: number },
): StressSequence => sequence(document, use, asked, stressLine(document.place.stress));

/** The same with the stress at 1 g in flight as 1 MPa. @throws Refusal as `sequenceOf` */
export const sequenceShapeOf = (
  document: UsageDocument,
  use: string,
  asked: { readonly seed: number; readonly flights: number },
): StressSequence => sequence(document, use, asked, shapeLine(document.place.stress));

function sequence(
  document: UsageDocument,
  use: string,
  { seed, flights }: { readonly seed: number; readonly flights: number },
  line: StressLine,
): StressSequence {
  const { flight_h } = loadsOf(document, use);
  const curves = curvesOf(document, use);
  refuseTooLong(curves, flight_h, flights, `use ${use}`);
  const kinds = eventKinds(curves);
  const inFlight = kinds.filter((k) => !k.ground);
  const taxi = kinds.filter((k) => k.load === 'taxi');
  const landing = kinds.filter((k) => k.load === 'landing');
  const points = new Points();
  const both = (up: number, down: number) => {
    points.add(up);
    points.add(down);
  };
  const [still, level] = [line.ground(1), line.flight(1)];
  for (let n = 0; n < flights; n++) {
    const random = randomSource(seed, n);
    points.add(still);
    eachEvent(taxi, flight_h / 2, line, random, both);
    points.add(still);
    points.add(level);
    eachEvent(inFlight, flight_h, line, random, both);
    points.add(level);
    points.add(still);
    eachEvent(landing, flight_h, line, random, both);
    eachEvent(taxi, flight_h / 2, line, random, both);
    points.add(still);
  }
  return { use, turningPoints_MPa: peaksOnly(points.all()), flights, hours: flights * flight_h, seed };
}

/** A list of numbers that grows, without a box for each. */
class Points {
  #held = new Float64Array(1024);
  #n = 0;
  add(p: number): void {
    if (this.#n === this.#held.length) {
      const more = new Float64Array(2 * this.#n);
      more.set(this.#held);
      this.#held = more;
    }
    this.#held[this.#n++] = p;
  }
  all(): Float64Array {
    return this.#held.subarray(0, this.#n);
  }
}
