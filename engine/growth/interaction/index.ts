/** How one cycle acts on the next. */
export { effectiveCycle } from './effective-cycle.ts';
export type { EffectiveCycle, FeltCycle, Overload } from './model.ts';
export { openingLevel } from './opening-level.ts';
