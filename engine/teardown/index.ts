/** What has to come off, in what order, how long does it take? */
export * from './document.ts';
export * from './floor-document.ts';
export { type Closure, type LeastOptions, leastSet, maximumClosure, orderOf } from './least/index.ts';
export {
  costOf,
  type Graph,
  graphOf,
  reachableFrom,
  readFloor,
  readStructure,
  readTeardown,
  type StepCost,
  stepTitle,
} from './map/index.ts';
export type * from './model.ts';
export { type BestOrder, bestOrder, type OrderItem, type OrderTerms } from './order/index.ts';
export { planOf } from './plan/index.ts';
export {
  gatesFor,
  gatesOf,
  type Opened,
  practiceGates,
  type Reassembly,
  reassemble,
  reassembly,
  withGates,
} from './passes/index.ts';
export * from './project/index.ts';
export * from './structure-document.ts';
