import { weakestKnown } from '../../foundation/provenance.ts';
import { Refusal } from '../../foundation/refusal.ts';
import type { GrowthDocument, Law } from '../document.ts';
import type { Material } from '../model.ts';
import { positive } from '../require.ts';
import type { LawConstants } from './constants.ts';
import { lawOf } from './law-of.ts';
import { MATERIALS } from './library.ts';
import type { LibraryMaterial } from './library-model.ts';
import { toughnessAt } from './toughness.ts';

/**
 * The material of a growth document: from the library by name and law, or one's own.
 *
 * Not valid for another alloy, temper or grain direction than its name says.
 *
 * @param given `material` of the document
 * @returns law, yield stress (MPa), toughness against thickness (MPa√m), and how well the least known of them is known
 * @throws Refusal `growth.material-unknown`, `growth.not-positive`; `growth.thickness-outside` when asked for toughness
 * @see the provenance of each constant
 */
export function materialOf(given: GrowthDocument['material']): Material {
  if (!('library' in given)) return made(given.name, given.law, given.yield_MPa, given.toughness);
  const found = Object.hasOwn(MATERIALS, given.library) ? MATERIALS[given.library]! : unknown(given.library);
  const law = found.laws[given.law] ?? unknownLaw(given.library, found, given.law);
  const caution = found.cautions?.[given.law];
  return made(found.name, law, found.yield, found.toughness, caution ? [caution] : []);
}

function made(
  name: string,
  constants: LawConstants,
  yield_: LibraryMaterial['yield'],
  points: LibraryMaterial['toughness'],
  cautions: readonly string[] = [],
): Material {
  const law = lawOf(constants);
  const yield_MPa = positive(yield_.value, 'yield stress', 'MPa');
  return {
    name,
    law,
    yield_MPa,
    yieldFrom: yield_.from,
    toughnessAt: (thickness_mm) => toughnessAt(points, yield_MPa, thickness_mm),
    known: weakestKnown([law.from.known, yield_.from.known, ...points.map((p) => p.from.known)]),
    cautions,
  };
}

function unknown(name: string): never {
  throw new Refusal('growth.material-unknown', {
    given: `material "${name}"`,
    allowed: `one of ${Object.keys(MATERIALS).join(', ')}`,
    remedy: 'Choose one of these, or give the constants of your own material with their source',
  });
}

function unknownLaw(name: string, { laws }: LibraryMaterial, law: Law['law']): never {
  throw new Refusal('growth.material-unknown', {
    given: `the ${law} law of "${name}"`,
    allowed: `a law whose constants the library holds for it: ${Object.keys(laws).join(', ')}`,
    remedy: 'Choose one of these, or give the constants with their source',
  });
}
