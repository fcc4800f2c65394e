export { bestOrder } from './best-order.ts';
export type { BestOrder, OrderItem, OrderTerms } from './items.ts';
export { replay } from './replay.ts';
export { type SequentialOrder, sequentialOrder } from './sequential.ts';
export { type WeightedOrder, type WeightedThing, weightedCost, weightedOrder } from './weighted.ts';
