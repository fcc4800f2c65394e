import { stressRatio } from '../material/stress-ratio.ts';

/**
 * Closure model: the share of the peak at which the crack opens, Cf = 1 − (1 − Cf0)(1 + 0.6 R)(1 − R).
 *
 * Inside the zone of an overload Cf takes the place of R in the growth law.
 *
 * Not valid for R below −1, where (1 + 0.6 R) loses its meaning, nor for a law without R. It cannot be chosen in a
 * document: its Cf0 is known for no material at hand.
 *
 * @param cf0 opening level at R = 0, 0 to 1
 * @param max highest of the cycle, MPa or MPa√m
 * @param min lowest, same unit
 * @returns Cf, R or above
 * @throws Refusal `growth.stress-ratio`
 * @see [DT737] lecture 20
 */
export function openingLevel(cf0: number, max: number, min: number): number {
  const ratio = stressRatio(max, min);
  return Math.max(ratio, 1 - (1 - cf0) * (1 + 0.6 * ratio) * (1 - ratio));
}
