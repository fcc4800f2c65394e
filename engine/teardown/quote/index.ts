/** With which fasteners and parts, for how many hours and how much money? */
export { findingRuns, shareOf } from './contingency.ts';
export type { FindingCost } from './model.ts';
export { type Quoted, quoted, quoteOf } from './quote.ts';
export { replacedParts } from './replaced.ts';
export { codeWithLength, nextCode, RIVET_LENGTH, rivetLength } from './rivet-length.ts';
export { shoppingOf } from './shopping.ts';
export { pertMoments, pertQuantile } from './three-point.ts';
