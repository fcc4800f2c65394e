import type { CrackSize, GrowthPoint } from '../model.ts';

/** Figures as sentences and steps say them. */
export const three = (x: number): number => Number(x.toPrecision(4));
export const sizeWords = ({ c_mm, a_mm }: CrackSize): string =>
  `c ${three(c_mm)} mm${a_mm === undefined ? '' : `, a ${three(a_mm)} mm`}`;
export const pointWords = (p: GrowthPoint): string =>
  sizeWords({ c_mm: p.c_mm, ...(p.a_mm === null ? {} : { a_mm: p.a_mm }) });
export const METHOD = 'docs/methods/growth.md';
