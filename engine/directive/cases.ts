import type { Day } from '../foundation/day.ts';
import { isRefusal } from '../foundation/refusal.ts';
import { constantForm, SETTLED } from '../foundation/region/index.ts';
import { zPolicy } from '../record/index.ts';
import { affected, groupsOf } from './affected.ts';
import type { DirectiveDocument, Standing } from './document.ts';
import { rounded } from './expression/index.ts';
import { judge, treeInForce } from './judge.ts';
import { conditionNow } from './limit.ts';
import { PRIVATE } from './mix.ts';
import { formsOf, type Point, type Situation } from './situation.ts';
import { vocabularyOf } from './vocabulary.ts';

export type Case = DirectiveDocument['cases'][number];
export interface CaseResult {
  readonly name: string;
  readonly passes: boolean;
  readonly because: string;
  /** What came out, where it could be computed. */
  readonly standing?: Standing;
  readonly counted?: number;
  readonly left?: number;
}

const asForms = (facts: Readonly<Record<string, number>>) =>
  Object.fromEntries(Object.entries(facts).map(([k, v]) => [k, constantForm(v)]));

/** A test case as a situation: settled facts, origins by the name of their kind. Landings per hour ahead: one. */
export function situationOfCase(d: DirectiveDocument, c: Case): Situation {
  const action = d.actions.find((a) => a.id === c.action)!;
  const stated = c.facts_at ?? {};
  const named = (name: string): Point | null => {
    const p = stated[name];
    return p ? { day: p.day as Day, key: name } : null;
  };
  const effective: Point = named('effective') ?? { day: d.effective, key: 'effective' };
  const looked = named('last_look');
  const facts: Record<string, ReturnType<typeof asForms>> = { now: asForms(c.facts) };
  for (const [name, p] of Object.entries(stated)) facts[name] = asForms(p.facts);
  const found = named('finding') ?? { day: c.day, key: 'now' };
  const started = action.started_by?.some((s) => s.finding === c.finding) ?? false;
  return {
    directive: d,
    action,
    vocabulary: vocabularyOf(d.cases),
    day: c.day,
    region: SETTLED,
    facts: (key) => facts[key] ?? {},
    built: c.built ?? null,
    mix: PRIVATE,
    policy: zPolicy.parse({}),
    extends_h: 0,
    start: (started ? found : effective) as Point & object,
    done: looked && looked !== 'new' ? { day: looked.day, key: looked.key, entry: 'the case' } : null,
    point: (o) => {
      if (o === 'new') return 'new';
      if (o === 'effective') return effective;
      if (o === 'part_fitted') return named('part_fitted');
      if ('effective_of' in o) return named('effective_of') ?? { day: o.effective_of.on, key: 'effective_of' };
      if ('last_look' in o) return looked;
      if ('kit_fitted' in o) return named('kit_fitted');
      if ('event' in o) return named('event');
      return c.finding === o.finding.finding ? found : null;
    },
  };
}

/** The standing and counted figure of one case, by the same code that judges a record. */
export function outcomeOf(d: DirectiveDocument, c: Case) {
  const s = situationOfCase(d, c);
  const verdict = affected(groupsOf(d, s.action.affects), {
    model: c.model,
    serial: c.serial,
    built: c.built,
    partNumber: c.part_number,
    kits: c.kits ?? [],
    region: SETTLED,
    facts: asForms(c.facts),
    conditionOf: (source) => conditionNow(s, source),
    forms: formsOf(s),
  });
  const none = { counted: null as number | null, left: null as number | null, governing: null as string | null };
  if (verdict.answer === 'no') return { standing: 'not affected' as Standing, ...none, because: verdict.because };
  const started = s.action.started_by?.some((x) => x.finding === c.finding) ?? false;
  if (s.action.started_by?.length && !started)
    return { standing: 'not affected' as Standing, ...none, because: 'no finding has started it' };
  const ended = endedInCase(d, c, s);
  if (ended) return { standing: 'ended' as Standing, ...none, because: ended };
  const warnings: string[] = [];
  const tree = treeInForce(s, (w) => warnings.push(w));
  if (!tree) return { standing: 'not affected' as Standing, ...none, because: 'nothing has started its clock' };
  const j = judge(s, tree);
  return {
    standing: j.worst.standing,
    counted: j.worst.counted,
    left: j.worst.left?.value ?? null,
    governing: j.worst.left?.limit ?? null,
    because: [j.worst.left?.limit ?? '', ...warnings].join('; '),
  };
}

function endedInCase(_d: DirectiveDocument, c: Case, s: Situation): string | null {
  if (s.done && !s.action.repeat) return 'it was done';
  for (const e of s.action.ended_by ?? []) {
    if ('kit' in e && c.kits?.includes(e.kit)) return `kit ${e.kit}`;
    if ('part_number' in e && c.part_number === e.part_number) return `part number ${e.part_number}`;
    if ('action' in e && e.action === s.action.id && e.finding !== undefined && c.finding === e.finding)
      return `finding ${e.finding}`;
  }
  return null;
}

/** Runs a directive's own test cases. One that fails, or refuses, says what came out instead. */
export const runCases = (d: DirectiveDocument): CaseResult[] => d.cases.map((c) => runCase(d, c));

/** Runs one test case of a directive, whatever the others say. */
export function runCase(d: DirectiveDocument, c: Case): CaseResult {
  try {
    const got = outcomeOf(d, c);
    const wrong: string[] = [];
    const off = (a: number | null, b: number) => a === null || Math.abs(rounded(a) - rounded(b)) > 1e-6;
    const e = c.expect;
    if (e.standing !== undefined && got.standing !== e.standing)
      wrong.push(`stands "${got.standing}", not "${e.standing}"`);
    if (e.counted !== undefined && off(got.counted, e.counted)) wrong.push(`counts ${got.counted}, not ${e.counted}`);
    if (e.left !== undefined && off(got.left, e.left)) wrong.push(`leaves ${got.left}, not ${e.left}`);
    if (e.governing !== undefined && !got.governing?.includes(e.governing))
      wrong.push(`governed by "${got.governing}"`);
    return {
      name: c.name,
      passes: wrong.length === 0,
      because: wrong.length ? wrong.join('; ') : got.because || got.standing,
      standing: got.standing,
      ...(got.counted === null ? {} : { counted: got.counted }),
      ...(got.left === null ? {} : { left: got.left }),
    };
  } catch (error) {
    if (!isRefusal(error)) throw error;
    return { name: c.name, passes: false, because: error.message };
  }
}
