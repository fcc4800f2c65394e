import { Refusal } from '../../foundation/refusal.ts';
import {
  addForms,
  type End,
  type Extremes,
  endIfPossible,
  evaluateForm,
  linearEnd,
  type Outer,
  type Region,
  type RegionConstraint,
  scaleForm,
} from '../../foundation/region/index.ts';
import type { Expression } from './ast.ts';
import { evaluate, GRAIN } from './evaluate.ts';
import { type FormOf, type Piece, Pieces, type Product, row } from './pieces.ts';

export type { FormOf } from './pieces.ts';

/** How close counts as exact, in the figure's own unit (0.05 h), and how many cases are looked at before giving up. */
export interface Effort {
  readonly tolerance?: number;
  readonly budget?: number;
}
const TOLERANCE = 0.05;
const BUDGET = 400;
/** After so many cases a gap within the tolerance is good enough; before, the true end is sought. */
const EAGER = 40;
const INF = Number.POSITIVE_INFINITY;

/**
 * Least and greatest value of an expression over all possible histories.
 *
 * The expression is cut into linear pieces (`pieces.ts`): choices by condition become constraints, the
 * larger or smaller of several becomes a variable that bounds them, `floor` a whole variable. Products and
 * quotients of two unsettled figures are held between the four planes through the ends of their factors,
 * and the factors' ranges are halved where it matters (branch and bound). The plain evaluator is run on
 * every history found on the way; the best of them is the witness.
 *
 * `exact`: the witness's own value lies within the tolerance of `value`, and no history goes further than
 * `value`. `enclosure`: no history goes further, the witness stays short of it.
 *
 * Not valid for differences under 1e-6: figures so close count as equal in every comparison.
 *
 * @throws Refusal as `linearExtremes`; `expression.divides-by-zero` if a divisor can be zero where it is
 *   looked at; `expression.too-large` above 400 linear pieces
 */
export function extremes(e: Expression, formOf: FormOf, region: Region, effort: Effort = {}): Extremes {
  return { low: oneEnd(e, formOf, region, 'low', effort), high: oneEnd(e, formOf, region, 'high', effort) };
}

interface Case {
  readonly piece: Piece;
  readonly products: readonly Product[];
  readonly end: Outer;
}

export function oneEnd(e: Expression, formOf: FormOf, region: Region, end: 'low' | 'high', effort: Effort = {}): End {
  const { tolerance = TOLERANCE, budget = BUDGET } = effort;
  const sign = end === 'high' ? 1 : -1;
  const pieces = new Pieces(formOf, region);
  const all = pieces.of(e, end);
  let reached = -INF;
  let witness: readonly number[] | null = null;
  let closed = -INF;
  const open: Case[] = [];
  const meet = (history: readonly number[]): void => {
    const value = sign * valueIn(e, formOf, history);
    if (witness && value <= reached) return;
    reached = value;
    witness = history;
  };
  const look = (piece: Piece, products: readonly Product[]): void => {
    const found = endIfPossible(piece.form, pieces.region([...piece.cuts, ...products.flatMap(planes)]), end);
    if (!found) return;
    if (found.witness) meet(found.witness.slice(0, region.variables.length));
    if (isClosed(products, found)) closed = Math.max(closed, sign * found.value);
    else open.push({ piece, products, end: found });
  };
  for (const p of all) look(p, p.products);
  let looked = 0;
  for (; open.length > 0; looked++) {
    open.sort((a, b) => sign * (a.end.value - b.end.value));
    const gap = sign * open.at(-1)!.end.value - Math.max(reached, closed);
    if (gap <= GRAIN || looked >= budget || (looked >= EAGER && gap <= tolerance)) break;
    const next = open.pop()!;
    for (const products of halves(next)) look(next.piece, products);
  }
  // Cases that could not be decided keep their bound; some history of the papers then stands for them.
  if (!witness && (closed > -INF || open.length > 0)) meet(linearEnd({ constant: 0, terms: [] }, region, end).witness);
  if (!witness) return nothing(region);
  const bound = Math.max(reached, closed, ...open.map((c) => sign * c.end.value));
  const near = bound - reached;
  return {
    value: sign * (near <= 10 * GRAIN ? reached : bound) || 0,
    proven: near <= tolerance ? 'exact' : 'enclosure',
    witness,
  };
}

/** No piece holds a history: either the papers contradict each other, or figures are held apart by less than 1e-6. */
function nothing(region: Region): never {
  linearEnd({ constant: 0, terms: [] }, region, 'low');
  throw new Refusal('region.unsolved', {
    given: 'a formula whose every case fails by less than a millionth',
    allowed: 'histories whose compared figures are equal or differ by a millionth or more',
    remedy: 'Compare rounder figures in the formula',
  });
}

export const off = (p: Product, x: readonly number[]): number =>
  Math.abs(evaluateForm(p.z, x) - evaluateForm(p.x, x) * evaluateForm(p.y, x));

/** z = x * y lies between four planes while x and y keep their ends (McCormick 1976). */
export function planes({ x, y, z, ends: [a, b, c, d] }: Product): RegionConstraint[] {
  const above = (p: number, q: number) => addForms(z, scaleForm(y, -p), scaleForm(x, -q));
  return [
    row(above(a, c), -a * c, INF),
    row(above(b, d), -b * d, INF),
    row(above(b, c), -INF, -b * c),
    row(above(a, d), -INF, -a * d),
    row(x, a, b),
    row(y, c, d),
  ];
}

/** Nothing is left to halve: every product is met, or there is none and the case stays as it was found. */
export const isClosed = (products: readonly Product[], { witness }: Outer): boolean =>
  witness ? products.every((p) => off(p, witness) <= GRAIN) : products.length === 0;

/** The product that is furthest off, with one factor's range cut in two near the witness; without one, the widest in the middle. */
export function halves({ products, end }: Pick<Case, 'products' | 'end'>): Product[][] {
  const { witness } = end;
  const wide = ({ ends: [a, b, c, d] }: Product) => (b - a) * (d - c);
  const doubt = (p: Product) => (witness ? off(p, witness) : wide(p));
  const worst = products.reduce((w, p, i) => (doubt(p) > doubt(products[w]!) ? i : w), 0);
  const p = products[worst]!;
  const [a, b, c, d] = p.ends;
  const share = (low: number, high: number, at: number) =>
    high > low ? Math.min(at - low, high - at) / (high - low) : -1;
  const [atX, atY] = witness ? [evaluateForm(p.x, witness), evaluateForm(p.y, witness)] : [(a + b) / 2, (c + d) / 2];
  const byX = share(a, b, atX) >= share(c, d, atY);
  const [low, high, at] = byX ? [a, b, atX] : [c, d, atY];
  const margin = 0.1 * (high - low);
  const cut = Math.min(high - margin, Math.max(low + margin, at));
  const ends: Product['ends'][] = byX
    ? [
        [a, cut, c, d],
        [cut, b, c, d],
      ]
    : [
        [a, b, c, cut],
        [a, b, cut, d],
      ];
  return ends.map((range) => products.map((q, i) => (i === worst ? { ...q, ends: range } : q)));
}

/** The plain value of an expression in one possible history. */
export function valueIn(e: Expression, formOf: FormOf, history: readonly number[]): number {
  const of = (name: string): number => {
    const { constant, terms } = formOf(name, true);
    return terms.reduce((t, [v, c]) => t + c * (history[v] ?? 0), constant);
  };
  const facts = new Proxy({} as Record<string, number>, {
    get: (_, name: string) => of(name),
    has: () => true,
    getOwnPropertyDescriptor: (_, name: string) => ({
      value: of(name),
      enumerable: true,
      configurable: true,
      writable: true,
    }),
  });
  return evaluate(e, facts);
}
