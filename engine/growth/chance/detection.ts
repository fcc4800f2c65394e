import type { Provenance } from '../../foundation/provenance.ts';
import { Refusal } from '../../foundation/refusal.ts';

/** Chance that one look finds a crack, through the sizes found half the time and nine times in ten. */
export interface Detection {
  readonly a50_mm: number;
  readonly a90_mm: number;
  /** Chance that these looks can find anything at all: the place is reached, probe and hands are sound. Shared by all of them. */
  readonly most: number;
}

export const LOG_ODDS_FROM: Provenance = {
  source: 'Metals Handbook, volume 17, Nondestructive evaluation and quality control',
  place: 'log-odds form of the chance of detection (Berens); two sizes fix it',
  known: 'read',
};
const LOG_ODDS_OF_NINE_IN_TEN = Math.log(9);

/**
 * The chance that one look misses a crack of a size: log-odds straight in the logarithm of size.
 *
 * What: 1 − POD, in its own tail, so that many looks can be multiplied.
 * How: odds of finding (size / a50)^(1/σ), σ = ln(a90 / a50) / ln 9.
 * Not valid for: sizes measured otherwise than the trial behind a50 and a90 measured them.
 * @param detection a50 below a90, mm
 * @returns a function of size, mm; 1 at size 0
 * @throws Refusal `growth.detection-reversed`
 * @see Metals Handbook volume 17; DTDH section 3.1.2.4 finds it alike to the log-normal form
 */
export function missOf(detection: Pick<Detection, 'a50_mm' | 'a90_mm'>): (size_mm: number) => number {
  const { a50_mm, a90_mm } = detection;
  if (!(a50_mm > 0 && a90_mm > a50_mm))
    throw new Refusal('growth.detection-reversed', {
      given: `found half the time at ${a50_mm} mm, nine times in ten at ${a90_mm} mm`,
      allowed: 'a size found nine times in ten that is larger than the one found half the time',
      remedy: 'Exchange the two, or take them anew from the trial of the method',
      source: LOG_ODDS_FROM.source,
    });
  const slope = LOG_ODDS_OF_NINE_IN_TEN / Math.log(a90_mm / a50_mm);
  const middle = Math.log(a50_mm);
  return (size_mm) => (size_mm > 0 ? 1 / (1 + Math.exp(slope * (Math.log(size_mm) - middle))) : 1);
}

/** Chance that one look finds a crack of a size, the look being able to find anything. */
export const detectedAt = (detection: Pick<Detection, 'a50_mm' | 'a90_mm'>, size_mm: number): number =>
  1 - missOf(detection)(size_mm);

/**
 * The chance that no look of a row found the crack.
 *
 * What: 1 − most · (1 − Π miss). The looks of a programme share hands, probe and access: with a chance of 1 − most none
 * of them can find it, so that a hundred looks are never better than `most`. Harder than cutting 1 − Π miss at `most`.
 * Not valid for: looks by different methods, where less is shared.
 * @param missedAlone Π of the chances that each look alone misses, 0 to 1
 */
export const missedByAll = (most: number, missedAlone: number): number => 1 - most * (1 - missedAlone);
