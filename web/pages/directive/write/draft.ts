import { isTable, type Json, listOf, type Table, tableOf, textOf } from '../../../parts/write/json.ts';

/**
 * The form holds the document itself, with one difference: facts of a case are rows, so that a name can be typed
 * letter by letter without losing its figure.
 */
export type Draft = Table;

const rowsOf = (facts: Json | undefined): Json =>
  Object.entries(tableOf(facts)).map(([name, value]) => ({ name, value }));
const factsOf = (rows: Json | undefined): Json =>
  Object.fromEntries(listOf(rows).map((r) => [nameOf(tableOf(r).name), tableOf(r).value ?? '']));
/** No program takes this word for the name of a figure; quoted it is a name like any other that means nothing. */
const nameOf = (name: Json | undefined): string => (name === '__proto__' ? "'__proto__'" : textOf(name));

const mapCases = (whole: Table, change: (c: Table) => Table): Table =>
  Array.isArray(whole.cases) ? { ...whole, cases: whole.cases.map((c) => (isTable(c) ? change(c) : c)) } : whole;

/** A document as the form holds it. Anything may be given: what the form does not know it keeps. */
export const draftOf = (document: Json): Draft =>
  mapCases(tableOf(document), (c) => ({
    ...c,
    ...('facts' in c ? { facts: rowsOf(c.facts) } : {}),
    ...('facts_at' in c
      ? {
          facts_at: Object.entries(tableOf(c.facts_at)).map(([origin, p]) => ({
            ...tableOf(p),
            origin,
            facts: rowsOf(tableOf(p).facts),
          })),
        }
      : {}),
  }));

/** The document that is sent, kept, exported. */
export const documentOf = (draft: Draft): Table =>
  mapCases(draft, (c) => ({
    ...c,
    ...('facts' in c ? { facts: factsOf(c.facts) } : {}),
    ...('facts_at' in c
      ? {
          facts_at: Object.fromEntries(
            listOf(c.facts_at).map((row) => {
              const { origin, ...point } = tableOf(row);
              return [nameOf(origin), { ...point, facts: factsOf(point.facts) }];
            }),
          ),
        }
      : {}),
  }));

/** A rule with nothing in it but what every rule has. */
export const emptyDraft = (day: string): Draft => ({
  sparwright: 'directive/1',
  issue: 1,
  rank: 'directive',
  issued: day,
  effective: day,
  known: 'read',
  affects: {},
  actions: [newAction(1)],
  cases: [],
});
const newAction = (n: number): Table => ({
  id: `action_${n}`,
  does: 'inspect',
  missing_papers: 'bounds',
});
/** An action's short word that no other bears. */
export function nextAction(draft: Draft): Table {
  const taken = new Set(listOf(draft.actions).map((a) => textOf(tableOf(a).id)));
  let n = taken.size + 1;
  while (taken.has(`action_${n}`)) n += 1;
  return newAction(n);
}
export const newCase = (action: string, day: string): Table => ({
  name: '',
  action,
  day,
  facts: [],
  expect: { standing: 'not yet due' },
});

/** The next issue of a rule in force: same text, next number, its dates to be filled in. */
export function nextIssue(document: Json): Draft {
  const { issued: _issued, effective, ...rest } = tableOf(document);
  const issue = Number(rest.issue ?? 0);
  return draftOf({
    ...rest,
    issue: issue + 1,
    supersedes: [{ number: rest.number ?? '', issue, ...(effective === undefined ? {} : { effective }) }],
  });
}
