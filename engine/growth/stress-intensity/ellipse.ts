import type { KPerStress } from '../model.ts';
import { raised, rootPi } from './numbers.ts';

/** A point of the crack front: 0° at the c tip, 90° at the a tip. What depends on the angle alone, once. */
export interface Angle {
  readonly radians: number;
  readonly sin: number;
  readonly cos: number;
  readonly cos2: number;
  readonly sin2: number;
}
export function angle(degrees: number): Angle {
  const radians = (degrees * Math.PI) / 180;
  const [sin, cos] = [Math.sin(radians), Math.cos(radians)];
  return { radians, sin, cos, cos2: cos * cos, sin2: sin * sin };
}

/** Q, the square of the elliptic integral, by its usual fit; same for a/c and c/a. */
const shapeOf = (ratio: number): number => 1 + 1.464 * raised(ratio, 1.65);

/** f of the angle for an ellipse of depth a and half length c. */
export function frontFactor(c: number, a: number, at: Angle): number {
  const ratio = a <= c ? a / c : c / a;
  return Math.sqrt(Math.sqrt(a <= c ? ratio * ratio * at.cos2 + at.sin2 : at.cos2 + ratio * ratio * at.sin2));
}

/** √(π a / Q) in √m: the one root that every part-through solution begins with. */
export const rootOverShape = (c: number, a: number): number => rootPi(a / shapeOf(Math.min(a / c, c / a)));

/** K of an ellipse alone in an unbounded body at two points of its front. */
export function aloneEllipse(cTip: Angle, aTip: Angle): (c: number, a: number) => KPerStress {
  return (c, a) => {
    // Deeper than long: the series begins with √(c/a).
    const k = rootOverShape(c, a) * (a <= c ? 1 : Math.sqrt(c / a));
    return { c: k * frontFactor(c, a, cTip), a: k * frontFactor(c, a, aTip) };
  };
}

/** M₁ + M₂v² + M₃v⁴ of surface cracks and of corner cracks at a hole, v = a/t. */
export function surfaceSeries(c: number, a: number, v2: number): number {
  if (a <= c) {
    const x = a / c;
    const m3 = 0.5 - 1 / (0.65 + x) + 14 * fourth((1 - x) ** 3) ** 2;
    return 1.13 - 0.09 * x + (-0.54 + 0.89 / (0.2 + x)) * v2 + m3 * v2 * v2;
  }
  const y = c / a;
  const y4 = fourth(y);
  return Math.sqrt(y) * (1 + 0.04 * y) + 0.2 * y4 * v2 - 0.11 * y4 * v2 * v2;
}
export const fourth = (x: number): number => x * x * (x * x);
