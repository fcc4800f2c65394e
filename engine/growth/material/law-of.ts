import type { GrowthLaw } from '../model.ts';
import { closure } from './closure.ts';
import { inEngineConstants } from './constant-units.ts';
import type { LawConstants } from './constants.ts';
import { forman } from './forman.ts';
import { namedConstants } from './named-constants.ts';
import { paris } from './paris.ts';
import { walker } from './walker.ts';

/**
 * The growth law of a set of constants, in mm and MPa√m.
 *
 * Every law gives 0 where the peak does not open the crack, and Infinity where the peak reaches the law's own toughness.
 *
 * Not valid beyond what the law itself says: see each.
 *
 * @param constants as printed, with their units
 * @returns growth per cycle, mm, of two stress intensities, MPa√m
 * @throws Refusal `growth.not-positive`; `growth.stress-ratio` when asked
 * @see [DT737] lecture 17
 */
export function lawOf(constants: LawConstants): GrowthLaw {
  const made = inEngineConstants(constants);
  return { ...byName(made), constants: namedConstants(made) };
}

function byName(made: LawConstants): GrowthLaw {
  switch (made.law) {
    case 'paris':
      return paris(made);
    case 'walker':
      return walker(made);
    case 'forman':
      return forman(made);
    case 'closure':
      return closure(made);
  }
}
