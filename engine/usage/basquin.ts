import { invalid, positive } from './mean-stress.ts';

/** σa = coefficient · (2 N)^exponent. */
export interface Basquin {
  /** σf', in the unit of the stress that is asked about. */
  readonly coefficient: number;
  /** b, negative. */
  readonly exponent: number;
}

/**
 * Cycles to failure at a fully reversed amplitude: N = ½ (σar / σf')^(1 / b).
 *
 * Not valid where the notch yields: use strain-life there.
 *
 * @throws Refusal `usage.form-invalid`
 * @see Wichita State University AE 737 (2022), lecture 14
 */
export function basquinCycles(curve: Basquin, amplitude: number): number {
  positive(amplitude, 'an amplitude');
  positive(curve.coefficient, 'a fatigue strength');
  if (!(curve.exponent < 0)) throw invalid(`an exponent of ${curve.exponent}`, 'an exponent below 0');
  return 0.5 * Math.exp(Math.log(amplitude / curve.coefficient) / curve.exponent);
}
