export {
  type Amounts,
  amountsAt,
  type Before,
  beforeCut,
  isLot,
  refuseNarrow,
  spanHours_s,
  spanLandings,
} from './at.ts';
export type { Done, Summed, SummedThing, Sums } from './model.ts';
export { READING, SPAN } from './model.ts';
export { NotPlain } from './not-plain.ts';
export { type ReadTotal, readingsOfSums } from './readings.ts';
export { sumsOf } from './sums.ts';
