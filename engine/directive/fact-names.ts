import { USES } from '../record/index.ts';
import { factWords } from './read-back.ts';

/** A fact that a formula may name, with its meaning in plain words and its unit. */
export interface FactName {
  readonly name: string;
  readonly meaning: string;
  readonly unit: 'h' | 'landings' | 'count' | 'days';
}
/** Words of a shop's record that become part of fact names. */
export interface KnownWords {
  readonly uses?: readonly string[];
  readonly kits?: readonly string[];
  readonly events?: readonly string[];
  readonly inspections?: readonly string[];
}

export function unitOfFact(name: string): FactName['unit'] {
  if (name === 'age.days') return 'days';
  if (name.startsWith('hours.') || name.endsWith('.hours')) return 'h';
  return name.startsWith('landings.') || name.endsWith('.landings') ? 'landings' : 'count';
}

/** Every fact that can be offered while a formula is typed: totals, the usual uses, and what the words of a record make. */
export function factNames(known: KnownWords = {}): FactName[] {
  const uses = [...new Set([...USES, ...(known.uses ?? [])])];
  const pair = (of: (what: string) => string) => ['hours', 'landings'].map(of);
  const names = [
    'hours.total',
    'landings.total',
    'age.days',
    ...uses.map((u) => `hours.${u}`),
    ...uses.map((u) => `landings.${u}`),
    ...(known.kits ?? []).flatMap((k) => pair((w) => `kit.${k}.${w}`)),
    ...(known.events ?? []).flatMap((e) => [...pair((w) => `since.${e}.${w}`), `count.${e}`]),
    ...(known.inspections ?? []).map((i) => `inspections.${i}`),
  ];
  return [...new Set(names)].map((name) => ({ name, meaning: factWords(name), unit: unitOfFact(name) }));
}
