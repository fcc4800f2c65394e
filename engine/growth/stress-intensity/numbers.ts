import { MM_PER_METRE } from '../../foundation/convert.ts';

/** √(π l) of a length in mm, in √m. */
export const rootPi = (length_mm: number): number => Math.sqrt((Math.PI * length_mm) / MM_PER_METRE);
export const secant = (x: number): number => 1 / Math.cos(x);
export const radians = (degrees: number): number => (degrees * Math.PI) / 180;
/** Value of c₀ + c₁x + c₂x² + … */
export const polynomial = (coefficients: readonly number[], x: number): number =>
  coefficients.reduceRight((sum, c) => sum * x + c, 0);
export const raised = (x: number, power: number): number => (x > 0 ? Math.exp(power * Math.log(x)) : 0);
/** A figure for a sentence, four digits. */
export const figure = (x: number): string => String(Number(x.toPrecision(4)));
