import { isRefusal, Refusal } from '../../foundation/refusal.ts';
import {
  addForms,
  constantForm,
  type Extremes,
  isConstant,
  type LinearForm,
  linearExtremes,
  type Region,
  type RegionConstraint,
  type RegionVariable,
  scaleForm,
  subtractForms,
  variableForm,
} from '../../foundation/region/index.ts';
import type { Comparison, Condition, Expression } from './ast.ts';
import { dividesByZero, evaluate, GRAIN } from './evaluate.ts';

/** The linear form of a fact by name. @throws Refusal `expression.fact-missing` where it has none */
export type FormOf = (name: string, zeroIfAbsent: boolean) => LinearForm;
/** Which end is sought: a largest of several needs no cases when the lowest is sought, and the other way round. */
type Sense = 'low' | 'high' | 'exact';
interface Piece {
  readonly form: LinearForm;
  readonly cuts: readonly RegionConstraint[];
  readonly exact: boolean;
}
const MOST_PIECES = 400;
const flip = (s: Sense): Sense => (s === 'low' ? 'high' : s === 'high' ? 'low' : s);

/**
 * Least and greatest value of an expression over all possible histories.
 *
 * The expression is cut into linear pieces: choices by condition become constraints, the larger or smaller
 * of several becomes a variable that bounds them, `floor` a whole variable. Each piece is solved exactly.
 * A product or quotient of two unsettled figures is enclosed by the ends of its factors and marked so.
 *
 * @throws Refusal as `linearExtremes`; `expression.divides-by-zero` if a divisor can be zero; `expression.too-large`
 */
export function extremes(e: Expression, formOf: FormOf, region: Region): Extremes {
  return { low: oneEnd(e, formOf, region, 'low'), high: oneEnd(e, formOf, region, 'high') };
}

export function oneEnd(e: Expression, formOf: FormOf, region: Region, end: 'low' | 'high'): Extremes['low'] {
  const work = new Pieces(formOf, region);
  let found: Extremes['low'] | null = null;
  let refused: unknown = null;
  for (const p of work.of(e, end)) {
    const solved = work.solve(p);
    if ('refusal' in solved) {
      refused = solved.refusal;
      continue;
    }
    const side = solved[end];
    if (found === null || (end === 'low' ? side.value < found.value : side.value > found.value))
      found = { ...side, proven: p.exact ? side.proven : 'enclosure' };
  }
  if (!found) throw refused ?? new Error('no piece');
  const witness = found.witness.slice(0, region.variables.length);
  return { ...found, witness };
}

class Pieces {
  readonly #formOf: FormOf;
  readonly #variables: RegionVariable[];
  readonly #region: Region;
  constructor(formOf: FormOf, region: Region) {
    this.#formOf = formOf;
    this.#region = region;
    this.#variables = [...region.variables];
  }
  solve(p: Piece): Extremes | { refusal: Refusal } {
    const region = { variables: this.#variables, constraints: [...this.#region.constraints, ...p.cuts] };
    try {
      return linearExtremes(p.form, region);
    } catch (e) {
      if (isRefusal(e) && e.code === 'region.impossible') return { refusal: e };
      throw e;
    }
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
        return [{ form: constantForm(e.value), cuts: [], exact: true }];
      case 'fact':
        return [{ form: this.#formOf(e.name, e.zeroIfAbsent), cuts: [], exact: true }];
      case 'negate':
        return this.of(e.of, flip(sense)).map((p) => ({ ...p, form: scaleForm(p.form, -1) }));
      case 'floor':
        return this.of(e.of, 'exact').map((p) => this.#whole(p));
      case 'min':
      case 'max':
        return this.#oneOf(e.kind, e.of, sense);
      case 'choose':
        return [
          ...join(this.#when(e.when, true), this.of(e.yes, sense), (_, b) => b.form),
          ...join(this.#when(e.when, false), this.of(e.no, sense), (_, b) => b.form),
        ];
      case 'add':
        return join(this.of(e.left, sense), this.of(e.right, sense), (a, b) => addForms(a.form, b.form));
      case 'subtract':
        return join(this.of(e.left, sense), this.of(e.right, flip(sense)), (a, b) => subtractForms(a.form, b.form));
      default:
        return this.#product(e, sense);
    }
  }
  #product(e: Expression & { left: Expression; right: Expression; at?: number }, sense: Sense): Piece[] {
    const constant = (x: Expression): number | null => {
      const pieces = this.of(x, 'exact');
      return pieces.length === 1 && isConstant(pieces[0]!.form) ? pieces[0]!.form.constant : null;
    };
    const right = constant(e.right);
    if (right !== null) {
      if (e.kind === 'divide' && right === 0) throw dividesByZero('division by a figure that is zero', e.at);
      const k = e.kind === 'divide' ? 1 / right : right;
      return this.of(e.left, k < 0 ? flip(sense) : sense).map((p) => ({ ...p, form: scaleForm(p.form, k) }));
    }
    const left = e.kind === 'multiply' ? constant(e.left) : null;
    if (left !== null)
      return this.of(e.right, left < 0 ? flip(sense) : sense).map((p) => ({ ...p, form: scaleForm(p.form, left) }));
    const pairs = join(this.of(e.left, 'exact'), this.of(e.right, 'exact'), (a) => a.form, true);
    return pairs.flatMap((pair) => {
      const a = this.solve({ ...pair, form: pair.form });
      const b = this.solve({ ...pair, form: pair.other! });
      if ('refusal' in a || 'refusal' in b) return [];
      if (e.kind === 'divide' && b.low.value <= 0 && b.high.value >= 0)
        throw dividesByZero(`a divisor between ${b.low.value} and ${b.high.value}`, e.at);
      const ends = [a.low.value, a.high.value].flatMap((x) =>
        [b.low.value, b.high.value].map((y) => (e.kind === 'divide' ? x / y : x * y)),
      );
      const v = this.#fresh(Math.min(...ends), Math.max(...ends), false);
      return [{ form: variableForm(v), cuts: pair.cuts, exact: false }];
    });
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
    if (isConstant(p.form)) return { ...p, form: constantForm(Math.floor(p.form.constant + GRAIN / 2)) };
    const [low, high] = this.#box(p.form);
    const v = this.#fresh(Math.floor(low), Math.ceil(high), true);
    const gap = subtractForms(p.form, variableForm(v));
    return { form: variableForm(v), cuts: [...p.cuts, row(gap, -GRAIN / 2, 1 - GRAIN / 2)], exact: p.exact };
  }
  /** The smallest or largest of several. */
  #oneOf(kind: 'min' | 'max', of: readonly Expression[], sense: Sense): Piece[] {
    const parts = of.map((x) => this.of(x, sense));
    if (sense === (kind === 'min' ? 'low' : 'high')) return parts.flat();
    let combined: { forms: LinearForm[]; cuts: readonly RegionConstraint[]; exact: boolean }[] = [
      { forms: [], cuts: [], exact: true },
    ];
    for (const pieces of parts)
      combined = combined.flatMap((c) =>
        pieces.map((p) => ({
          forms: [...c.forms, p.form],
          cuts: [...c.cuts, ...p.cuts],
          exact: c.exact && p.exact,
        })),
      );
    const sign = kind === 'min' ? -1 : 1;
    if (sense === 'exact')
      return combined.flatMap((c) =>
        c.forms.map((form, i) => ({
          form,
          exact: c.exact,
          cuts: [
            ...c.cuts,
            ...c.forms.flatMap((f, j) =>
              i === j ? [] : [row(scaleForm(subtractForms(form, f), sign), 0, Number.POSITIVE_INFINITY)],
            ),
          ],
        })),
      );
    return combined.map((c) => {
      if (c.forms.every(isConstant)) {
        const values = c.forms.map((f) => f.constant);
        return { ...c, form: constantForm(kind === 'min' ? Math.min(...values) : Math.max(...values)) };
      }
      const boxes = c.forms.map((f) => this.#box(f));
      const v = this.#fresh(Math.min(...boxes.map((b) => b[0])) - 1, Math.max(...boxes.map((b) => b[1])) + 1, false);
      const cuts = c.forms.map((f) =>
        row(scaleForm(subtractForms(variableForm(v), f), sign), 0, Number.POSITIVE_INFINITY),
      );
      return { form: variableForm(v), cuts: [...c.cuts, ...cuts], exact: c.exact };
    });
  }
  /** Cases in which a condition holds, or does not. Their form means nothing. */
  #when(c: Condition, yes: boolean): Piece[] {
    if (c.kind === 'not') return this.#when(c.of, !yes);
    if (c.kind !== 'compare') {
      const both = (c.kind === 'and') === yes;
      const [a, b] = [this.#when(c.left, yes), this.#when(c.right, yes)];
      return both ? join(a, b, (x) => x.form) : [...a, ...b];
    }
    const op = yes ? c.op : OPPOSITE[c.op];
    const gaps = join(this.of(c.left, 'exact'), this.of(c.right, 'exact'), (a, b) => subtractForms(a.form, b.form));
    const ranges: Record<Comparison, [number, number][]> = {
      '<': [[Number.NEGATIVE_INFINITY, -GRAIN]],
      '<=': [[Number.NEGATIVE_INFINITY, 0]],
      '>': [[GRAIN, Number.POSITIVE_INFINITY]],
      '>=': [[0, Number.POSITIVE_INFINITY]],
      '==': [[0, 0]],
      '!=': [
        [Number.NEGATIVE_INFINITY, -GRAIN],
        [GRAIN, Number.POSITIVE_INFINITY],
      ],
    };
    return gaps.flatMap((g) =>
      ranges[op].flatMap(([low, high]) => {
        if (!isConstant(g.form)) return [{ ...g, cuts: [...g.cuts, row(g.form, low, high)] }];
        const value = g.form.constant;
        return value >= low - GRAIN / 2 && value <= high + GRAIN / 2 ? [g] : [];
      }),
    );
  }
}
const OPPOSITE: Record<Comparison, Comparison> = { '<': '>=', '>=': '<', '>': '<=', '<=': '>', '==': '!=', '!=': '==' };

const row = (form: LinearForm, low: number, high: number): RegionConstraint => ({
  name: 'a case of the formula',
  terms: form.terms,
  low: low - form.constant,
  high: high - form.constant,
});

function join(
  left: readonly Piece[],
  right: readonly Piece[],
  form: (a: Piece, b: Piece) => LinearForm,
  keep = false,
): (Piece & { other?: LinearForm })[] {
  return left.flatMap((a) =>
    right.map((b) => ({
      form: form(a, b),
      cuts: [...a.cuts, ...b.cuts],
      exact: a.exact && b.exact,
      ...(keep ? { other: b.form } : {}),
    })),
  );
}

/** The plain value of an expression in one possible history. */
export function valueIn(e: Expression, formOf: FormOf, history: readonly number[]): number {
  const facts = new Proxy({} as Record<string, number>, {
    get: (_, name: string) => formIn(formOf(name, true), history),
    has: () => true,
    getOwnPropertyDescriptor: (_, name: string) => ({
      value: formIn(formOf(name, true), history),
      enumerable: true,
      configurable: true,
      writable: true,
    }),
  });
  return evaluate(e, facts);
}
const formIn = (form: LinearForm, history: readonly number[]): number =>
  form.terms.reduce((t, [v, c]) => t + c * (history[v] ?? 0), form.constant);
