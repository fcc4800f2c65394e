/** Stress components at a point, any one unit; what is absent is 0. */
export interface Components {
  readonly x?: number;
  readonly y?: number;
  readonly z?: number;
  readonly xy?: number;
  readonly yz?: number;
  readonly zx?: number;
}

/**
 * One amplitude for stresses in several directions that rise and fall together (octahedral shear), and one mean.
 *
 * σ̄a = (1/√2) √[(σx − σy)² + (σy − σz)² + (σz − σx)² + 6 (τxy² + τyz² + τzx²)]; σ̄m = σx + σy + σz of the means.
 *
 * Not valid where the directions are out of step.
 *
 * @see Wichita State University AE 737 (2022), lecture 16
 */
export function effectiveAmplitude({ x = 0, y = 0, z = 0, xy = 0, yz = 0, zx = 0 }: Components): number {
  const normal = (x - y) * (x - y) + (y - z) * (y - z) + (z - x) * (z - x);
  return Math.sqrt((normal + 6 * (xy * xy + yz * yz + zx * zx)) / 2);
}
export const effectiveMean = ({ x = 0, y = 0, z = 0 }: Components): number => x + y + z;
