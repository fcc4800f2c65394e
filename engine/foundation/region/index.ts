export { whyImpossible } from './explain.ts';
export { endIfPossible, isFeasible, linearEnd, linearExtremes, type Outer } from './extremes.ts';
export * from './forms.ts';
export * from './model.ts';
export { sampleRegion } from './sample.ts';
