/** The least that must be done to reach what is wanted; the best that can be chosen with what it needs. */
export { type Closure, maximumClosure } from './closure.ts';
export { type LeastOptions, leastSet, orderOf } from './least-set.ts';
