import { parseDocument } from '../foundation/document.ts';
import { isRefusal, Refusal, type RefusalDetail } from '../foundation/refusal.ts';
import type { RefusalCode } from '../foundation/refusal-codes.ts';
import { type Action, type DirectiveDocument, type Group, type Limit, zDirectiveDocument } from './document.ts';
import { serialsProblem } from './serials.ts';
import { conditionOf, expressionOf, vocabularyOf } from './vocabulary.ts';

/** All limits of a tree, the branches included. */
export function limitsIn(limit: Limit): Limit[] {
  return placedLimits(limit, '').map((x) => x.limit);
}
export const limitsOf = (a: Action): Limit[] => [a.first, a.repeat].flatMap((l) => (l ? limitsIn(l) : []));

interface PlacedLimit {
  readonly limit: Limit;
  readonly path: string;
}
function placedLimits(limit: Limit, path: string): PlacedLimit[] {
  const own = { limit, path };
  if ('first_of' in limit) return [own, ...limit.first_of.flatMap((l, i) => placedLimits(l, `${path}.first_of.${i}`))];
  if ('later_of' in limit) return [own, ...limit.later_of.flatMap((l, i) => placedLimits(l, `${path}.later_of.${i}`))];
  if ('when' in limit)
    return [own, ...placedLimits(limit.limit, `${path}.limit`), ...placedLimits(limit.otherwise, `${path}.otherwise`)];
  return [own];
}

/** What keeps a directive from being whole, at its place in the document. */
export interface RuleProblem extends RefusalDetail {
  readonly path: string;
  readonly code: RefusalCode;
}

/**
 * Reads a directive and checks it as a whole.
 * @throws Refusal `foundation.document-invalid`, `directive.incomplete`, `directive.action-unknown`,
 *   `directive.serials-reversed`, `directive.loop`, `directive.case-missing`, and those of expressions
 */
export function readDirective(input: unknown): DirectiveDocument {
  const d = parseDocument(zDirectiveDocument, input, 'directive');
  const [first] = ruleProblems(d);
  if (first) {
    const { path: _, code, ...detail } = first;
    throw new Refusal(code, detail);
  }
  return d;
}

/** Everything about a directive that its schema cannot see: names that lead nowhere, formulas, limits without a formula, loops. */
export function ruleProblems(d: DirectiveDocument): RuleProblem[] {
  const found: RuleProblem[] = [];
  const words = vocabularyOf(d.cases);
  const ids = new Set(d.actions.map((a) => a.id));
  const add = (
    code: 'incomplete' | 'action-unknown' | 'serials-reversed' | 'case-missing',
    path: string,
    given: string,
    remedy: string,
  ) => {
    found.push({
      path,
      code: `directive.${code}`,
      given: `directive ${d.number}: ${given}`,
      allowed: 'a rule that is whole',
      remedy,
    });
  };
  const formula = (path: string, read: () => unknown) => {
    try {
      read();
    } catch (e) {
      if (!isRefusal(e)) throw e;
      found.push({ path, code: e.code, ...e.detail });
    }
  };
  const known = (id: string, where: string, path: string) => {
    if (!ids.has(id))
      add('action-unknown', path, `${where} names action "${id}"`, `Name one of ${[...ids].join(', ')}`);
  };
  const group = (g: Group, where: string, path: string) => {
    for (const [i, m] of (g.models ?? []).entries())
      for (const list of ['serials', 'except'] as const)
        for (const [k, s] of (m[list] ?? []).entries()) {
          const problem = serialsProblem(s);
          if (problem)
            add(
              'serials-reversed',
              `${path}.models.${i}.${list}.${k}`,
              `${where}: ${problem}`,
              'Write the lower serial first, both of one series',
            );
        }
    if (g.condition) formula(`${path}.condition`, () => conditionOf(g.condition!, words));
  };
  const limits = (a: Action, at: string) => {
    for (const which of ['first', 'repeat'] as const)
      for (const { limit: l, path } of a[which] ? placedLimits(a[which], `${at}.${which}`) : []) {
        if ('counted' in l && !a.counts)
          add('incomplete', path, `action "${a.id}" has a counted limit but counts nothing`, 'Write its formula');
        if ('when' in l) formula(`${path}.when`, () => conditionOf(l.when, words));
        if (!('since' in l) || typeof l.since !== 'object') continue;
        if ('finding' in l.since) known(l.since.finding.action, `a limit of "${a.id}"`, `${path}.since.finding.action`);
        if ('last_look' in l.since)
          for (const [i, k] of l.since.last_look.entries())
            if (k.directive === d.number)
              known(k.action, `a limit of "${a.id}"`, `${path}.since.last_look.${i}.action`);
      }
  };
  if (ids.size !== d.actions.length) {
    const i = d.actions.findIndex((a, n) => d.actions.findIndex((b) => b.id === a.id) !== n);
    add('incomplete', `actions.${i}.id`, 'two actions have one id', 'Give each action its own id');
  }
  if (d.effective < d.issued)
    add('incomplete', 'effective', 'it is effective before it was issued', 'Correct the two dates');
  group(d.affects, 'affects', 'affects');
  for (const [i, a] of d.actions.entries()) {
    const at = `actions.${i}`;
    if (a.affects) group(a.affects, a.id, `${at}.affects`);
    if (a.counts) formula(`${at}.counts.expression`, () => expressionOf(a.counts!.expression, words));
    if (!a.first && !a.started_by?.length)
      add(
        'incomplete',
        `${at}.first`,
        `action "${a.id}" has neither a first limit nor a finding that starts it`,
        'Say when it is first due',
      );
    for (const [k, s] of (a.started_by ?? []).entries())
      known(s.action, `started_by of "${a.id}"`, `${at}.started_by.${k}.action`);
    for (const [k, e] of (a.ended_by ?? []).entries())
      if ('action' in e) known(e.action, `ended_by of "${a.id}"`, `${at}.ended_by.${k}.action`);
    limits(a, at);
    if (!d.cases.some((c) => c.action === a.id))
      add(
        'case-missing',
        `${at}.id`,
        `action "${a.id}" has no test case`,
        'Write at least one case with facts and what must come out',
      );
  }
  for (const [i, c] of d.cases.entries()) known(c.action, `case "${c.name}"`, `cases.${i}.action`);
  for (const [i, a] of d.actions.entries()) {
    const loop = loopFrom(d, a.id, []);
    if (loop)
      found.push({
        path: `actions.${i}.started_by`,
        code: 'directive.loop',
        given: `directive ${d.number}: ${loop.join(' is started by ')}`,
        allowed: 'actions that start one after the other',
        remedy: 'Let the first of them start by a limit alone',
      });
  }
  return found;
}

/** The way round, if an action is started by itself through others. */
function loopFrom(d: DirectiveDocument, id: string, way: readonly string[]): readonly string[] | null {
  if (way.includes(id)) return [...way, id];
  const action = d.actions.find((a) => a.id === id);
  for (const s of action?.started_by ?? []) {
    const loop = loopFrom(d, s.action, [...way, id]);
    if (loop) return loop;
  }
  return null;
}
