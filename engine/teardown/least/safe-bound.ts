import type { Row } from './rows.ts';
import type { Simplex } from './simplex.ts';

/** Prices of rows by which a bound can be computed from nothing but the rows. */
export interface Prices {
  readonly bound: number;
  /** What choosing a thing costs beyond the bound (above zero), or not choosing it (below zero). */
  readonly reduced: Float64Array;
}

/**
 * A bound that holds whatever errors the table carries: any prices ≥ 0 of valid rows give one. Least of
 * Σ price·least + Σ (cost − Σ price·factor)·x over the bounds of the things, less an allowance for rounding.
 *
 * @see Neumaier and Shcherbina, Math. Program. 99 (2004) 283-296, safe bounds; from memory
 */
export function safeBound(simplex: Simplex): Prices {
  const reduced = Float64Array.from(simplex.cost);
  let bound = 0;
  let size = 1;
  for (let slot = 0; slot < simplex.rows.length; slot++) {
    const row: Row | null = simplex.rows[slot]!;
    if (!row) continue;
    const price = simplex.priceOf(slot);
    if (price === 0) continue;
    bound += price * row.least;
    size += price * row.things.length;
    for (let e = 0; e < row.things.length; e++) reduced[row.things[e]!]! -= price * row.factors[e]!;
  }
  for (let j = 0; j < reduced.length; j++) {
    const d = reduced[j]!;
    bound += d >= 0 ? d * simplex.low[j]! : d * simplex.high[j]!;
  }
  return { bound: bound - 1e-12 * size, reduced };
}
