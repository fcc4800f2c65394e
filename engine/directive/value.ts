import type { Bounds } from '../foundation/bounds.ts';
import { isRefusal } from '../foundation/refusal.ts';
import { type LinearForm, linearExtremes } from '../foundation/region/index.ts';
import type { Life } from '../record/index.ts';
import {
  choose,
  type Expression,
  extremes,
  factsOf,
  number,
  parseCondition,
  parseExpression,
  readBack,
  readBackCondition,
  rounded,
  type Vocabulary,
} from './expression/index.ts';
import { type FactName, unitOfFact } from './fact-names.ts';
import { factWords } from './read-back.ts';
import { vocabularyOf } from './vocabulary.ts';

/** What a formula comes to on one life, with the facts it is made of. */
export interface FormulaValue extends Bounds {
  readonly proven: 'exact' | 'enclosure';
  readonly facts: readonly (FactName & Bounds)[];
  /** Facts of events, kits or inspections that this life knows nothing of: they count as zero. */
  readonly unknown: readonly string[];
}
export interface FormulaProblem {
  readonly given: string;
  readonly allowed: string;
  readonly remedy: string;
  /** Place in the formula, counted from 1. */
  readonly position?: number;
}
export type FormulaKind = 'number' | 'condition';
export type Formula =
  | {
      readonly expression: Expression;
      readonly kind: FormulaKind;
      readonly words: string;
      readonly unit: FactName['unit'];
    }
  | { readonly problem: FormulaProblem };

/** Turns what refuses into a problem with its place. */
export function problemOr<T>(make: () => T): T | { problem: FormulaProblem } {
  try {
    return make();
  } catch (e) {
    if (!isRefusal(e)) throw e;
    const { given, allowed, remedy, place } = e.detail;
    return { problem: { given, allowed, remedy, ...(place === undefined ? {} : { position: place }) } };
  }
}

/** A formula as it is typed: read against the facts that directives may speak of and those of a record, with its words. Never refuses. */
export function readFormula(source: string, kind: FormulaKind, names: readonly string[] = []): Formula {
  const base = vocabularyOf([]);
  const known: Vocabulary = { ...base, families: [...(base.families ?? []), ...names.filter((n) => n.includes('.'))] };
  return problemOr((): Formula => {
    if (kind === 'condition') {
      const c = parseCondition(source, known);
      const expression = choose(c, number(1), number(0));
      return { expression, kind, words: readBackCondition(c, factWords), unit: 'count' };
    }
    const expression = parseExpression(source, known);
    return { expression, kind, words: readBack(expression, factWords), unit: unitOf(expression) };
  });
}

/** The unit that all its facts share; a mixture is a count of its own. */
function unitOf(e: Expression): FactName['unit'] {
  const units = new Set(factsOf(e).map(unitOfFact));
  return units.size === 1 ? [...units][0]! : 'count';
}

/**
 * Least and greatest value of a formula over all possible histories of one life, on its last day.
 * A condition is 1 where it holds and 0 where it does not.
 * @throws Refusal as `extremes`
 */
export function formulaValue(expression: Expression, life: Life): FormulaValue {
  const facts = life.at(life.until);
  const none: LinearForm = { constant: 0, terms: [] };
  const form = (name: string) => (Object.hasOwn(facts, name) ? facts[name]! : none);
  const { low, high } = extremes(expression, form, life.region);
  const names = factsOf(expression);
  const bounds = (name: string): Bounds => {
    const e = linearExtremes(form(name), life.region);
    return { low: rounded(e.low.value), high: rounded(e.high.value) };
  };
  return {
    low: rounded(low.value),
    high: rounded(high.value),
    proven: low.proven === 'exact' && high.proven === 'exact' ? 'exact' : 'enclosure',
    facts: names.map((name) => ({ name, meaning: factWords(name), unit: unitOfFact(name), ...bounds(name) })),
    unknown: names.filter((n) => !Object.hasOwn(facts, n) && !/^(hours|landings)\./.test(n)),
  };
}
