/**
 * Opening function f: the share of the peak at which the crack opens under constant amplitude.
 *
 * A polynomial in R for R ≥ 0, a line down to R = −2, constant below.
 *
 * Not valid after overloads: those are for the models of interaction. Valid for 1 ≤ α ≤ 3.
 *
 * @param ratio stress ratio R
 * @param alpha constraint α: 1 plane stress, 3 plane strain
 * @param s highest stress over flow stress
 * @returns f, never below R
 * @see Newman's opening function; form read in part second-hand ([DT737] lecture 17), coefficients from memory
 */
export function openingFunction(ratio: number, alpha: number, s: number): number {
  const [a0, a1, a2, a3] = openingCoefficients(alpha, s);
  if (ratio >= 0) return Math.max(ratio, a0 + ratio * (a1 + ratio * (a2 + ratio * a3)));
  return ratio >= -2 ? a0 + a1 * ratio : a0 - 2 * a1;
}

/** A0 to A3 of the opening function. */
export function openingCoefficients(alpha: number, s: number): readonly [number, number, number, number] {
  const a0 = (0.825 - 0.34 * alpha + 0.05 * alpha * alpha) * Math.exp(Math.log(Math.cos((Math.PI * s) / 2)) / alpha);
  const a1 = (0.415 - 0.071 * alpha) * s;
  const a3 = 2 * a0 + a1 - 1;
  return [a0, a1, 1 - a0 - a1 - a3, a3];
}
