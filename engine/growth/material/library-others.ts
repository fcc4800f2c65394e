import type { ClosureConstants } from './constants.ts';
import { type LibraryMaterial, planeStrain } from './library-model.ts';
import { remembered } from './sources.ts';

/** Materials of which nothing was read. Every figure is from memory, and every page says so. */
const closureForm = (constants: Pick<ClosureConstants, 'c' | 'n' | 'q' | 'dk0' | 'alpha' | 'kc'>, name: string) => ({
  law: 'closure' as const,
  units: 'in, ksi√in' as const,
  p: 0.5,
  s: 0.3,
  ...constants,
  from: remembered(`${name}, closure form; low confidence`),
});

export const LIBRARY_OTHERS: Readonly<Record<string, LibraryMaterial>> = {
  '2014-t6': {
    name: '2014-T6, plane strain toughness',
    yield: { value: 415, from: remembered('2014-T651') },
    toughness: planeStrain(24, remembered('2014-T651, plane strain')),
    laws: { closure: closureForm({ c: 0.35e-7, n: 2.8, q: 1, dk0: 2.7, alpha: 1.5, kc: 22 }, '2014-T6') },
  },
  '6061-t6': {
    name: '6061-T6, plane strain toughness',
    yield: { value: 296, from: remembered('6061-T651') },
    toughness: planeStrain(29, remembered('6061-T651, plane strain')),
    laws: { closure: closureForm({ c: 0.84e-7, n: 2.3, q: 0.5, dk0: 3.5, alpha: 2, kc: 26 }, '6061-T6') },
  },
};
