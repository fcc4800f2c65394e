import type { Day } from '../../foundation/day.ts';
import type { Verdict } from '../affected.ts';
import { groupsOf } from '../affected.ts';
import { inForce } from '../assess-all.ts';
import { runCases } from '../cases.ts';
import type { Action, DirectiveDocument, Group, Limit, Origin } from '../document.ts';
import { type Condition, type Expression, factsOf, type Vocabulary } from '../expression/index.ts';
import { limitsOf } from '../read.ts';
import { conditionOf, expressionOf, vocabularyOf } from '../vocabulary.ts';
import { limitInWords } from '../words.ts';
import { type Linear, linearOf, type Term, termsOf } from './linear.ts';

export interface Counting {
  readonly expression: Expression;
  readonly facts: readonly string[];
  readonly linear: Linear | null;
  readonly terms: readonly Term[];
}
/** An action made ready to be held against many parts. */
export interface SwiftAction {
  readonly directive: DirectiveDocument;
  readonly action: Action;
  readonly groups: readonly Group[];
  /** True where the verdict hangs on model, part number and day built alone, so that it is found once for each. */
  readonly verdictByKind: boolean;
  readonly verdicts: Map<string, Verdict>;
  /** What its groups ask for. */
  readonly asks: { readonly model: boolean; readonly part: boolean; readonly built: boolean };
  readonly counting: Counting | null;
  readonly conditions: ReadonlyMap<string, Condition>;
  readonly words: ReadonlyMap<Limit, string>;
  readonly vocabulary: Vocabulary;
  /** Why no part can be answered this way, or null. */
  readonly whole: string | null;
}
export interface SwiftRules {
  readonly directives: readonly DirectiveDocument[];
  readonly actions: readonly SwiftAction[];
  /** Of each kind of thing: the directives that look at it, which is what its life is cut by. */
  readonly byWhat: ReadonlyMap<string, readonly DirectiveDocument[]>;
  readonly origins: ReadonlyMap<DirectiveDocument, readonly Origin[]>;
}

/** The directives in force on a day, made ready for `swiftLines`. @throws Refusal those of their formulas */
export function swiftRules(directives: readonly DirectiveDocument[], day: Day): SwiftRules {
  const rules = inForce(directives, day);
  const what = new Set(rules.flatMap((d) => d.actions.map((a) => a.looks_at)));
  const originOf = (l: Limit): Origin[] => ('since' in l && l.since !== undefined ? [l.since] : []);
  return {
    directives: rules,
    actions: rules.flatMap((d) => {
      const failed = runCases(d).some((c) => !c.passes);
      return d.actions.map((a) => actionOf(d, a, failed));
    }),
    byWhat: new Map([...what].map((w) => [w, rules.filter((d) => d.actions.some((a) => a.looks_at === w))])),
    origins: new Map(rules.map((d) => [d, d.actions.flatMap((a) => limitsOf(a).flatMap(originOf))])),
  };
}

function countingOf(expression: Expression): Counting {
  const linear = linearOf(expression);
  return { expression, facts: factsOf(expression), linear, terms: linear ? termsOf(linear) : [] };
}

function actionOf(directive: DirectiveDocument, action: Action, failed: boolean): SwiftAction {
  const vocabulary = vocabularyOf(directive.cases);
  const limits = limitsOf(action);
  const groups = groupsOf(directive, action.affects);
  const expression = action.counts && !failed ? expressionOf(action.counts.expression, vocabulary) : null;
  const conditions = failed ? [] : limits.flatMap((l) => ('when' in l ? [l.when] : []));
  return {
    directive,
    action,
    groups,
    verdictByKind: groups.every((g) => !g.uses && !g.condition && !g.models?.some((m) => m.serials || m.except)),
    verdicts: new Map(),
    asks: {
      model: groups.some((g) => g.models),
      part: groups.some((g) => g.part_numbers || g.not_part_numbers),
      built: groups.some((g) => g.built_before || g.built_from),
    },
    counting: expression && countingOf(expression),
    conditions: new Map(conditions.map((source) => [source, conditionOf(source, vocabulary)])),
    words: new Map(limits.map((l) => [l, limitInWords(l, action)])),
    vocabulary,
    whole: failed
      ? 'a test case of its own fails'
      : limits.some((l) => 'next_inspection' in l)
        ? 'it counts inspections'
        : groups.some((g) => g.condition)
          ? 'its group asks a condition'
          : null,
  };
}
