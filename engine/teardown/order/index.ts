export { type BestOrder, bestOrder, type OrderItem, type OrderTerms } from './best-order.ts';
export { replay } from './replay.ts';
export { type SequentialOrder, sequentialOrder } from './sequential.ts';
export { type WeightedOrder, type WeightedThing, weightedCost, weightedOrder } from './weighted.ts';
