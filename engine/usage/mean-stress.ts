import { Refusal } from '../foundation/refusal.ts';

/**
 * Amplitude at zero mean that is as hard as an amplitude about a mean. Any one unit of stress; pull positive.
 *
 * @param amplitude half the range, more than 0
 * @param mean middle of the cycle
 * @throws Refusal `usage.form-invalid` where the form stops: a mean at or above its strength, a cycle without amplitude
 * @see Wichita State University AE 737 (2022), lectures 14 to 16; Walker's form from memory
 */
export const goodman = (amplitude: number, mean: number, ultimate: number): number =>
  checked(amplitude, mean, ultimate, 'ultimate strength') / (1 - mean / ultimate);

/** As printed: a mean in compression counts like one in tension, the harsh side. @throws Refusal `usage.form-invalid` */
export const gerber = (amplitude: number, mean: number, ultimate: number): number =>
  checked(amplitude, Math.abs(mean), ultimate, 'ultimate strength') / (1 - (mean / ultimate) * (mean / ultimate));

/** With the true fracture strength, or Basquin's coefficient in its place. @throws Refusal `usage.form-invalid` */
export const morrow = (amplitude: number, mean: number, fracture: number): number =>
  checked(amplitude, mean, fracture, 'fracture strength') / (1 - mean / fracture);

/** Smith, Watson and Topper; 0 for a cycle that never pulls. @throws Refusal `usage.form-invalid` */
export const smithWatsonTopper = (amplitude: number, mean: number): number => walker(amplitude, mean, 0.5);

/** σmax^(1 − γ) σa^γ; γ = 0.5 is Smith, Watson and Topper. 0 for a cycle that never pulls. @throws Refusal `usage.form-invalid` */
export function walker(amplitude: number, mean: number, gamma: number): number {
  if (!(gamma >= 0 && gamma <= 1)) throw invalid(`a Walker exponent of ${gamma}`, 'an exponent from 0 to 1');
  positive(amplitude, 'an amplitude');
  const max = mean + amplitude;
  return max <= 0 ? 0 : Math.exp((1 - gamma) * Math.log(max) + gamma * Math.log(amplitude));
}

function checked(amplitude: number, mean: number, strength: number, name: string): number {
  positive(amplitude, 'an amplitude');
  positive(strength, `the ${name}`);
  if (!(mean < strength))
    throw invalid(`a mean stress of ${mean} with ${strength} as ${name}`, `a mean below the ${name}`);
  return amplitude;
}

/** @throws Refusal `usage.form-invalid` */
export function positive(value: number, name: string): number {
  if (Number.isFinite(value) && value > 0) return value;
  throw invalid(`${name} of ${value}`, `${name} above 0`);
}
export const invalid = (given: string, allowed: string): Refusal =>
  new Refusal('usage.form-invalid', { given, allowed, remedy: 'Correct this figure, or take a form that reaches it' });
