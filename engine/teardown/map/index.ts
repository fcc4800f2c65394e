export { checkMap } from './check-map.ts';
export {
  costOf,
  hourCents,
  isMadeAnew,
  meanOf,
  NO_TIME,
  type RowWork,
  rowTime,
  type StepCost,
  timesCount,
} from './cost.ts';
export { type Graph, GraphBuilder } from './graph.ts';
export { graphOf, reachableFrom } from './graph-of.ts';
export { indexOf, type MapIndex, splitStep, stepTitle } from './index-of.ts';
export { readFloor, readStructure, readTeardown } from './read.ts';
export { listed } from './refuse.ts';
export { stepsIn } from './require.ts';
export {
  isMet,
  missingOf,
  missingToClose,
  missingToOpen,
  missingToTakeOff,
  needMet,
  type WingState,
} from './state.ts';
export { type Root, rootsOf } from './why.ts';
