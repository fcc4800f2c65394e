import { MM_PER_METRE } from '../../foundation/convert.ts';

/** √(π l) of a length in mm, in √m. */
export const rootPi = (length_mm: number): number => Math.sqrt((Math.PI * length_mm) / MM_PER_METRE);
export const secant = (x: number): number => 1 / Math.cos(x);
/** Value of c₀ + c₁x + c₂x² + c₃x³ + c₄x⁴. */
export const polynomial = (x: number, c0: number, c1: number, c2 = 0, c3 = 0, c4 = 0): number =>
  c0 + x * (c1 + x * (c2 + x * (c3 + x * c4)));
export const raised = (x: number, power: number): number => (x > 0 ? Math.exp(power * Math.log(x)) : 0);
/** A figure for a sentence, four digits. */
export const figure = (x: number): string => String(Number(x.toPrecision(4)));
