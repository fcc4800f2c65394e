import { MM_PER_INCH, MM_PER_METRE } from '../../../foundation/convert.ts';

/** The sources compute in inches: lengths into mm, and K per stress in √m back into √in. */
export const inch = (x: number): number => x * MM_PER_INCH;
export const rootInch = (k: number): number => k * Math.sqrt(MM_PER_METRE / MM_PER_INCH);
