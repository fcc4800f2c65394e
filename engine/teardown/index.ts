/** What has to come off, in what order, how long does it take? */
export { answerOf, answerTeardown, type TeardownOptions } from './answer/index.ts';
export * from './document.ts';
export * from './floor-document.ts';
export { type Closure, type LeastOptions, leastSet, maximumClosure, orderOf } from './least/index.ts';
export {
  checkMap,
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
export {
  type BestOrder,
  bestOrder,
  type OrderItem,
  type OrderTerms,
  replay,
  type SequentialOrder,
  sequentialOrder,
  type WeightedOrder,
  type WeightedThing,
  weightedOrder,
} from './order/index.ts';
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
export { planOf } from './plan/index.ts';
export * from './project/index.ts';
export { type Quoted, quoted, quoteOf, replacedParts, shoppingOf } from './quote/index.ts';
export {
  type FinishPart,
  type FinishTask,
  finishFrom,
  finishPart,
  type JobToDo,
  leastEnd,
  type PreparedFinish,
  planFrom,
  plannedOrder,
  prepareFinish,
  type ScheduleQuestion,
  scheduleOf,
  scheduleQuestion,
  standsInJig,
  type Taken,
  type Turn,
  takenBy,
  together,
} from './schedule/index.ts';
export * from './structure-document.ts';
