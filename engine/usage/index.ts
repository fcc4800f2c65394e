/** How hard has it been flown? */
export { type Basquin, basquinCycles } from './basquin.ts';
export { peaksOnly } from './counting/peaks-only.ts';
export { curvesOf } from './curves.ts';
export * from './document.ts';
export { gustResponse } from './gust.ts';
export { cyclesToFailure, equivalentStress, type LifeCurve } from './life-curve.ts';
export { LIFE_CURVES, lifeCurveOf } from './life-curves.ts';
export { gerber, goodman, morrow, smithWatsonTopper, walker } from './mean-stress.ts';
export type * from './model.ts';
export { effectiveAmplitude, effectiveMean } from './multiaxial.ts';
export { fatigueNotch, NOTCH_LENGTHS_MM } from './notch.ts';
export { readUsage } from './read.ts';
export { sequenceOf } from './sequence.ts';
export { shapeOf, spectrumOf } from './spectrum.ts';
export { TURBULENCE_BY_ALTITUDE } from './turbulence.ts';
