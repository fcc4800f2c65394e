import type { LinearForm, LinearTerm } from './model.ts';

/** A figure that the papers settle. */
export const constantForm = (constant: number): LinearForm => ({ constant, terms: [] });
export const variableForm = (variable: number, coefficient = 1): LinearForm => ({
  constant: 0,
  terms: coefficient === 0 ? [] : [[variable, coefficient]],
});

function collect(terms: Iterable<LinearTerm>): LinearTerm[] {
  const sums = new Map<number, number>();
  for (const [v, c] of terms) sums.set(v, (sums.get(v) ?? 0) + c);
  return [...sums].filter(([, c]) => c !== 0).sort((a, b) => a[0] - b[0]);
}

/** Sum of forms; terms of one variable are gathered, vanishing ones dropped, in the order of the variables. */
export const addForms = (...forms: readonly LinearForm[]): LinearForm => ({
  constant: forms.reduce((t, f) => t + f.constant, 0),
  terms: collect(forms.flatMap((f) => f.terms)),
});
export const scaleForm = (form: LinearForm, k: number): LinearForm => ({
  constant: form.constant * k,
  terms: k === 0 ? [] : form.terms.map(([v, c]) => [v, c * k] as const),
});
export const subtractForms = (a: LinearForm, b: LinearForm): LinearForm => addForms(a, scaleForm(b, -1));
export const isConstant = (form: LinearForm): boolean => form.terms.length === 0;

/** Value of the form in one possible history. */
export const evaluateForm = (form: LinearForm, history: readonly number[]): number =>
  form.terms.reduce((t, [v, c]) => t + c * history[v]!, form.constant);
