import type { GrowthLaw } from '../model.ts';
import type { ClosureConstants } from './constants.ts';
import { openingCoefficients, openingFunction } from './opening.ts';
import { stressRatio } from './stress-ratio.ts';

/**
 * Forman-Newman-de Koning: da/dN = C [(1 − f)/(1 − R) ΔK]^n (1 − ΔKth/ΔK)^p / (1 − Kmax/Kc)^q.
 *
 * ΔKth = ΔK0 (1 − A0) (1 − R)/(1 − f): the threshold stands at one open part of the range, (1 − A0) ΔK0, whatever R.
 * So growth stops at and below it, and ΔKth/ΔK is that part over the open part (1 − f) Kmax.
 *
 * Not valid for cracks below about half a millimetre, which grow below the threshold of long ones (the factor for
 * short cracks needs the length, which a law does not see); nor after overloads.
 *
 * @param k constants in mm and MPa√m
 * @returns growth per cycle, mm; 0 at and below the threshold, Infinity where the peak reaches Kc
 * @throws Refusal `growth.stress-ratio`, when asked
 * @see [DT737] lecture 17 for the rate; threshold and opening function from memory
 */
export function closure(k: ClosureConstants): GrowthLaw {
  const threshold = (1 - openingCoefficients(k.alpha, k.s)[0]) * k.dk0;
  const rate = (kMax: number, kMin: number): number => {
    if (kMax <= 0) return 0;
    if (kMax >= k.kc) return Number.POSITIVE_INFINITY;
    const open = (1 - openingFunction(stressRatio(kMax, kMin), k.alpha, k.s)) * kMax;
    if (open <= threshold || open <= 0) return 0;
    const power = k.n * Math.log(open) + k.p * Math.log1p(-threshold / open) - k.q * Math.log1p(-kMax / k.kc);
    return k.c * Math.exp(power);
  };
  return { law: 'closure', rate, power: null, from: k.from };
}
