import type { GrowthLaw } from '../model.ts';
import type { ParisConstants } from './constants.ts';
import { powerLaw } from './power-law.ts';

/**
 * Paris: da/dN = C ΔK^n, with ΔK the part of the range above zero.
 *
 * Not valid at another stress ratio than the one C was read at: the law has no say on R. Not near threshold or fracture.
 *
 * @param p constants in mm and MPa√m
 * @returns growth per cycle, mm, of two stress intensities, MPa√m
 * @throws Refusal `growth.stress-ratio`, when asked
 * @see [DT737] lecture 17; that compression adds nothing: ASTM E647 (from memory)
 */
export const paris = (p: ParisConstants): GrowthLaw => powerLaw('paris', p, (ratio) => (ratio < 0 ? 1 : 1 - ratio));
