import { hourlyGrowth } from '../../integrate/hourly.ts';
import { ownTips, powerLaw, throughForm } from '../../integrate/testing/forms.ts';
import type { CrackForm, GrowthLaw } from '../../model.ts';
import type { LifeProblem, PreparedChance } from '../problem.ts';
import type { Chance } from '../scatter.ts';

export const FROM = { source: 'Made up for tests', known: 'invented' } as const;
export const TOUGHNESS = 60;
export const LIMIT_MPa = 200;
const CYCLES = [
  { max_MPa: 100, min_MPa: 10, perHour: 20 },
  { max_MPa: 70, min_MPa: -20, perHour: 300 },
];

/** A place that breaks at K = toughness under the limit stress; no yielding. */
export function problem(form: CrackForm, law: GrowthLaw, power: number | null = law.power?.n ?? null): LifeProblem {
  const perHour = hourlyGrowth(law, CYCLES);
  return {
    form,
    first: form.tips === 2 ? { c_mm: 1.5, a_mm: 1 } : { c_mm: 1.27 },
    perHour,
    perHourAtLn: (lnX) => perHour(Math.exp(lnX)),
    power,
    strengthOf: (toughness) => (size) => {
      const k = (size.a_mm === undefined ? (form.through ?? form) : form).k(size);
      return (toughness * TOUGHNESS) / Math.max(k.c, k.a ?? 0);
    },
    limit_MPa: LIMIT_MPa,
  };
}
export const wide = throughForm(() => 1);
export const finite = throughForm((c) => 1 / Math.sqrt(Math.cos((Math.PI * c) / 160)), 79);
export const corner = ownTips(1, 1.1, 4, finite);
export const walker = powerLaw(1e-10, 3.59, 0.68);

/** Growth that stops below a threshold and runs away at a toughness: no power of K. */
export function bent(threshold: number, kc: number): GrowthLaw {
  const under = powerLaw(1e-10, 3.1, 0.6);
  return {
    ...under,
    law: 'closure',
    power: null,
    rate: (max, min) => {
      const range = max - Math.max(min, 0);
      if (max >= kc) return Number.POSITIVE_INFINITY;
      return range <= threshold ? 0 : (under.rate(max, min) * (1 - threshold / range)) / (1 - max / kc);
    },
  };
}

export const chanceOf = (over: Partial<Chance> = {}): Chance => ({
  seed: 7,
  lives: 400,
  growth_rate: { sd_ln: 0.2, from: FROM },
  stress: { sd_ln: 0.08, from: FROM },
  toughness: { sd_ln: 0.1, from: FROM },
  detection: { a50_mm: 4, a90_mm: 9, most: 0.97, of: 'c', from: FROM },
  ...over,
});
export const prepared = (of: LifeProblem, over: Partial<PreparedChance> = {}): PreparedChance => ({
  problem: of,
  chance: chanceOf(),
  programme: { first_h: 50_000, repeat_h: 20_000 },
  sizes_mm: Float64Array.from({ length: 12 }, (_, i) => of.first.c_mm * Math.exp(i * 0.25)),
  ...over,
});
