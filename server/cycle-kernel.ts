import type { growth } from '../engine/index.ts';
import { cycleKernel } from '../kernels/growth-cycles.ts';

let made: growth.CycleKernel | null = null;

/** The fast doer of cycles one by one, made when it is first needed; one in each thread. */
export const kernel: growth.CycleKernel = (input) => {
  made ??= cycleKernel();
  return made(input);
};
