import { Refusal } from '../../foundation/refusal.ts';
import { placed } from '../answer/placed.ts';
import { problemOf } from '../answer/problem.ts';
import type { GrowthDocument } from '../document.ts';
import { hourlyGrowth } from '../integrate/hourly.ts';
import type { GrowthAnswer } from '../model.ts';
import { tabled } from './hour-table.ts';
import { hourlyCycles } from './hourly-cycles.ts';
import type { PreparedChance } from './problem.ts';
import { strengthAtAny } from './strength.ts';

const SIZES = 32;
/** The fan goes at least this far beyond the first flaw, where no critical size is known. */
const LEAST_SPAN = 2;

/** A chance question as it goes to a thread: the document, and what the one middle life answered. */
export interface ChanceTask {
  readonly document: GrowthDocument;
  readonly programme: PreparedChance['programme'];
  readonly critical_c_mm: number | null;
}
export const chanceTask = (
  document: GrowthDocument,
  { programme, critical }: Pick<GrowthAnswer, 'programme' | 'critical'>,
): ChanceTask => ({
  document,
  programme: programme && { first_h: programme.first_h, repeat_h: programme.repeat_h },
  critical_c_mm: critical?.size.c_mm ?? null,
});

/**
 * Makes once what all lives share: form, growth an hour, strength against size.
 *
 * Load interaction is left out, also where the document asks for it: retardation never shortens a life, so that the
 * chances rest on the shorter ones. A toughness that is part of the growth law keeps its value; the scatter of toughness
 * moves the end of a life, not the growth before it.
 * @throws Refusal `growth.chance-incomplete`, and what form, material and loading refuse
 */
export function prepareChance({ document, programme, critical_c_mm }: ChanceTask): PreparedChance {
  const { chance, limit_stress, loading } = document;
  if (!chance) throw incomplete('no scatter', 'Add the scatter of growth rate, stress and toughness with their source');
  if (!limit_stress) throw incomplete('no stress at limit load', 'Add the stress at limit load with its source');
  if (loading.as === 'usage' && loading.usage.place.stress.as === 'unknown')
    throw incomplete('no stress per g', 'Add the stress per g of this place with its source');
  const whole = problemOf(document, hourlyCycles(document));
  const { form, size: first } = placed(whole.form, whole.first);
  const perHour = hourlyGrowth(whole.law, whole.cycles);
  const span = Math.max(LEAST_SPAN * first.c_mm, critical_c_mm ?? 0) / first.c_mm;
  const longest = Math.min(span, form.longest_c_mm / first.c_mm);
  return {
    problem: {
      form,
      first,
      ...shared(whole.law.power ? null : tabled(perHour), perHour),
      power: whole.law.power?.n ?? null,
      strengthOf: strengthAtAny(form, whole.strength),
      limit_MPa: whole.limit_MPa,
    },
    chance,
    programme,
    sizes_mm: Float64Array.from(
      { length: SIZES },
      (_, i) => first.c_mm * Math.exp((i / (SIZES - 1)) * Math.log(longest)),
    ),
  };
}

/** Growth an hour from x and from ln x, both from the table where there is one. */
const shared = (table: ((lnX: number) => number) | null, whole: (x: number) => number) => ({
  perHour: table ? (x: number) => (x > 0 ? table(Math.log(x)) : 0) : whole,
  perHourAtLn: table ?? ((lnX: number) => whole(Math.exp(lnX))),
});

const incomplete = (given: string, remedy: string): Refusal =>
  new Refusal('growth.chance-incomplete', {
    given: `a question about chance with ${given}`,
    allowed: 'scatter of growth rate, stress and toughness, a stress with a source, and the stress at limit load',
    remedy,
  });
