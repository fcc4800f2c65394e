/** What has to come off, in what order, how long does it take? */
export * from './document.ts';
export * from './floor-document.ts';
export { type Closure, type LeastOptions, leastSet, maximumClosure, orderOf } from './least/index.ts';
export type * from './model.ts';
export * from './project/index.ts';
export * from './structure-document.ts';
