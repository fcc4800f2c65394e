import { Refusal } from '../../foundation/refusal.ts';
import {
  addForms,
  constantForm,
  endIfPossible,
  isConstant,
  type LinearForm,
  type Region,
  type RegionConstraint,
  type RegionVariable,
  scaleForm,
  subtractForms,
  variableForm,
} from '../../foundation/region/index.ts';
import type { Comparison, Condition, Expression } from './ast.ts';
import { dividesByZero, floored, GRAIN } from './evaluate.ts';

/** The linear form of a fact by name. @throws Refusal `expression.fact-missing` where it has none */
export type FormOf = (name: string, zeroIfAbsent: boolean) => LinearForm;
/** Which end is sought: a largest of several needs no cases when the lowest is sought, and the other way round. */
export type Sense = 'low' | 'high' | 'exact';

/** z = x * y, of which x and y are not settled; with the ends of both. A quotient q = a / b is q * b = a. */
export interface Product {
  readonly x: LinearForm;
  readonly y: LinearForm;
  readonly z: LinearForm;
  readonly ends: readonly [xLow: number, xHigh: number, yLow: number, yHigh: number];
}

/** A case of the formula in which it is one linear form, apart from products. */
export interface Piece {
  readonly form: LinearForm;
  readonly cuts: readonly RegionConstraint[];
  readonly products: readonly Product[];
}
type Curved = Extract<Expression, { left: Expression }>;

export const MOST_PIECES = 400;
const INF = Number.POSITIVE_INFINITY;
const flip = (s: Sense): Sense => (s === 'low' ? 'high' : s === 'high' ? 'low' : s);
const settled = (form: LinearForm): Piece => ({ form, cuts: [], products: [] });

export const row = (form: LinearForm, low: number, high: number): RegionConstraint => ({
  name: 'a case of the formula',
  terms: form.terms,
  low: low - form.constant,
  high: high - form.constant,
});
const both = (a: Piece, b: Piece, form: LinearForm): Piece => ({
  form,
  cuts: [...a.cuts, ...b.cuts],
  products: [...a.products, ...b.products],
});

/** Cuts an expression into pieces. Variables are added to the region's on the way; `region` shows the present set. */
export class Pieces {
  readonly #formOf: FormOf;
  readonly #variables: RegionVariable[];
  readonly #region: Region;
  /** Cases that hold where the part at hand is looked at: a guarded division is only looked at behind its guard. */
  #context: readonly RegionConstraint[] = [];
  constructor(formOf: FormOf, region: Region) {
    this.#formOf = formOf;
    this.#region = region;
    this.#variables = [...region.variables];
  }
  region(cuts: readonly RegionConstraint[]): Region {
    return { variables: [...this.#variables], constraints: [...this.#region.constraints, ...cuts] };
  }
  of(e: Expression, sense: Sense): Piece[] {
    const found = this.#of(e, sense);
    if (found.length <= MOST_PIECES) return found;
    throw new Refusal('expression.too-large', {
      given: `a formula of ${found.length} cases`,
      allowed: `at most ${MOST_PIECES} cases`,
      remedy: 'Use fewer conditions in one formula',
    });
  }
  #of(e: Expression, sense: Sense): Piece[] {
    switch (e.kind) {
      case 'number':
        return [settled(constantForm(e.value))];
      case 'fact':
        return [settled(this.#formOf(e.name, e.zeroIfAbsent))];
      case 'negate':
        return this.of(e.of, flip(sense)).map((p) => ({ ...p, form: scaleForm(p.form, -1) }));
      case 'floor':
        return this.of(e.of, 'exact').map((p) => this.#whole(p));
      case 'min':
      case 'max':
        return this.#oneOf(e.kind, e.of, sense);
      case 'choose':
        return [true, false].flatMap((yes) =>
          this.#behind(this.#when(e.when, yes), () => this.of(yes ? e.yes : e.no, sense)),
        );
      case 'add':
        return this.#each(e.left, e.right, sense, sense, (a, b) => addForms(a.form, b.form));
      case 'subtract':
        return this.#each(e.left, e.right, sense, flip(sense), (a, b) => subtractForms(a.form, b.form));
      default:
        return this.#product(e, sense);
    }
  }
  #each(l: Expression, r: Expression, ls: Sense, rs: Sense, form: (a: Piece, b: Piece) => LinearForm): Piece[] {
    const right = this.of(r, rs);
    return this.of(l, ls).flatMap((a) => right.map((b) => both(a, b, form(a, b))));
  }
  /** What `make` gives within each of some cases. */
  #behind(cases: readonly Piece[], make: () => readonly Piece[]): Piece[] {
    const outside = this.#context;
    return cases.flatMap((c) => {
      this.#context = [...outside, ...c.cuts];
      try {
        return make().map((p) => both(c, p, p.form));
      } finally {
        this.#context = outside;
      }
    });
  }
  #range(form: LinearForm, cuts: readonly RegionConstraint[]): [number, number] | null {
    const region = this.region([...this.#context, ...cuts]);
    const low = endIfPossible(form, region, 'low');
    const high = endIfPossible(form, region, 'high');
    return low && high && [low.value, high.value];
  }
  #product(e: Curved, sense: Sense): Piece[] {
    const constant = (x: Expression): number | null => {
      const pieces = this.of(x, 'exact');
      return pieces.length === 1 && isConstant(pieces[0]!.form) ? pieces[0]!.form.constant : null;
    };
    const scaled = (x: Expression, k: number) =>
      this.of(x, k < 0 ? flip(sense) : sense).map((p) => ({ ...p, form: scaleForm(p.form, k) }));
    const right = constant(e.right);
    if (e.kind === 'divide' && right === 0) throw dividesByZero('division by a figure that is zero', e.at);
    if (right !== null) return scaled(e.left, e.kind === 'divide' ? 1 / right : right);
    const left = e.kind === 'multiply' ? constant(e.left) : null;
    if (left !== null) return scaled(e.right, left);
    const rights = this.of(e.right, 'exact');
    return this.of(e.left, 'exact').flatMap((a) => rights.flatMap((b) => this.#curve(e, a, b)));
  }
  #curve(e: Curved, a: Piece, b: Piece): Piece[] {
    const pair = both(a, b, a.form);
    const [x, y] = [this.#range(a.form, pair.cuts), this.#range(b.form, pair.cuts)];
    if (!x || !y) return [];
    const divide = e.kind === 'divide';
    if (divide && y[0] <= 0 && y[1] >= 0)
      throw dividesByZero(`a divisor that may lie anywhere from ${y[0]} to ${y[1]}`, e.at);
    const corners = x.flatMap((p) => y.map((q) => (divide ? p / q : p * q)));
    const z: [number, number] = [Math.min(...corners), Math.max(...corners)];
    const v = variableForm(this.#fresh(z[0], z[1], false));
    const product: Product = divide
      ? { x: v, y: b.form, z: a.form, ends: [...z, ...y] }
      : { x: a.form, y: b.form, z: v, ends: [...x, ...y] };
    return [{ form: v, cuts: pair.cuts, products: [...pair.products, product] }];
  }
  #fresh(low: number, high: number, integer: boolean): number {
    this.#variables.push({ name: `part of the formula ${this.#variables.length}`, low, high, integer });
    return this.#variables.length - 1;
  }
  #box(form: LinearForm): [number, number] {
    let [low, high] = [form.constant, form.constant];
    for (const [v, c] of form.terms) {
      const { low: a, high: b } = this.#variables[v]!;
      low += Math.min(c * a, c * b);
      high += Math.max(c * a, c * b);
    }
    return [low, high];
  }
  #whole(p: Piece): Piece {
    if (isConstant(p.form)) return { ...p, form: constantForm(floored(p.form.constant)) };
    const [low, high] = this.#box(p.form);
    const v = this.#fresh(Math.floor(low), Math.ceil(high), true);
    const gap = subtractForms(p.form, variableForm(v));
    return { ...p, form: variableForm(v), cuts: [...p.cuts, row(gap, -GRAIN / 4, 1 - GRAIN)] };
  }
  /** The smallest or largest of several. */
  #oneOf(kind: 'min' | 'max', of: readonly Expression[], sense: Sense): Piece[] {
    const parts = of.map((x) => this.of(x, sense));
    if (sense === (kind === 'min' ? 'low' : 'high')) return parts.flat();
    let combined: { forms: LinearForm[]; piece: Piece }[] = [{ forms: [], piece: settled(constantForm(0)) }];
    for (const pieces of parts)
      combined = combined.flatMap((c) =>
        pieces.map((p) => ({ forms: [...c.forms, p.form], piece: both(c.piece, p, p.form) })),
      );
    const sign = kind === 'min' ? -1 : 1;
    const above = (f: LinearForm, g: LinearForm) => row(scaleForm(subtractForms(f, g), sign), 0, INF);
    return combined.flatMap(({ forms, piece }): Piece[] => {
      if (forms.every(isConstant))
        return [{ ...piece, form: constantForm(Math[kind](...forms.map((f) => f.constant))) }];
      if (sense === 'exact')
        return forms.map((form, i) => ({
          ...piece,
          form,
          cuts: [...piece.cuts, ...forms.filter((_, j) => j !== i).map((f) => above(form, f))],
        }));
      const boxes = forms.map((f) => this.#box(f));
      const v = variableForm(
        this.#fresh(Math.min(...boxes.map((b) => b[0])) - 1, Math.max(...boxes.map((b) => b[1])) + 1, false),
      );
      return [{ ...piece, form: v, cuts: [...piece.cuts, ...forms.map((f) => above(v, f))] }];
    });
  }
  /** Cases in which a condition holds, or does not; each history in one of them. Their form means nothing. */
  #when(c: Condition, yes: boolean): Piece[] {
    if (c.kind === 'not') return this.#when(c.of, !yes);
    if (c.kind === 'compare') return this.#compared(c.left, yes ? c.op : OPPOSITE[c.op], c.right);
    const second = this.#behind(this.#when(c.left, c.kind === 'and'), () => this.#when(c.right, yes));
    return (c.kind === 'and') === yes ? second : [...this.#when(c.left, yes), ...second];
  }
  #compared(left: Expression, op: Comparison, right: Expression): Piece[] {
    const gaps = this.#each(left, right, 'exact', 'exact', (a, b) => subtractForms(a.form, b.form));
    return gaps.flatMap((g) =>
      RANGES[op].flatMap(([low, high]) => {
        if (!isConstant(g.form)) return [{ ...g, cuts: [...g.cuts, row(g.form, low, high)] }];
        const value = g.form.constant;
        return value >= low - GRAIN / 2 && value <= high + GRAIN / 2 ? [g] : [];
      }),
    );
  }
}
const OPPOSITE: Record<Comparison, Comparison> = { '<': '>=', '>=': '<', '>': '<=', '<=': '>', '==': '!=', '!=': '==' };
const BELOW: [number, number] = [-INF, -GRAIN];
const ABOVE: [number, number] = [GRAIN, INF];
const RANGES: Record<Comparison, [number, number][]> = {
  '<': [BELOW],
  '<=': [[-INF, 0]],
  '>': [ABOVE],
  '>=': [[0, INF]],
  '==': [[0, 0]],
  '!=': [BELOW, ABOVE],
};
