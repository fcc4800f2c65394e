import type { CrackForm, CrackSize } from '../model.ts';
import { positive } from '../require.ts';
import { plasticZone } from './plastic-zone.ts';

/** What the material withstands at the thickness at hand. */
export interface Strength {
  readonly yield_MPa: number;
  readonly toughness_MPa_sqrt_m: number;
  /** Without the yielded zone taken for crack, to compare with figures made so. */
  readonly elastic?: boolean;
}

/**
 * Remote stress at which the worst tip reaches the toughness.
 *
 * A through crack is taken longer by its yielded zone at fracture, rp of K = Kc, but never by more than half of the
 * ligament: a zone that spans it is net section yield. Where K falls as the crack grows, as it may under a pin, it is
 * taken as it is, which is the worse. Part-through cracks are taken as they are.
 *
 * Not valid as strength on its own: short cracks yield first, so the lowest of this, the tangent and net section governs.
 *
 * @param size of the crack, mm
 * @param strength yield stress, MPa, and toughness, MPa√m, at this thickness
 * @returns remote stress, MPa
 * @throws Refusal `growth.not-positive`; `growth.outside-solution` for a size outside the form
 * @see [DT737] lectures 6 and 8; the bound by half of the ligament is of this program
 */
export function fracture(form: CrackForm, size: CrackSize, strength: Strength): number {
  const toughness = positive(strength.toughness_MPa_sqrt_m, 'toughness', 'MPa√m');
  const k = form.k(size);
  const worst = Math.max(k.c, k.a ?? 0);
  if (strength.elastic || form.tips === 2) return toughness / worst;
  return toughness / Math.max(worst, form.k(grown(form, size, strength)).c);
}

function grown(form: CrackForm, { c_mm }: CrackSize, strength: Strength): CrackSize {
  const { thickness_mm, longest_c_mm } = form;
  const zone = plasticZone(strength.toughness_MPa_sqrt_m, strength.yield_MPa, { thickness_mm }).radius_mm;
  return { c_mm: c_mm + Math.min(zone, Math.max(0, longest_c_mm - c_mm) / 2) };
}
