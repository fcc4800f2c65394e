import { type Bounds, bounds, exactly, hull } from '../../foundation/bounds.ts';
import { shapeOf, type UsageDocument } from '../../usage/index.ts';
import type { GrowthDocument } from '../document.ts';
import type { HourlyCycle } from '../integrate/index.ts';
import type { GrowthAnswer, GrowthLaw } from '../model.ts';
import { hoursOf, lifeByHours, quickGrowth } from './lives.ts';
import { cyclesOfUse, problemOf } from './problem.ts';
import { limitsOfUse, programmeOf, ruleOf } from './rule.ts';

type Rows = { readonly reference: string | null; readonly byUse: GrowthAnswer['byUse'] };
const NONE: Rows = { reference: null, byUse: [] };

/** Exponents of power laws by which uses are compared beside the law's own. */
const EXPONENTS = [2.5, 3, 3.5, 4, 4.5] as const;
const MIDDLE = 3.5;
type Power = { readonly n: number; weight(ratio: number): number };
/** The range alone: (1 − R) of the peak. */
const range = (n: number): Power => ({ n, weight: (ratio) => 1 - Math.max(0, ratio) });

/** What an hour of these cycles does to a crack, up to a constant: Σ times (weight(R) Smax)^n, the equivalent cycle. */
export const harm = (cycles: readonly HourlyCycle[], { n, weight }: Power): number =>
  cycles.reduce(
    (t, s) =>
      s.max_MPa > 0 && s.perHour > 0
        ? t + s.perHour * Math.exp(n * Math.log(weight(s.min_MPa / s.max_MPa) * s.max_MPa))
        : t,
    0,
  );

/** Ratios of uses by the equivalent cycle, and how far they move with the exponent and with the weight of R. */
function ratiosByPower(law: GrowthLaw, cycles: ReadonlyMap<string, readonly HourlyCycle[]>, asked: string) {
  const own = law.power ?? range(MIDDLE);
  const tried = [own, ...EXPONENTS.flatMap((n) => [{ ...own, n, weight: own.weight }, range(n)])];
  const reference = [...cycles.keys()]
    .sort((a, b) => Number(b === asked) - Number(a === asked))
    .find((use) => harm(cycles.get(use)!, own) > 0);
  if (reference === undefined) return null;
  const ratio = (use: string, by: Power) => {
    const other = harm(cycles.get(reference)!, by);
    return other > 0 ? harm(cycles.get(use)!, by) / other : null;
  };
  return {
    reference,
    of: (use: string): { ratio: number; across: Bounds } => {
      const value = ratio(use, own)!;
      const all = tried.map((by) => ratio(use, by)).filter((r) => r !== null);
      return { ratio: value, across: all.map(exactly).reduce(hull, exactly(value)) };
    },
  };
}

/** Uses compared by their loads alone: no stress is known, so no hours. */
export function ratiosOfUses(usage: UsageDocument, law: GrowthLaw): Rows {
  const cycles = new Map(usage.uses.map((u) => [u.use, shapeOf(usage, u.use).bands] as const));
  const ratios = ratiosByPower(law, cycles, usage.reference_use);
  if (!ratios) return NONE;
  const byUse = usage.uses.map(({ use, title }) => {
    const { ratio, across } = ratios.of(use);
    return {
      use,
      title,
      ratio,
      ratioAcross: across,
      firstToCritical_h: null,
      detectableToCritical_h: null,
      programme: null,
    };
  });
  return { reference: ratios.reference, byUse };
}

/**
 * The same crack where all hours are of one use.
 *
 * Under a pure power of K the ratio of two uses is that of their equivalent cycles; under another law that of their
 * hours from the first flaw to critical.
 */
export function livesByUse(d: GrowthDocument): Rows {
  if (d.loading.as !== 'usage') return NONE;
  const { usage } = d.loading;
  const cycles = new Map(usage.uses.map((u) => [u.use, cyclesOfUse(usage, u.use)] as const));
  const rule = ruleOf(d);
  const lives = new Map(
    [...cycles].map(([use, own]) => {
      const problem = problemOf(d, own);
      const life = own.some((s) => s.perHour > 0) ? lifeByHours(problem, quickGrowth(problem)) : null;
      return [
        use,
        {
          law: problem.law,
          first: life && hoursOf(life(problem.first, 0)),
          detectable: life && hoursOf(life(problem.detectable, 0)),
        },
      ] as const;
    }),
  );
  const law = [...lives.values()][0]!.law;
  const ratios = ratiosByPower(law, cycles, usage.reference_use);
  if (!ratios) return NONE;
  const { reference } = ratios;
  const byUse = usage.uses.map(({ use, title }) => {
    const { first, detectable } = lives.get(use)!;
    const power = ratios.of(use);
    const other = lives.get(reference)!.first;
    const ratio = law.power
      ? power.ratio
      : first === null
        ? 0
        : other !== null && first > 0
          ? other / first
          : power.ratio;
    return {
      use,
      title,
      ratio,
      ratioAcross: bounds(Math.min(ratio, power.across.low), Math.max(ratio, power.across.high)),
      firstToCritical_h: first,
      detectableToCritical_h: detectable,
      programme: programmeOf(rule, { first, detectable }, limitsOfUse(d.in_force ?? [], use)),
    };
  });
  return { reference, byUse };
}
