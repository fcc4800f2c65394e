import type { Provenance } from '../../foundation/provenance.ts';
import type { GrowthLaw } from '../model.ts';
import { stressRatio } from './stress-ratio.ts';

/** R is held here: a peak that hardly opens the crack under deep compression grows next to nothing, never not a number. */
const LOWEST = -1e6;

/** A law that is a pure power of the weighted peak: C (weight(R) Kmax)^n. A spectrum is then one equivalent cycle. */
export function powerLaw(
  law: 'paris' | 'walker',
  { c, n, from }: { readonly c: number; readonly n: number; readonly from: Provenance },
  weightOf: (ratio: number) => number,
): GrowthLaw {
  const weight = (ratio: number) => weightOf(Math.max(LOWEST, ratio));
  const rate = (kMax: number, kMin: number): number => {
    if (kMax <= 0) return 0;
    return c * Math.exp(n * Math.log(weight(stressRatio(kMax, kMin)) * kMax));
  };
  return { law, rate, power: { c, n, weight }, from };
}
