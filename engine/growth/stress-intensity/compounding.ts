import { weakestKnown } from '../../foundation/provenance.ts';
import type { GrowthDocument } from '../document.ts';
import type { KPerStress } from '../model.ts';
import type { Solution } from './solution.ts';

export type Factors = NonNullable<GrowthDocument['factors']>;
export type Compounded = NonNullable<GrowthDocument['compounded']>;

/**
 * Boundaries that a solution does not hold, compounded with its own geometry factor β = K / K of the crack alone in an
 * unbounded body.
 *
 * Product: β Π βᵢ. Sum: 1 + (β − 1) + Σ(βᵢ − 1). The crack that goes on after the break-through keeps the same factors.
 *
 * @param solution the form of the crack
 * @param factors each boundary as a factor, above 0
 * @param how product or sum
 * @returns the solution with all boundaries; weakest of all sources
 * @see AE 737 lectures 3 and 4
 */
export function compound(solution: Solution, factors: Factors, how: Compounded): Solution {
  if (!factors.length) return solution;
  const product = factors.reduce((all, f) => all * f.value, 1);
  const more = factors.reduce((all, f) => all + (f.value - 1), 0);
  const k = (c: number, a: number): KPerStress => {
    const own = solution.k(c, a);
    if (how === 'product') return { c: own.c * product, a: own.a === null ? null : own.a * product };
    const alone = solution.alone(c, a);
    return {
      c: own.c + more * alone.c,
      a: own.a === null ? null : own.a + more * (alone.a ?? alone.c),
    };
  };
  const known = weakestKnown([solution.from.known, ...factors.map((f) => f.from.known)]);
  return {
    ...solution,
    k,
    from: { ...solution.from, known },
    through: solution.through && compound(solution.through, factors, how),
  };
}
