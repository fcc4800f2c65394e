import type { Provenance } from '../foundation/provenance.ts';
import { positive } from './mean-stress.ts';

const from = (place: string): Provenance => ({ source: 'AC 23-13A', edition: '2005', place, known: 'second-hand' });
/** Scatter factors on a mean life: by analysis with S-N data, and by full-scale test of 1 to 4 specimens. */
export const SCATTER_FACTORS = {
  analysis: { value: 8, from: from('paragraph 2-26') },
  test: [4.96, 4, 3.7, 3.54].map((value, i) => ({ specimens: i + 1, value, from: from('table 2') })),
} as const;

/**
 * Factor between the mean life of n specimens and the life that all but a few reach, for lognormal lives:
 * 10^(k s √(1 + 1/n)).
 *
 * Not valid as the derivation of any published factor: spread and chance are yours to state. From memory 0.14 and 3.511
 * give those of table 2 of AC 23-13A.
 *
 * @param spread standard deviation of log10 N
 * @param chances standard deviations below the mean
 * @throws Refusal `usage.form-invalid`
 */
export const factorOfSpread = (spread: number, chances: number, specimens: number): number =>
  Math.exp(Math.LN10 * chances * spread * Math.sqrt(1 + 1 / positive(specimens, 'a number of specimens')));
