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
  if (loading.as !== 'usage') {
    if (flown_total) return { low: flown_total.low_h, high: flown_total.high_h };
    return (flown ?? []).map((h) => ({ low: h.low_h, high: h.high_h })).reduce(addBounds, exactly(0));
  }
  const mix = loading.mix.reduce((t, m) => t + m.share * (byUse.find((u) => u.use === m.use)?.ratio ?? 0), 0);
  if (!(mix > 0)) return null;
  const ratios = byUse.map(({ use, ratio }) => ({ use, ratio: ratio / mix }));
  const hours = { by_use: flown ?? [], ...(flown_total ? { total: flown_total } : {}) };
  return equivalentHours({ ...loading.usage, hours }, ratios, null)?.equivalent_h ?? null;
}

/** Left to the first look, low end the worse; never more than a directive in force leaves. */
export function leftToFirst(
  programme: Programme | null,
  flown: Bounds | null,
  limits: readonly { readonly left_h?: number | undefined }[],
): Bounds | null {
  if (!programme || !flown) return null;
  const most = Math.min(...limits.map((l) => l.left_h ?? Number.POSITIVE_INFINITY), Number.POSITIVE_INFINITY);
  return { low: Math.min(programme.first_h - flown.high, most), high: Math.min(programme.first_h - flown.low, most) };
}
