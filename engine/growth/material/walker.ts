import type { GrowthLaw } from '../model.ts';
import type { WalkerConstants } from './constants.ts';
import { powerLaw } from './power-law.ts';

/**
 * Walker: da/dN = C [(1 − R)^m Kmax]^n, which is C [ΔK (1 − R)^(m − 1)]^n.
 *
 * For R < 0 the peak alone counts, as if R were 0; where the constants name a share of compression μ, (1 − μ R)^m.
 *
 * Not valid near the threshold or near fracture: the law knows neither. Below R of about −1 untested.
 *
 * @param w constants in mm and MPa√m
 * @returns growth per cycle, mm, of two stress intensities, MPa√m
 * @throws Refusal `growth.stress-ratio`, when asked
 * @see [DT737] lecture 17; the rule for R < 0 from memory, the form with μ lecture 17
 */
export function walker(w: WalkerConstants): GrowthLaw {
  const share = w.compression ?? 0;
  return powerLaw('walker', w, (ratio) => Math.exp(w.m * Math.log(ratio < 0 ? 1 - share * ratio : 1 - ratio)));
}
