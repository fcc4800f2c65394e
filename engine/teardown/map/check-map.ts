import type { Floor } from '../floor-document.ts';
import type { MapFinding } from '../model.ts';
import type { StructureMap } from '../structure-document.ts';
import { askedTwice } from './check-asked-twice.ts';
import { neverReached } from './check-reach.ts';
import { sidesDiffer } from './check-sides.ts';
import { cannotLift, doNotTouch } from './check-sound.ts';
import { unused } from './check-unused.ts';

/**
 * What is wrong with a map, or worth knowing of it. A map with findings is still read.
 *
 * Parts that can never come off, with the first things missing on every way; things that wait for each other in a circle;
 * what stands alone (a part without a row, a row that frees nothing, a support nobody needs, a look nothing exposes);
 * what is asked twice; rows whose layers do not touch; parts too heavy for the hands at them; and, as information,
 * where left and right differ.
 */
export const checkMap = (map: StructureMap, floor?: Floor): MapFinding[] => [
  ...neverReached(map),
  ...unused(map),
  ...askedTwice(map),
  ...doNotTouch(map),
  ...cannotLift(map, floor),
  ...sidesDiffer(map),
];
