import { parseDocument } from '../foundation/document.ts';
import { Refusal } from '../foundation/refusal.ts';
import { type Action, type DirectiveDocument, type Group, type Limit, zDirectiveDocument } from './document.ts';
import { serialsProblem } from './serials.ts';
import { conditionOf, expressionOf, vocabularyOf } from './vocabulary.ts';

/** All limits of a tree, the branches included. */
export function limitsIn(limit: Limit): Limit[] {
  if ('first_of' in limit) return [limit, ...limit.first_of.flatMap(limitsIn)];
  if ('later_of' in limit) return [limit, ...limit.later_of.flatMap(limitsIn)];
  if ('when' in limit) return [limit, ...limitsIn(limit.limit), ...limitsIn(limit.otherwise)];
  return [limit];
}
export const limitsOf = (a: Action): Limit[] => [a.first, a.repeat].flatMap((l) => (l ? limitsIn(l) : []));

/**
 * Reads a directive and checks it as a whole.
 * @throws Refusal `foundation.document-invalid`, `directive.incomplete`, `directive.action-unknown`,
 *   `directive.serials-reversed`, `directive.loop`, `directive.case-missing`, and those of expressions
 */
export function readDirective(input: unknown): DirectiveDocument {
  const d = parseDocument(zDirectiveDocument, input, 'directive');
  const words = vocabularyOf(d.cases);
  const ids = new Set(d.actions.map((a) => a.id));
  const refuse = (
    code: 'incomplete' | 'action-unknown' | 'serials-reversed' | 'case-missing',
    given: string,
    remedy: string,
  ) => {
    throw new Refusal(`directive.${code}`, {
      given: `directive ${d.number}: ${given}`,
      allowed: 'a rule that is whole',
      remedy,
    });
  };
  if (ids.size !== d.actions.length) refuse('incomplete', 'two actions have one id', 'Give each action its own id');
  if (d.effective < d.issued) refuse('incomplete', 'it is effective before it was issued', 'Correct the two dates');
  const known = (id: string, where: string) => {
    if (!ids.has(id)) refuse('action-unknown', `${where} names action "${id}"`, `Name one of ${[...ids].join(', ')}`);
  };
  const group = (g: Group, where: string) => {
    for (const m of g.models ?? [])
      for (const s of [...(m.serials ?? []), ...(m.except ?? [])]) {
        const problem = serialsProblem(s);
        if (problem)
          refuse('serials-reversed', `${where}: ${problem}`, 'Write the lower serial first, both of one series');
      }
    if (g.condition) conditionOf(g.condition, words);
  };
  group(d.affects, 'affects');
  for (const a of d.actions) {
    if (a.affects) group(a.affects, a.id);
    if (a.counts) expressionOf(a.counts.expression, words);
    if (!a.first && !a.started_by?.length)
      refuse(
        'incomplete',
        `action "${a.id}" has neither a first limit nor a finding that starts it`,
        'Say when it is first due',
      );
    for (const s of a.started_by ?? []) known(s.action, `started_by of "${a.id}"`);
    for (const e of a.ended_by ?? []) if ('action' in e) known(e.action, `ended_by of "${a.id}"`);
    for (const l of limitsOf(a)) {
      if ('counted' in l && !a.counts)
        refuse('incomplete', `action "${a.id}" has a counted limit but counts nothing`, 'Write its formula');
      if ('when' in l) conditionOf(l.when, words);
      if ('since' in l && typeof l.since === 'object') {
        if ('finding' in l.since) known(l.since.finding.action, `a limit of "${a.id}"`);
        if ('last_look' in l.since)
          for (const k of l.since.last_look) if (k.directive === d.number) known(k.action, `a limit of "${a.id}"`);
      }
    }
    if (!d.cases.some((c) => c.action === a.id))
      refuse(
        'case-missing',
        `action "${a.id}" has no test case`,
        'Write at least one case with facts and what must come out',
      );
  }
  for (const c of d.cases) known(c.action, `case "${c.name}"`);
  for (const a of d.actions) follow(d, a.id, []);
  return d;
}

function follow(d: DirectiveDocument, id: string, way: readonly string[]): void {
  if (way.includes(id))
    throw new Refusal('directive.loop', {
      given: `directive ${d.number}: ${[...way, id].join(' is started by ')}`,
      allowed: 'actions that start one after the other',
      remedy: 'Let the first of them start by a limit alone',
    });
  const action = d.actions.find((a) => a.id === id);
  for (const s of action?.started_by ?? []) follow(d, s.action, [...way, id]);
}
