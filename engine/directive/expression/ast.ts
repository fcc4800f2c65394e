/**
 * The safe expression: numbers, facts, + - * /, min, max, floor and a choice by comparison. No lists, text,
 * loops or calls. Plain data: it can be stored, compared and built by other parts of the engine.
 */
export type Expression =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'fact'; readonly name: string; readonly zeroIfAbsent: boolean }
  | { readonly kind: Arithmetic; readonly left: Expression; readonly right: Expression; readonly at?: number }
  | { readonly kind: 'negate' | 'floor'; readonly of: Expression }
  | { readonly kind: 'min' | 'max'; readonly of: readonly Expression[] }
  | { readonly kind: 'choose'; readonly when: Condition; readonly yes: Expression; readonly no: Expression };

export type Arithmetic = 'add' | 'subtract' | 'multiply' | 'divide';
export type Comparison = '<' | '<=' | '>' | '>=' | '==' | '!=';
export type Condition =
  | { readonly kind: 'compare'; readonly op: Comparison; readonly left: Expression; readonly right: Expression }
  | { readonly kind: 'and' | 'or'; readonly left: Condition; readonly right: Condition }
  | { readonly kind: 'not'; readonly of: Condition };

/** Building blocks, so that the engine can compose one expression out of several. Shared parts may be shared objects. */
export const number = (value: number): Expression => ({ kind: 'number', value });
export const fact = (name: string, zeroIfAbsent = false): Expression => ({ kind: 'fact', name, zeroIfAbsent });
export const add = (left: Expression, right: Expression): Expression => ({ kind: 'add', left, right });
export const subtract = (left: Expression, right: Expression): Expression => ({ kind: 'subtract', left, right });
export const multiply = (left: Expression, right: Expression): Expression => ({ kind: 'multiply', left, right });
export const divide = (left: Expression, right: Expression): Expression => ({ kind: 'divide', left, right });
export const negate = (of: Expression): Expression => ({ kind: 'negate', of });
export const floor = (of: Expression): Expression => ({ kind: 'floor', of });
export const smallest = (...of: readonly Expression[]): Expression => (of.length === 1 ? of[0]! : { kind: 'min', of });
export const largest = (...of: readonly Expression[]): Expression => (of.length === 1 ? of[0]! : { kind: 'max', of });
export const choose = (when: Condition, yes: Expression, no: Expression): Expression => ({
  kind: 'choose',
  when,
  yes,
  no,
});
export const compare = (left: Expression, op: Comparison, right: Expression): Condition => ({
  kind: 'compare',
  op,
  left,
  right,
});
export const and = (left: Condition, right: Condition): Condition => ({ kind: 'and', left, right });
export const or = (left: Condition, right: Condition): Condition => ({ kind: 'or', left, right });
export const not = (of: Condition): Condition => ({ kind: 'not', of });

/** The same expression over facts of other names (for example as they stood on the effective date). Shared parts stay shared. */
export function renameFacts(expression: Expression, rename: (name: string) => string): Expression {
  const seen = new Map<Expression, Expression>();
  const again = (e: Expression): Expression => {
    const done = seen.get(e);
    if (done) return done;
    const made = one(e);
    seen.set(e, made);
    return made;
  };
  const one = (e: Expression): Expression => {
    if ('left' in e) return { ...e, left: again(e.left), right: again(e.right) };
    switch (e.kind) {
      case 'number':
        return e;
      case 'fact':
        return { ...e, name: rename(e.name) };
      case 'min':
      case 'max':
        return { ...e, of: e.of.map(again) };
      case 'choose':
        return { ...e, when: test(e.when), yes: again(e.yes), no: again(e.no) };
      default:
        return { ...e, of: again(e.of) };
    }
  };
  const test = (c: Condition): Condition => {
    if (c.kind === 'compare') return { ...c, left: again(c.left), right: again(c.right) };
    if (c.kind === 'not') return { ...c, of: test(c.of) };
    return { ...c, left: test(c.left), right: test(c.right) };
  };
  return again(expression);
}

/** Names of all facts an expression or condition speaks of, each once, in order of appearance. */
export function factsOf(whole: Expression | Condition): string[] {
  const names = new Set<string>();
  const seen = new Set<object>();
  const walk = (e: Expression | Condition): void => {
    if (seen.has(e)) return;
    seen.add(e);
    if (e.kind === 'fact') names.add(e.name);
    else if (e.kind === 'choose') for (const part of [e.when, e.yes, e.no]) walk(part);
    else if ('of' in e) for (const part of [e.of].flat() as (Expression | Condition)[]) walk(part);
    else if ('left' in e) for (const part of [e.left, e.right]) walk(part);
  };
  walk(whole);
  return [...names];
}
