import type { FormulaShown } from '../../../../sheets/index.ts';
import { isList, isTable, type Json, type Table } from '../../../parts/write/json.ts';
import type { Draft } from './draft.ts';

const NAME = /\b(?:hours|landings|since|kit|inspections|count|age)\.[a-z_][a-z0-9_.]*/g;
const FORMULAS = new Set(['expression', 'condition', 'when']);

/** Facts that the rule's formulas and conditions name, with the totals, as one formula to be asked for. */
export function factsAsked(draft: Draft): string {
  const named = new Set(['hours.total', 'landings.total']);
  const walk = (v: Json | undefined): void => {
    if (isList(v)) for (const x of v) walk(x);
    else if (isTable(v))
      for (const [k, x] of Object.entries(v)) {
        if (typeof x === 'string' && FORMULAS.has(k)) for (const m of x.match(NAME) ?? []) named.add(m);
        else walk(x);
      }
  };
  walk(draft.actions);
  walk(draft.affects);
  return [...named].join(' + ');
}

/** A case with the figures of one part. Where papers are missing, the higher figure stands in it, and its name says so. */
export function caseFromLife(shown: FormulaShown, part: FormulaShown['parts'][number], action: string): Table {
  const open = part.facts.some((f) => f.low !== f.high);
  return {
    name: `${shown.aircraft}, ${part.name}${open ? ', the higher figures that its papers allow' : ''}`,
    action,
    day: shown.day,
    ...(shown.model ? { model: shown.model } : {}),
    ...(shown.serial ? { serial: shown.serial } : {}),
    ...(shown.built ? { built: shown.built } : {}),
    ...(part.part_number ? { part_number: part.part_number } : {}),
    facts: part.facts.map((f) => ({ name: f.name, value: f.high })),
    expect: {},
  };
}
