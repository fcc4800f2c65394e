import { USES } from '../record/index.ts';
import {
  type Condition,
  type Expression,
  parseCondition,
  parseExpression,
  type Vocabulary,
} from './expression/index.ts';

/** Families of facts: members that the record does not know are zero. */
const FAMILIES = ['inspections.*', 'kit.*.hours', 'kit.*.landings', 'since.*.hours', 'since.*.landings', 'count.*'];

/** What a directive may speak of: totals, the usual uses, and whatever its own test cases name. */
export function vocabularyOf(cases: readonly { readonly facts: Readonly<Record<string, number>> }[]): Vocabulary {
  const families = new Set(FAMILIES);
  for (const u of USES) {
    families.add(`hours.${u}`);
    families.add(`landings.${u}`);
  }
  for (const c of cases)
    for (const name of Object.keys(c.facts)) if (/^(hours|landings)\./.test(name)) families.add(name);
  return { names: ['hours.total', 'landings.total', 'age.days'], families: [...families] };
}

const kept = new Map<string, unknown>();
function remember<T>(key: string, make: () => T): T {
  if (!kept.has(key)) {
    if (kept.size > 2000) kept.clear();
    kept.set(key, make());
  }
  return kept.get(key) as T;
}
const keyOf = (source: string, v: Vocabulary) => `${source}|${(v.families ?? []).join()}`;
export const expressionOf = (source: string, v: Vocabulary): Expression =>
  remember(`n|${keyOf(source, v)}`, () => parseExpression(source, v));
export const conditionOf = (source: string, v: Vocabulary): Condition =>
  remember(`c|${keyOf(source, v)}`, () => parseCondition(source, v));
