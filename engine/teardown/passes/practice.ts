import type { Provenance } from '../../foundation/provenance.ts';
import type { ThreePoint } from '../structure-document.ts';

/**
 * Works that the passes rest on, and times where a map says nothing. The times are assumed: made up from memory, said
 * so beside every step that uses them.
 */
export const TRADE: Provenance = { source: 'common practice of the trade', known: 'memory' };
export const ASSUMED: Provenance = { source: 'common practice of the trade; time assumed', known: 'memory' };
export const EDGE_DISTANCE: Provenance = {
  source: 'AC 43.13-1B',
  place: 'paragraph 4-57c(1): not less than twice the diameter from the edge',
  known: 'read',
};
export const NEXT_SIZE: Provenance = {
  source: 'AC 43.13-1B',
  place: 'paragraph 4-57b, page 4-16: an enlarged hole is drilled for the next larger size',
  known: 'read',
};

const t = (low_min: number, likely_min: number, high_min: number): ThreePoint => ({ low_min, likely_min, high_min });
export const MEASURE_IN_JIG = t(45, 90, 180);
/** Per new part: every row of old holes laid over and measured. */
export const MEASURE_EDGES = t(20, 40, 90);
/** Per row, besides the parts. */
export const SPREAD_SEALANT = t(10, 15, 30);
export const CLEAN_EACH_JOIN = t(4, 8, 15);
export const CONVERT = t(30, 45, 90);
export const PRIME = t(30, 45, 90);
export const DRY_H = 24;
