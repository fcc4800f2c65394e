/** How fast would a crack grow, how often must we look? */
export { type AnswerOptions, answerGrowth, readGrowth } from './answer/index.ts';
export {
  type ChanceTask,
  chanceFrom,
  chanceTask,
  factorsOf,
  type Lives,
  livesOf,
  missOf,
  prepareChance,
  withChance,
} from './chance/index.ts';
export * from './document.ts';
export {
  type CycleKernel,
  type CycleOptions,
  type GrowOptions,
  grow,
  growByBlocks,
  growCycleByCycle,
  type HourlyCycle,
  type HourlyGrowth,
  hourlyGrowth,
  type KernelInput,
  type KernelState,
  type Until,
} from './integrate/index.ts';
export {
  type EffectiveCycle,
  effectiveCycle,
  type FeltCycle,
  type Overload,
  openingLevel,
} from './interaction/index.ts';
export {
  type CrackReading,
  type FittedParis,
  fitParis,
  type LibraryMaterial,
  lawOf,
  MATERIALS,
  materialOf,
  stressRatio,
} from './material/index.ts';
export type * from './model.ts';
export {
  carried,
  correctedK,
  criticalAlong,
  feddersen,
  fracture,
  longestAfterProof,
  netSectionYield,
  plasticZone,
  residualAt,
  residualOf,
  type Strength,
} from './residual/index.ts';
export { crackForm } from './stress-intensity/index.ts';
