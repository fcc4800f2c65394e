import type { Provenance } from '../../foundation/provenance.ts';
import type { GrowthLaw } from '../model.ts';
import { stressRatio } from './stress-ratio.ts';

/** A peak that hardly opens the crack under deep compression: R is held here, and growth is next to nothing. */
const LOWEST = -1e6;

/** A law that is a pure power of the weighted peak: C (weight(R) Kmax)^n. A spectrum is then one equivalent cycle. */
export function powerLaw(
  law: 'paris' | 'walker',
  { c, n, from }: { readonly c: number; readonly n: number; readonly from: Provenance },
  weight: (ratio: number) => number,
): GrowthLaw {
  const rate = (kMax: number, kMin: number): number => {
    if (kMax <= 0) return 0;
    return c * Math.exp(n * Math.log(weight(Math.max(LOWEST, stressRatio(kMax, kMin))) * kMax));
  };
  return { law, rate, power: { c, n, weight }, from };
}
