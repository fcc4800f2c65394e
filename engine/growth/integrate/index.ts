/** How long a crack takes from one size to another. */
export { type GrowOptions, grow } from './adaptive.ts';
export { growByBlocks } from './blocks.ts';
export { type CycleOptions, growCycleByCycle } from './cycle-by-cycle.ts';
export { type HourlyGrowth, hourlyGrowth, MANY_CYCLES } from './hourly.ts';
export type { CycleKernel, HourlyCycle, KernelInput, KernelState, Until } from './model.ts';
