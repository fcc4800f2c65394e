import type { Floor } from '../floor-document.ts';
import type { Join, StructureMap, ThreePoint } from '../structure-document.ts';
import { indexOf, splitStep } from './index-of.ts';

/** What a step costs there and back. */
export interface StepCost {
  /** Minutes on the clock, mean of the three points. */
  readonly there_min: number;
  readonly back_min: number;
  /** Minutes of all hands together, there and back. */
  readonly hands_min: number;
  /** Fasteners that are made anew, cents. */
  readonly fasteners_cents: number;
  /** Holes that drilling out is expected to spoil: worked up to the next size, one more fastener each, cents. */
  readonly spoiled_cents: number;
  /** All of it, whole cents. */
  readonly cents: number;
}

/** Mean of three points, (a + 4m + b)/6. */
export const meanOf = (t: ThreePoint | undefined): number => (t ? (t.low_min + 4 * t.likely_min + t.high_min) / 6 : 0);
export const NO_TIME: ThreePoint = { low_min: 0, likely_min: 0, high_min: 0 };
export const timesCount = (t: ThreePoint, n: number): ThreePoint => ({
  low_min: t.low_min * n,
  likely_min: t.likely_min * n,
  high_min: t.high_min * n,
});

export type RowWork = 'open' | 'clip' | 'drill' | 'deburr' | 'close';
/** Driven out, a rivet does not go back in; what is screwed does. */
export const isMadeAnew = (join: Join): boolean => join.fasteners.kind.endsWith('rivet');
/**
 * Time of one work on a whole row: as stated for the row, else by the count and the shop's time for one of its kind.
 * What is screwed closes as it opens where nothing else is stated.
 */
export function rowTime(map: StructureMap, join: Join, work: RowWork): ThreePoint {
  const whole = join.row?.[work];
  if (whole) return whole;
  const one = map.each[join.fasteners.kind]?.[work];
  if (one) return timesCount(one, join.fasteners.count);
  return work === 'close' && !isMadeAnew(join) ? rowTime(map, join, 'open') : NO_TIME;
}
/** Without a floor a minute of one person counts one cent: the least teardown is then the one of least work. */
const WITHOUT_FLOOR_CENTS = 60;
export const hourCents = (floor?: Floor): number => floor?.hour_cents ?? WITHOUT_FLOOR_CENTS;
const handsCents = (hands_min: number, floor?: Floor) => (hands_min / 60) * hourCents(floor);

function joinCost(map: StructureMap, join: Join, floor?: Floor): StepCost {
  const there = meanOf(rowTime(map, join, 'open'));
  const anew = isMadeAnew(join);
  const clip = anew ? meanOf(rowTime(map, join, 'clip')) : 0;
  const close = meanOf(rowTime(map, join, 'close'));
  const { count, code } = join.fasteners;
  const each = floor?.fasteners.find((f) => f.code === code)?.each_cents ?? 0;
  const spoiled = anew ? count * join.spoil_chance : 0;
  const again =
    (meanOf(rowTime(map, join, 'drill')) + meanOf(rowTime(map, join, 'deburr')) + close) / Math.max(1, count);
  const back = clip + close;
  const hands = (there + back) * join.persons;
  const fasteners = anew ? count * each : 0;
  const spoiledCents = spoiled * (handsCents(again * join.persons, floor) + each);
  return sum(there, back, hands, fasteners, spoiledCents, floor);
}
function sum(there: number, back: number, hands: number, fasteners: number, spoiled: number, floor?: Floor): StepCost {
  return {
    there_min: there,
    back_min: back,
    hands_min: hands,
    fasteners_cents: fasteners,
    spoiled_cents: spoiled,
    cents: Math.round(handsCents(hands, floor) + fasteners + spoiled),
  };
}

/**
 * Cost of a step there and back: hands times hour, fasteners that are made anew, holes that drilling is expected to
 * spoil. A part: off and back. A join: out, and where it is riveted clipped and riveted again. A support: set up; what
 * a jig costs by the day is the quote's.
 *
 * Not in it: what a new part asks for besides (match-drilling, coating), which every way to it shares.
 */
export function costOf(map: StructureMap, step: string, floor?: Floor): StepCost {
  const [kind, of] = splitStep(step);
  const index = indexOf(map);
  const join = kind === 'open' ? index.join.get(of) : undefined;
  if (join) return joinCost(map, join, floor);
  const part = kind === 'off' ? index.part.get(of) : undefined;
  if (part) {
    const [there, back] = [meanOf(part.take_off), meanOf(part.put_back)];
    return sum(there, back, (there + back) * part.persons, 0, 0, floor);
  }
  const support = kind === 'support' ? index.support.get(of) : undefined;
  const there = meanOf(support?.set_up);
  return sum(there, 0, there * (support?.persons ?? 1), 0, 0, floor);
}
