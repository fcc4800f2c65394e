/** How fast the material lets a crack grow, and what it withstands. */
export { type CrackReading, type FittedParis, fitParis } from './fit.ts';
export { lawOf } from './law-of.ts';
export { MATERIALS } from './library.ts';
export type { LibraryMaterial } from './library-model.ts';
export { materialOf } from './material-of.ts';
export { stressRatio } from './stress-ratio.ts';
