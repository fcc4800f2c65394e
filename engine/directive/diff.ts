import type { Action, DirectiveDocument, Group } from './document.ts';
import { readBackCondition, readBack as sayExpression } from './expression/index.ts';
import { factWords, group, limitSaid } from './read-back.ts';
import { conditionOf, expressionOf, vocabularyOf } from './vocabulary.ts';
import { plain } from './words.ts';

/** One field that two issues of a rule give otherwise, in plain words. Null: it is not there. */
export interface FieldChange {
  readonly where: string;
  readonly what: string;
  readonly was: string | null;
  readonly is: string | null;
}

/** What a newer text changes, field by field: the rule, each action by its word, each test case by its name. */
export function diffOf(was: DirectiveDocument, is: DirectiveDocument): FieldChange[] {
  return [
    ...between('The rule', ruleFields(was), ruleFields(is)),
    ...inGroups(actionsOf(was), actionsOf(is)),
    ...between('Test cases', casesOf(was), casesOf(is)),
  ];
}

type Fields = ReadonlyMap<string, string>;
type Said = readonly [what: string, words: string | undefined | null];
const fields = (said: readonly Said[]): Fields =>
  new Map(said.flatMap(([what, words]) => (words ? [[what, words] as const] : [])));

function between(where: string, was: Fields, is: Fields): FieldChange[] {
  return [...new Set([...is.keys(), ...was.keys()])].flatMap((what) => {
    const [a, b] = [was.get(what) ?? null, is.get(what) ?? null];
    return a === b ? [] : [{ where, what, was: a, is: b }];
  });
}
type Actions = ReadonlyMap<string, { readonly title: string; readonly fields: Fields }>;
function inGroups(was: Actions, is: Actions): FieldChange[] {
  return [...new Set([...is.keys(), ...was.keys()])].flatMap((id) => {
    const [a, b] = [was.get(id), is.get(id)];
    const where = (b ?? a)!.title;
    if (!a || !b) return [{ where, what: 'Action', was: a ? 'asked' : null, is: b ? 'asked' : null }];
    return between(where, a.fields, b.fields);
  });
}

function ruleFields(d: DirectiveDocument): Fields {
  return fields([
    ['Title', d.title],
    ['Authority', d.authority],
    ['Rank', d.rank],
    ['Issued', d.issued],
    ['Effective', d.effective],
    ['Supersedes', listed(d.supersedes?.map((s) => `${s.number}${s.issue ? ` issue ${s.issue}` : ''}`))],
    ['Reason', d.unsafe_condition],
    ['Text read at', d.reference],
    ['How well known', d.known],
    ['Only part of the text was read', d.extract],
    ['Whom it affects', groupWords(d, d.affects)],
  ]);
}
const listed = (all: readonly string[] | undefined, by = '; '): string | undefined =>
  all?.length ? all.join(by) : undefined;

const conditions = (d: DirectiveDocument) => {
  const words = vocabularyOf(d.cases);
  return (c: string): string => readBackCondition(conditionOf(c, words), factWords);
};
const groupWords = (d: DirectiveDocument, g: Group | undefined): string | undefined =>
  g && group(g, conditions(d)).join(' ');

const actionsOf = (d: DirectiveDocument): Actions =>
  new Map(d.actions.map((a) => [a.id, { title: a.title, fields: actionFields(d, a) }]));

function actionFields(d: DirectiveDocument, a: Action): Fields {
  const say = conditions(d);
  const limit = (l: Action['first']) => l && limitSaid(l, a, say);
  const ends = a.ended_by?.map((e) => {
    if ('action' in e) return `${plain(e.action)}${e.finding ? `, finding "${plain(e.finding)}"` : ''}`;
    return 'kit' in e ? `kit ${plain(e.kit)}` : `part number ${e.part_number}`;
  });
  const credit = a.credit?.map(
    (c) => `${c.directive}, ${plain(c.action)}${c.not_before ? `, not before ${c.not_before}` : ''}`,
  );
  const { access, report_within_days: days, hangar_days: hangar } = a.needs ?? {};
  return fields([
    ['Title', a.title],
    ['What is done', plain(a.does)],
    ['Method', a.method],
    ['Looks at', plain(a.looks_at)],
    ['Whom this action affects', groupWords(d, a.affects)],
    [
      'Counts',
      a.counts &&
        `${sayExpression(expressionOf(a.counts.expression, vocabularyOf(d.cases)), factWords)} (${a.counts.called}, ${a.counts.unit})`,
    ],
    ['First due', limit(a.first)],
    [
      'Started by',
      listed(
        a.started_by?.map((s) => `${plain(s.action)} finds "${plain(s.finding)}"`),
        ' or ',
      ),
    ],
    ['Then again', limit(a.repeat) ?? 'not again'],
    ['Earlier work that counts', listed(credit)],
    ['Ended by', listed(ends, ' or ')],
    ['May no longer be fitted', listed(a.forbids_fitting, ', ')],
    ['Access', access],
    ['Report within', days === undefined ? undefined : `${days} days`],
    ['In the hangar', hangar === undefined ? undefined : `${hangar} days`],
    [
      'Missing papers',
      typeof a.missing_papers === 'object'
        ? `counted as ${plain(a.missing_papers.assume_use)}`
        : plain(a.missing_papers),
    ],
    ['Ferry flight', a.ferry],
    ['In the official text', a.source],
  ]);
}

function casesOf(d: DirectiveDocument): Fields {
  const figures = (facts: Readonly<Record<string, number>>) =>
    Object.entries(facts)
      .map(([k, v]) => `${k} ${v}`)
      .join(', ');
  return fields(
    d.cases.map((c, i) => {
      const { name, expect, facts, facts_at, ...rest } = c;
      const about = [
        rest.action,
        rest.day,
        rest.model,
        rest.serial,
        rest.built,
        rest.part_number,
        rest.finding,
        rest.kits?.join(' '),
      ];
      const then = Object.entries(facts_at ?? {}).map(([k, p]) => `${k} on ${p.day}: ${figures(p.facts)}`);
      const wanted = [expect.standing, expect.counted, expect.left, expect.governing].filter((x) => x !== undefined);
      const twin = d.cases.findIndex((x) => x.name === name) !== i;
      return [
        twin ? `${name} (${i + 1})` : name,
        `${[...about.filter(Boolean), figures(facts), ...then].filter(Boolean).join(', ')}; must be ${wanted.join(', ')}`,
      ] as const;
    }),
  );
}
