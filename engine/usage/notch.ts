import type { Provenance } from '../foundation/provenance.ts';
import { invalid, positive } from './mean-stress.ts';

const from = (place: string): Provenance => ({
  source: 'Wichita State University AE 737',
  edition: '2022',
  place,
  known: 'read',
});
/** Peterson's length α, mm, by material. */
export const NOTCH_LENGTHS_MM = {
  aluminium: { value: 0.51, from: from('lecture 14') },
  mild_steel: { value: 0.25, from: from('lecture 14') },
  quenched_steel: { value: 0.064, from: from('lecture 14') },
} as const;

/**
 * How much of a stress concentration the metal feels: q = 1 / (1 + α / ρ), kf = 1 + q (Kt − 1).
 *
 * Not valid for cracks and for roots sharper than the material's own grain.
 *
 * @param length α and radius ρ in one unit of length
 * @throws Refusal `usage.form-invalid`
 * @see Wichita State University AE 737 (2022), lecture 14
 */
export function fatigueNotch(stressConcentration: number, radius: number, length: number): { q: number; kf: number } {
  positive(radius, 'a notch radius');
  positive(length, 'a notch length');
  if (!(stressConcentration >= 1))
    throw invalid(`a stress concentration of ${stressConcentration}`, 'a stress concentration of 1 or more');
  const q = 1 / (1 + length / radius);
  return { q, kf: 1 + q * (stressConcentration - 1) };
}
