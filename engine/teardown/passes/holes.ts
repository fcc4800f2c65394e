import { MM_PER_INCH } from '../../foundation/convert.ts';
import type { TeardownDocument } from '../document.ts';
import type { Join } from '../structure-document.ts';

/** Holes of a row that are not simply final. */
export interface Holes {
  readonly pilot: number;
  readonly elongated: number;
  readonly oversize: number;
}

/** State of the holes as last recorded; where nothing is recorded, as on the map. */
export function holesOf(document: Pick<TeardownDocument, 'recorded'>, join: Join): Holes {
  const { pilot = 0, elongated = 0, oversize = 0 } = join.holes ?? {};
  const last = document.recorded.findLast((r) => r.what === 'holes' && r.join === join.id);
  return last?.what === 'holes'
    ? { pilot, elongated: last.elongated, oversize: last.oversize }
    : { pilot, elongated, oversize };
}

const SIZES_PER_INCH = 32;
/** Diameters of rivets go by 1/32 inch; the next size is one step up. @see AC 43.13-1B paragraph 4-57b, page 4-16 */
export const nextSize = (diameter_mm: number): number => diameter_mm + MM_PER_INCH / SIZES_PER_INCH;
