import { MM_PER_INCH, MM_PER_METRE, MPA_SQRT_M_PER_KSI_SQRT_IN } from '../../foundation/convert.ts';
import type { Law } from '../document.ts';
import { positive } from '../require.ts';

/** What one unit of length and of stress intensity of a source is in mm and MPa√m. */
const UNITS: Readonly<Record<Law['units'], { readonly length: number; readonly k: number }>> = {
  'mm, MPa√m': { length: 1, k: 1 },
  'm, MPa√m': { length: MM_PER_METRE, k: 1 },
  'in, ksi√in': { length: MM_PER_INCH, k: MPA_SQRT_M_PER_KSI_SQRT_IN },
};

/**
 * A growth law in mm and MPa√m, whatever units its source printed.
 *
 * C carries the length of the rate over K to the power of the rest of the law: K^n for Paris, Walker and the closure
 * form, K^(n − 1) for Forman, whose denominator is a K as well. Taking n there would be off by a tenth.
 *
 * @param law constants as printed, with their units
 * @returns the same law, `units: 'mm, MPa√m'`
 * @throws Refusal `growth.not-positive` for a toughness or a constant that is not above zero
 * @see [DT737] lecture 17, equations; the conversion follows from them
 */
export function inEngineConstants<L extends Law>(law: L): L {
  const { length, k } = UNITS[law.units];
  const powers = law.law === 'forman' ? law.n - 1 : law.n;
  const c = positive(law.c, 'growth constant', law.units) * length * Math.exp(-powers * Math.log(k));
  const kc = 'kc' in law ? { kc: positive(law.kc, 'toughness', law.units) * k } : {};
  const dk0 = 'dk0' in law ? { dk0: law.dk0 * k } : {};
  return { ...law, ...kc, ...dk0, c, units: 'mm, MPa√m' };
}
