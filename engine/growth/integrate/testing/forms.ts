import { MM_PER_METRE } from '../../../foundation/convert.ts';
import { Refusal } from '../../../foundation/refusal.ts';
import type { CrackForm, CrackSize, CycleSequence, GrowthLaw } from '../../model.ts';

const FROM = { source: 'Made up for tests', known: 'invented' } as const;
const refused = (why: string): never => {
  throw new Refusal('growth.outside-solution', { given: why, allowed: 'less', remedy: 'Correct it' });
};

/** One tip, K = σ √(πc) β(c), up to the width. */
export function throughForm(beta: (c_mm: number) => number, width_mm = 1e6, thickness_mm = 1): CrackForm {
  const form: CrackForm = {
    shape: 'edge_through',
    tips: 1,
    thickness_mm,
    k: ({ c_mm }) => {
      const why = form.outside({ c_mm });
      return why ? refused(why) : { c: Math.sqrt((Math.PI * c_mm) / MM_PER_METRE) * beta(c_mm), a: null };
    },
    outside: ({ c_mm }) => (c_mm < width_mm ? null : 'longer than the plate is wide'),
    net: ({ c_mm }) => 1 - c_mm / width_mm,
    longest_c_mm: width_mm,
    through: null,
    from: FROM,
  };
  return form;
}

/** Two tips that know nothing of each other: each K = σ √(π its own length) β. Goes on through at the thickness. */
export function ownTips(betaC: number, betaA: number, thickness_mm: number, through: CrackForm | null): CrackForm {
  const form: CrackForm = {
    shape: 'hole_corner',
    tips: 2,
    thickness_mm,
    k: (size: CrackSize) => {
      const why = form.outside(size);
      if (why) return refused(why);
      return {
        c: Math.sqrt((Math.PI * size.c_mm) / MM_PER_METRE) * betaC,
        a: Math.sqrt((Math.PI * size.a_mm!) / MM_PER_METRE) * betaA,
      };
    },
    outside: ({ a_mm }) => (a_mm !== undefined && a_mm <= thickness_mm ? null : 'deeper than the thickness'),
    net: () => 1,
    longest_c_mm: 1e6,
    through,
    from: FROM,
  };
  return form;
}

/** da/dN = C [ΔK (1 − R)^(m − 1)]^n; m = 1 is ΔK itself. For R < 0 the peak alone. */
export function powerLaw(c: number, n: number, m = 1): GrowthLaw {
  const weight = (r: number) => (r >= 0 ? Math.exp(m * Math.log(1 - r)) : 1);
  return {
    law: m === 1 ? 'paris' : 'walker',
    rate: (kMax, kMin) => (kMax > 0 ? c * Math.exp(n * Math.log(weight(kMin / kMax) * kMax)) : 0),
    power: { c, n, weight },
    from: FROM,
  };
}
/** The same growth, not known to be a power: summed cycle by cycle. */
export const hidden = (law: GrowthLaw): GrowthLaw => ({ ...law, power: null });

/** Cycles in order, an hour each. */
export const sequenceOf = (
  cycles: readonly (readonly [max: number, min: number])[],
  hours = cycles.length,
): CycleSequence => ({
  max_MPa: Float64Array.from(cycles, (c) => c[0]),
  min_MPa: Float64Array.from(cycles, (c) => c[1]),
  hours,
});
