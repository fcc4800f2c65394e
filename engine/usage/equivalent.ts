import { type Bounds, bounds, exactly, hull, scaleBounds } from '../foundation/bounds.ts';
import { addForms, type LinearForm, linearExtremes, type Region, variableForm } from '../foundation/region/index.ts';
import type { UsageDocument } from './document.ts';
import type { UsageAnswer } from './model.ts';

/** Damage of an hour of each use in hours of the reference use. */
export type RatioTable = readonly { readonly use: string; readonly ratio: number }[];
type ByUse = NonNullable<UsageAnswer['equivalent']>['byUse'];

/**
 * Ratio of a use; one whose loads the document does not hold counts as the hardest known one, and says so.
 */
export function ratioFor(ratios: RatioTable, use: string): { ratio: number; assumed: boolean } {
  const known = ratios.find((r) => r.use === use);
  return known
    ? { ratio: known.ratio, assumed: false }
    : { ratio: Math.max(...ratios.map((r) => r.ratio)), assumed: true };
}

/** The tables of ratios that were tried, where they hold every use. */
export const wholeTables = (sensitivity: UsageAnswer['sensitivity']): RatioTable[] =>
  sensitivity.flatMap(({ ratios }) => {
    const table = ratios.flatMap(({ use, ratio }) => (ratio === null ? [] : [{ use, ratio }]));
    return table.length === ratios.length ? [table] : [];
  });

/** Hours to a millionth: the last digits of the solver are no hours. */
const tidy = (h: number): number => Math.round(h * 1e6) / 1e6;
/** Least and greatest of a linear figure, hours. @throws Refusal `region.impossible`, `region.unsolved` */
export function extremesOf(form: LinearForm, region: Region): Bounds {
  if (form.terms.length === 0) return exactly(tidy(form.constant));
  const e = linearExtremes(form, region);
  const [low, high] = [tidy(e.low.value), tidy(e.high.value)];
  return bounds(Math.min(low, high), high);
}
export const weighted = (forms: readonly LinearForm[], ratios: readonly number[]): LinearForm =>
  addForms(
    ...forms.map((f, i) => ({
      constant: f.constant * ratios[i]!,
      terms: f.terms.map(([v, c]) => [v, c * ratios[i]!] as const),
    })),
  );

/** Hours by use as a region: each within its own bounds, their sum within the total's. */
function regionOf(hours: NonNullable<UsageDocument['hours']>, uses: readonly string[]) {
  const { by_use, total } = hours;
  const rows = by_use.length || !total ? by_use : uses.map((use) => ({ use, low_h: 0, high_h: total.high_h }));
  const region: Region = {
    variables: rows.map((r) => ({ name: `hours ${r.use}`, low: r.low_h, high: r.high_h, integer: false })),
    constraints: total
      ? [
          {
            name: `hours.total, ${total.low_h} to ${total.high_h} h, as the sum of ${rows.map((r) => `${r.use} ${r.low_h} to ${r.high_h} h`).join(', ')}`,
            terms: rows.map((_, i) => [i, 1] as const),
            low: total.low_h,
            high: total.high_h,
          },
        ]
      : [],
  };
  return { uses: rows.map((r) => r.use), forms: rows.map((_, i) => variableForm(i)), region };
}

/**
 * Hours flown in several uses as hours of the reference use, over every division that the bounds allow together.
 *
 * Σ ratio · hours at its least and greatest, the hours of each use within their own bounds and their sum within the
 * total's: a linear programme, exact. Where a total stands alone, its hours may be of any use whose loads are known.
 *
 * Not valid as a life used up where the ratios are power laws.
 *
 * @param tried ratios under other assumptions
 * @param safeLife_h safe life of the reference use, hours; null where none is given
 * @throws Refusal `region.impossible` where total and uses contradict each other
 */
export function equivalentHours(
  document: UsageDocument,
  ratios: RatioTable,
  safeLife_h: number | null,
  tried: readonly RatioTable[] = [],
): UsageAnswer['equivalent'] {
  if (!document.hours) return null;
  const { uses, forms, region } = regionOf(
    document.hours,
    ratios.map((r) => r.use),
  );
  if (uses.length === 0) return null;
  const factors = uses.map((use) => ratioFor(ratios, use));
  const byUse: ByUse = uses.map((use, i) => ({ use, flown_h: extremesOf(forms[i]!, region), ...factors[i]! }));
  const under = (table: RatioTable) =>
    extremesOf(
      weighted(
        forms,
        uses.map((use) => ratioFor(table, use).ratio),
      ),
      region,
    );
  const equivalent_h = under(ratios);
  return {
    flown_h: extremesOf(addForms(...forms), region),
    equivalent_h,
    across_h: tried.map(under).reduce(hull, equivalent_h),
    byUse,
    used: safeLife_h === null ? null : scaleBounds(equivalent_h, 1 / safeLife_h),
  };
}
