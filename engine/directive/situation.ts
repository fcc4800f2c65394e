import type { Day } from '../foundation/day.ts';
import type { LinearForm, Region } from '../foundation/region/index.ts';
import type { Policy } from '../record/index.ts';
import type { Action, DirectiveDocument, Origin } from './document.ts';
import type { FormOf, Vocabulary } from './expression/index.ts';
import type { Mix } from './model.ts';

export type Whose = 'part' | 'aircraft';
/** What a limit counts from: a day, with the facts as they stood then; `new` counts from nothing. */
export type Point = { readonly day: Day; readonly key: string; readonly entry?: string } | 'new';

/** All that a limit is held against: the same for a life of the record and for a test case. */
export interface Situation {
  readonly directive: DirectiveDocument;
  readonly action: Action;
  readonly vocabulary: Vocabulary;
  readonly day: Day;
  readonly region: Region;
  /** Facts by name and key: `now` or the day of an origin. Null: none carries it. */
  facts(key: string, whose: Whose): Readonly<Record<string, LinearForm>> | null;
  /** Null: nothing of the kind has happened. */
  point(origin: Origin): Point | null;
  readonly built: Day | null;
  readonly mix: Mix;
  readonly policy: Policy;
  /** Hours by which an approved alternative moves the limits. */
  readonly extends_h: number;
  /** The day from which the action stands: the effective date, or the finding that started it. */
  readonly start: Point & object;
  readonly done: { readonly day: Day; readonly key: string; readonly entry: string } | null;
}

/** Name of a fact at a moment of one life, as the joined expressions use it: `aircraft|2024-04-03|hours.total`. */
export const placed = (whose: Whose, key: string, name: string): string => `${whose}|${key}|${name}`;

export function formsOf(
  s: Situation,
  only?: (form: LinearForm, name: string, facts: Readonly<Record<string, LinearForm>>) => LinearForm,
): FormOf {
  return (full) => {
    const [whose, key, name] = full.split('|') as [Whose, string, string];
    const facts = s.facts(key, whose) ?? {};
    const form = Object.hasOwn(facts, name) ? facts[name]! : { constant: 0, terms: [] };
    return only ? only(form, name, facts) : form;
  };
}
