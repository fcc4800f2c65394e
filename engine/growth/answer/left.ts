import { addBounds, type Bounds, exactly } from '../../foundation/bounds.ts';
import { equivalentHours } from '../../usage/index.ts';
import type { GrowthDocument } from '../document.ts';
import type { GrowthAnswer, Programme } from '../model.ts';

/**
 * Hours flown so far as hours of the mix to come: an hour of a use counts as its growth over that of the mix. A use whose
 * loads are not known counts as the hardest known one.
 * @returns null where none were given
 */
export function flownAsMix(d: GrowthDocument, byUse: GrowthAnswer['byUse']): Bounds | null {
  const { flown, flown_total, loading } = d;
  if (!flown && !flown_total) return null;
  if (loading.as !== 'usage') return flownAsRead(d);
  const mix = loading.mix.reduce((t, m) => t + m.share * (byUse.find((u) => u.use === m.use)?.ratio ?? 0), 0);
  if (!(mix > 0)) return null;
  const ratios = byUse.map(({ use, ratio }) => ({ use, ratio: ratio / mix }));
  const hours = { by_use: flown ?? [], ...(flown_total ? { total: flown_total } : {}) };
  return equivalentHours({ ...loading.usage, hours }, ratios, null)?.equivalent_h ?? null;
}

/** Hours as they stand in the record; null where none were given. */
export function flownAsRead({ flown, flown_total }: GrowthDocument): Bounds | null {
  if (flown_total) return { low: flown_total.low_h, high: flown_total.high_h };
  return flown ? flown.map((h) => ({ low: h.low_h, high: h.high_h })).reduce(addBounds, exactly(0)) : null;
}

/**
 * Left to the first look, low end the worse; never more than a directive in force leaves. The estimate's own look is
 * counted in hours of the mix to come, a directive's in hours as they stand in the record.
 */
export function leftToFirst(
  programme: Programme | null,
  { asMix, asRead }: { readonly asMix: Bounds | null; readonly asRead: Bounds | null },
  limits: readonly { readonly left_h?: number | undefined; readonly first_at_h?: number | undefined }[],
): Bounds | null {
  if (!programme || !asMix || !asRead) return null;
  const leaves = (flown: number) =>
    limits.map((l) => l.left_h ?? (l.first_at_h === undefined ? Number.POSITIVE_INFINITY : l.first_at_h - flown));
  const { first_h } = programme.computed;
  return {
    low: Math.min(first_h - asMix.high, ...leaves(asRead.high)),
    high: Math.min(first_h - asMix.low, ...leaves(asRead.low)),
  };
}
