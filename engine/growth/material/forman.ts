import type { GrowthLaw } from '../model.ts';
import type { FormanConstants } from './constants.ts';
import { stressRatio } from './stress-ratio.ts';

/**
 * Forman: da/dN = C ΔK^n / [(1 − R) Kc − ΔK]. Rises without end as the peak comes near Kc.
 *
 * For R < 0 the peak alone counts, as if R were 0.
 *
 * Not valid near the threshold. Kc here is a constant of the fit; it is not the toughness that ends the growth.
 *
 * @param f constants in mm and MPa√m
 * @returns growth per cycle, mm; Infinity where the peak reaches Kc
 * @throws Refusal `growth.stress-ratio`, when asked
 * @see [DT737] lecture 17; the rule for R < 0 from memory
 */
export function forman(f: FormanConstants): GrowthLaw {
  const rate = (kMax: number, kMin: number): number => {
    if (kMax <= 0) return 0;
    if (kMax >= f.kc) return Number.POSITIVE_INFINITY;
    const open = Math.max(0, stressRatio(kMax, kMin));
    const range = (1 - open) * kMax;
    return (f.c * Math.exp(f.n * Math.log(range))) / ((1 - open) * (f.kc - kMax));
  };
  return { law: 'forman', rate, power: null, from: f.from };
}
