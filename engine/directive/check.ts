import { complaintsOf } from '../foundation/document.ts';
import { type DraftProblem, pathOf, plainly } from '../foundation/draft-problem.ts';
import { isRefusal } from '../foundation/refusal.ts';
import { type Case, type CaseResult, runCase } from './cases.ts';
import { type Action, type DirectiveDocument, zAction, zCase, zDirectiveDocument, zGroup } from './document.ts';
import { type FactName, factNames, type KnownWords } from './fact-names.ts';
import { type RuleProblem, ruleProblems } from './read.ts';
import { type ReadBack, readBack } from './read-back.ts';

export interface DraftChecked {
  /** Empty: it can be adopted if its cases come out as written. */
  readonly problems: readonly DraftProblem[];
  /** Null until enough of it is there to be said in sentences. */
  readonly readBack: readonly ReadBack[] | null;
  /** One per case, in order. */
  readonly cases: readonly CaseResult[];
  readonly factNames: readonly FactName[];
}

/**
 * Looks at a directive while it is written: what it lacks and where, the rule in plain sentences, and each of its
 * test cases by itself, as far as the action it speaks of is whole. Anything may be given; nothing is refused.
 */
export function checkDraft(input: unknown, known: KnownWords = {}): DraftChecked {
  const raw = recordOf(input);
  const complaints = complaintsOf(zDirectiveDocument, input);
  const cases = listOf(raw.cases).map((c) => zCase.safeParse(c));
  const readable = cases.flatMap((c) => (c.success ? [c.data] : []));
  const whole = zDirectiveDocument.safeParse({ ...raw, cases: readable });
  const rules = whole.success ? ruleProblems(whole.data) : [];
  const ofCases = cases.every((c) => c.success) ? rules : rules.filter((p) => p.code !== 'directive.case-missing');
  const draft = draftOf(raw, readable);
  return {
    problems: [...complaints.map((c) => plainly(c, input, 'the fields of a directive')), ...ofCases.map(asProblem)],
    readBack: whole.success ? said(whole.data) : null,
    cases: cases.map((c, i) =>
      c.success
        ? runDraft(draft, c.data)
        : { name: nameOf(raw.cases, i), passes: false, because: firstWords(zCase, listOf(raw.cases)[i]) },
    ),
    factNames: factNames(wordsOf(draft.document, known)),
  };
}

const recordOf = (x: unknown): Record<string, unknown> =>
  typeof x === 'object' && x !== null && !Array.isArray(x) ? (x as Record<string, unknown>) : {};
const listOf = (x: unknown): unknown[] => (Array.isArray(x) ? x : []);
const textOr = (x: unknown, otherwise: string): string => (typeof x === 'string' && x.trim() ? x.trim() : otherwise);
const nameOf = (cases: unknown, i: number): string => textOr(recordOf(listOf(cases)[i]).name, `case ${i + 1}`);

const asProblem = ({ path, given, allowed, remedy, place }: RuleProblem): DraftProblem => ({
  path,
  given: given.replace(/^directive .*?: /, ''),
  allowed,
  remedy,
  ...(place === undefined ? {} : { position: place }),
});

function said(d: DirectiveDocument): ReadBack[] | null {
  try {
    return readBack(d);
  } catch (e) {
    if (!isRefusal(e)) throw e;
    return null;
  }
}

/** The part of a draft that can be computed, with what stands in the way of the rest. */
interface Draft {
  readonly document: DirectiveDocument;
  readonly lacks: { readonly whole: string | null; readonly actions: ReadonlyMap<string, string> };
}

function draftOf(raw: Record<string, unknown>, cases: readonly Case[]): Draft {
  const lacking = new Map<string, string>();
  const actions: Action[] = [];
  for (const given of listOf(raw.actions)) {
    const read = zAction.safeParse(given);
    if (read.success) actions.push(read.data);
    else lacking.set(textOr(recordOf(given).id, ''), firstWords(zAction, given));
  }
  const affects = zGroup.safeParse(raw.affects);
  const effective = zDirectiveDocument.shape.effective.safeParse(raw.effective);
  const document = {
    sparwright: 'directive/1',
    number: textOr(raw.number, 'draft'),
    issue: typeof raw.issue === 'number' ? raw.issue : 1,
    title: 'draft',
    authority: 'draft',
    rank: 'directive',
    issued: effective.success ? effective.data : '1900-01-01',
    effective: effective.success ? effective.data : '1900-01-01',
    reference: 'draft',
    known: 'read',
    affects: affects.success ? affects.data : {},
    actions,
    cases: [...cases],
  } as DirectiveDocument;
  for (const p of ruleProblems(document)) {
    const id = actions[Number(/^actions\.(\d+)\./.exec(p.path)?.[1] ?? -1)]?.id;
    if (id !== undefined && p.code !== 'directive.case-missing' && !lacking.has(id)) lacking.set(id, p.given);
  }
  const whole = !effective.success
    ? 'the effective date is missing'
    : affects.success
      ? null
      : `whom it affects does not read: ${firstWords(zGroup, raw.affects)}`;
  return { document, lacks: { whole, actions: lacking } };
}

function runDraft({ document, lacks }: Draft, c: Case): CaseResult {
  const waits = (because: string): CaseResult => ({
    name: c.name,
    passes: false,
    because: `cannot run yet: ${because}`,
  });
  if (lacks.whole !== null) return waits(lacks.whole);
  const lacking = lacks.actions.get(c.action);
  if (lacking !== undefined) return waits(`action "${c.action}", ${lacking}`);
  if (!document.actions.some((a) => a.id === c.action)) return waits(`there is no action "${c.action}"`);
  return runCase(document, c);
}

const firstWords = (schema: Parameters<typeof complaintsOf>[0], input: unknown): string => {
  const [first] = complaintsOf(schema, input);
  return first
    ? `at ${pathOf(first) || 'its beginning'}: ${plainly(first, input, 'the fields of a directive').given}`
    : '';
};
/** Words of the draft itself that become part of fact names, besides those of the shop. */
function wordsOf(d: DirectiveDocument, known: KnownWords): KnownWords {
  const facts = d.cases.flatMap((c) => Object.keys(c.facts));
  const members = (pattern: RegExp) => facts.flatMap((f) => pattern.exec(f)?.[1] ?? []);
  const text = JSON.stringify(d.actions);
  const named = (key: string) => [...text.matchAll(new RegExp(`"${key}":"([a-z0-9_]+)"`, 'g'))].map((m) => m[1]!);
  const both = (a: readonly string[] | undefined, b: readonly string[]) => [...new Set([...(a ?? []), ...b])];
  return {
    uses: both(known.uses, members(/^(?:hours|landings)\.(?!total$)(.+)$/)),
    kits: both(known.kits, [
      ...(d.affects.with_kits ?? []),
      ...named('kit'),
      ...named('kit_fitted'),
      ...members(/^kit\.(.+)\.\w+$/),
    ]),
    events: both(known.events, [...named('event'), ...members(/^since\.(.+)\.\w+$/), ...members(/^count\.(.+)$/)]),
    inspections: both(known.inspections, [...named('next_inspection'), ...members(/^inspections\.(.+)$/)]),
  };
}
