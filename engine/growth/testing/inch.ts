import { MM_PER_INCH, MPA_PER_KSI, MPA_SQRT_M_PER_KSI_SQRT_IN } from '../../foundation/convert.ts';

/** Published figures in inch and ksi, for tests. */
export const inch = (x: number) => x * MM_PER_INCH;
export const ksi = (x: number) => x * MPA_PER_KSI;
export const ksiRootInch = (x: number) => x * MPA_SQRT_M_PER_KSI_SQRT_IN;
export const asInch = (mm: number) => mm / MM_PER_INCH;
export const asKsi = (mpa: number) => mpa / MPA_PER_KSI;
export const asKsiRootInch = (k: number) => k / MPA_SQRT_M_PER_KSI_SQRT_IN;
/** Within a share of the expected figure. */
export const off = (value: number, expected: number) => Math.abs(value / expected - 1);
