import { Refusal } from '../../foundation/refusal.ts';
import { endIfPossible, type LinearForm, type Outer, type Region } from '../../foundation/region/index.ts';
import type { Expression } from './ast.ts';
import { evaluate, type FactValues, factMissing, GRAIN } from './evaluate.ts';
import { halves, isClosed, planes } from './extremes.ts';
import { type Piece, Pieces, type Product, row } from './pieces.ts';

export interface Reach {
  /** Amount of further use at which the limit is first reached. */
  readonly at: number;
  /** `enclosure`: not reached before this, perhaps later. */
  readonly proven: 'exact' | 'enclosure';
}
const BUDGET = 400;

/** The facts after so much further use, at so much of each fact per unit of use. */
export const factsAlong = (facts: FactValues, rates: FactValues, use: number): FactValues =>
  Object.fromEntries(
    [...new Set([...Object.keys(facts), ...Object.keys(rates)])].map((n) => [
      n,
      (facts[n] ?? 0) + (rates[n] ?? 0) * use,
    ]),
  );

export const evaluateAlong = (e: Expression, facts: FactValues, rates: FactValues, use: number): number =>
  evaluate(e, factsAlong(facts, rates, use));

/**
 * The first amount of further use at which a figure reaches a limit, if every fact grows in a straight line.
 *
 * The formula need not grow steadily: it is cut into its linear pieces, each gives the first place where it
 * is at the limit, the earliest counts. So a peak between two places below the limit is not missed, and a
 * step of `floor` is met where it is taken. `at`: the figure equals the limit or more; `more than`: it is
 * above it by a millionth. Use is a real number here; round it down before it is spoken.
 *
 * @param horizon furthest amount of use looked at
 * @returns null if the limit is not reached within the horizon
 * @throws Refusal `expression.forecast-invalid`, `expression.fact-missing`, `expression.divides-by-zero`, `expression.too-large`
 */
export function firstReach(
  e: Expression,
  facts: FactValues,
  rates: FactValues,
  limit: number,
  is: 'at' | 'more than',
  horizon: number,
): Reach | null {
  if (
    !Number.isFinite(limit) ||
    !(horizon > 0) ||
    !Number.isFinite(horizon) ||
    !Object.values(rates).every(Number.isFinite)
  )
    throw new Refusal('expression.forecast-invalid', {
      given: `a limit of ${limit} within ${horizon}`,
      allowed: 'a finite limit, a horizon above zero and finite rates',
      remedy: 'State the limit and the rates of use',
    });
  const along = (name: string, zeroIfAbsent: boolean): LinearForm => {
    if (!Object.hasOwn(facts, name) && !Object.hasOwn(rates, name) && !zeroIfAbsent) throw factMissing(name);
    const rate = rates[name] ?? 0;
    return { constant: facts[name] ?? 0, terms: rate === 0 ? [] : [[0, rate]] };
  };
  const reached = (use: number) => evaluateAlong(e, facts, rates, use) - limit > (is === 'at' ? -GRAIN / 2 : GRAIN / 2);
  if (reached(0)) return { at: 0, proven: 'exact' };
  const region: Region = {
    variables: [{ name: 'further use', low: 0, high: horizon, integer: false }],
    constraints: [],
  };
  const pieces = new Pieces(along, region);
  const open: { piece: Piece; products: readonly Product[]; end: Outer }[] = [];
  const look = (piece: Piece, products: readonly Product[]): void => {
    const enough = row(piece.form, limit + (is === 'at' ? 0 : GRAIN), Number.POSITIVE_INFINITY);
    const cuts = [...piece.cuts, enough, ...products.flatMap(planes)];
    const end = endIfPossible({ constant: 0, terms: [[0, 1]] }, pieces.region(cuts), 'low');
    if (end) open.push({ piece, products, end });
  };
  for (const p of pieces.of(e, 'high')) look(p, p.products);
  for (let looked = 0; open.length > 0; looked++) {
    open.sort((a, b) => b.end.value - a.end.value);
    const next = open.pop()!;
    const at = next.end.value;
    if (reached(at)) return { at, proven: 'exact' };
    const closed = isClosed(next.products, next.end);
    if (closed && next.end.witness) return { at, proven: 'exact' };
    if (closed || looked >= BUDGET) return { at, proven: 'enclosure' };
    for (const products of halves(next)) look(next.piece, products);
  }
  return null;
}
