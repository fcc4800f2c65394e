import { SECONDS_PER_HOUR } from '../../foundation/convert.ts';
import { type Day, dayFromNumber, later } from '../../foundation/day.ts';
import { isRefusal } from '../../foundation/refusal.ts';
import { constantForm, type Region, SETTLED } from '../../foundation/region/index.ts';
import { isLot, NotPlain, type Policy, SPAN, type Sums, spanHours_s } from '../../record/index.ts';
import { affected, type Candidate, type Verdict } from '../affected.ts';
import type { Limit } from '../document.ts';
import { factsOf, test } from '../expression/index.ts';
import type { LineEnd, StandingLine } from '../line.ts';
import { NO_CLOCK, notStarted } from '../not-affected.ts';
import { worksUnder } from '../sides.ts';
import { askedOn } from './asked.ts';
import type { SwiftAction, SwiftRules } from './compile.ts';
import { isEnded } from './ended.ts';
import { endOf, leavesOf, type SwiftTree } from './held.ts';
import { calendar, leafOf } from './leaf.ts';
import { amountsBy, doneUnder, factsOn, type MixesByCuts, type SwiftLife, swiftLife } from './life.ts';

/** A part and an action that the sums cannot answer, and why. */
export interface NeedsWhole {
  readonly part: string;
  readonly directive: string;
  readonly action: string;
  readonly because: string;
}
export interface SwiftLines {
  readonly lines: readonly StandingLine[];
  readonly whole: readonly NeedsWhole[];
  /** Lines that hang on several papers: the one that is named here is that of the longest stretch, not what settles most. */
  readonly several: ReadonlySet<StandingLine>;
}

/**
 * Where every part of a plain aircraft stands under a set of rules on a day, from its sums alone: the lines that
 * `assessAll` and `lineOf` give, without a solver.
 *
 * A question whose answer hangs on more than one open limit, on a formula that is not a weighted sum over a gap, on
 * inspections, findings that start actions, or on which of several histories the solver would show, is not answered
 * here: it is listed in `whole`, and `assessAll` answers it.
 *
 * Not valid for a day before the newest entry of the sums: everything is then in `whole`.
 */
export function swiftLines(rules: SwiftRules, sums: Sums, policy: Policy, day: Day): SwiftLines {
  const lines: StandingLine[] = [];
  const whole: NeedsWhole[] = [];
  const several = new Set<StandingLine>();
  const asked = askedOn(day, policy);
  const at = amountsBy(sums);
  const mixes: MixesByCuts = new Map();
  const onWhole = new Set(rules.actions.filter((a) => writtenOnWhole(sums, a)));
  const alike = new Map<string, { readonly lines: StandingLine[]; readonly whole: NeedsWhole[] }>();
  for (const thing of sums.things) {
    if (!rules.byWhat.has(thing.what)) continue;
    // Of two parts of a kind that were fitted together and never worked on, what holds for one holds for the other.
    const kind = thing.done.length > 0 ? null : `${thing.what}|${thing.partNumber}|${thing.built}|${thing.fitted}`;
    const twin = kind === null ? undefined : alike.get(kind);
    if (twin) {
      for (const l of twin.lines) {
        const line = { ...l, part: thing.id };
        lines.push(line);
        if (several.has(l)) several.add(line);
      }
      for (const w of twin.whole) whole.push({ ...w, part: thing.id });
      continue;
    }
    const [line0, whole0] = [lines.length, whole.length];
    let life: SwiftLife | null = null;
    let because = day < sums.newest ? 'an entry after the day' : '';
    try {
      if (!because) life = swiftLife(sums, thing, rules, asked, at, mixes);
    } catch (e) {
      if (!(e instanceof NotPlain)) throw e;
      because = e.message;
    }
    for (const a of rules.actions) {
      if (a.action.looks_at !== thing.what) continue;
      if (!life || a.whole) whole.push(missing(thing.id, a, a.whole ?? because));
      else if (onWhole.has(a)) whole.push(missing(thing.id, a, 'work written on an aircraft or wing as a whole'));
      else
        try {
          lines.push(lineFor(a, life, several));
        } catch (e) {
          if (!(e instanceof NotPlain) && !isRefusal(e)) throw e;
          whole.push(missing(thing.id, a, e.message));
        }
    }
    if (kind !== null) alike.set(kind, { lines: lines.slice(line0), whole: whole.slice(whole0) });
  }
  return { lines, whole, several };
}

const missing = (part: string, { directive, action }: SwiftAction, because: string): NeedsWhole => ({
  part,
  directive: directive.number,
  action: action.id,
  because,
});

/** Work of this action that stands on another kind of thing than it looks at, on an aircraft or a wing. */
const writtenOnWhole = (sums: Sums, a: SwiftAction): boolean =>
  sums.things.some(
    (t) => t.what !== a.action.looks_at && t.done.some((e) => worksUnder(a.directive, e).includes(a.action)),
  );

const NOT_DUE = { total_s: null, landings: null, day: null, now: false };
const bare = (standing: LineEnd['standing']): LineEnd => ({ standing, dueAt: NOT_DUE, left: null });

/**
 * Why a line that `swiftLines` gave as not affected is so, in the words of `assessAll`.
 * @throws NotPlain where the totals do not answer that part
 */
export function whySwiftlyNot(rules: SwiftRules, sums: Sums, policy: Policy, line: StandingLine, day: Day): string {
  const thing = sums.things.find((t) => t.id === line.part)!;
  const a = rules.actions.find((x) => x.directive.number === line.directive && x.action.id === line.action)!;
  const verdict = verdictOf(a, swiftLife(sums, thing, rules, askedOn(day, policy), amountsBy(sums), new Map()));
  if (verdict.answer === 'no') return verdict.because;
  return a.action.started_by?.length ? notStarted(a.action.started_by) : NO_CLOCK;
}

type LastDone = { readonly day: Day } | null;
function lineWith(
  { directive: d, action }: SwiftAction,
  life: SwiftLife,
  done: LastDone,
  treatAs: LineEnd,
  couldBecome: LineEnd,
  hangsOn: string | null,
): StandingLine {
  return {
    directive: d.number,
    issue: d.issue,
    action: action.id,
    title: action.title,
    part: life.thing.id,
    treatAs,
    couldBecome,
    soon_days: life.asked.policy.soon_days,
    alternative: null,
    lastDone: done?.day ?? null,
    hangsOn,
    notComputed: false,
    dates: null,
  };
}
const settled = (a: SwiftAction, life: SwiftLife, done: LastDone, standing: LineEnd['standing']): StandingLine =>
  lineWith(a, life, done, bare(standing), bare(standing), null);

function lineFor(a: SwiftAction, life: SwiftLife, several: Set<StandingLine>): StandingLine {
  const { directive: d, action } = a;
  const done = doneUnder(d, action, life.thing).at(-1) ?? null;
  const verdict = verdictOf(a, life);
  if (verdict.answer === 'no') return settled(a, life, done, 'not affected');
  if (action.started_by?.length) return settled(a, life, done, 'not affected');
  if (isEnded(a, life, done !== null)) return settled(a, life, done, 'ended');
  const start = d.effective as Day;
  const limit = done ? action.repeat : (action.first ?? { before_further_flight: true as const });
  let tree = limit ? treeOf(limit, a, life, start) : null;
  if (!tree) return settled(a, life, done, 'not affected');
  if (life.asked.day < start) tree = { kind: 'later', of: [tree, effective(start, life)] };
  const touched = [...new Set(leavesOf(tree).flatMap((l) => l.papers))];
  // A use that is assumed counts in every gap where a formula speaks of it, also where the record knows nothing of it.
  const use = typeof action.missing_papers === 'object' ? action.missing_papers.assume_use : null;
  const spoken = use !== null && JSON.stringify([action.counts, action.first, action.repeat]).includes(`.${use}`);
  const assumed = spoken && life.sums.gaps.length > 0;
  if (assumed || (action.missing_papers !== 'bounds' && touched.length > 0))
    throw new NotPlain('a gap that has a rule of its own');
  const worst = endOf(tree, 'worst', a, life, done !== null);
  const best = life.open || touched.length > 0 ? endOf(tree, 'best', a, life, done !== null) : worst;
  const open = Math.abs((worst.left?.value ?? 0) - (best.left?.value ?? 0)) > 1e-6 || worst.standing !== best.standing;
  const papers = open ? [...new Set(longestFirst(life.sums, touched).map((span) => paperOf(life.sums, span)))] : [];
  const end = verdict.answer === 'perhaps' ? bare('not affected') : best;
  const line = lineWith(a, life, done, worst, end, papers[0] ?? null);
  if (papers.length > 1) several.add(line);
  return line;
}

function treeOf(limit: Limit, a: SwiftAction, life: SwiftLife, start: Day): SwiftTree | null {
  if ('first_of' in limit || 'later_of' in limit) {
    const list = 'first_of' in limit ? limit.first_of : limit.later_of;
    const of = list.flatMap((l) => treeOf(l, a, life, start) ?? []);
    if (of.length === 0) return null;
    return of.length === 1 ? of[0]! : { kind: 'first_of' in limit ? 'first' : 'later', of };
  }
  if ('when' in limit) {
    const [yes, no] = [treeOf(limit.limit, a, life, start), treeOf(limit.otherwise, a, life, start)];
    if (!yes || !no) return yes ?? no;
    const condition = a.conditions.get(limit.when)!;
    return test(condition, factsOn(life, factsOf(condition), life.asked.day)) ? yes : no;
  }
  return leafOf(limit, a, life, start);
}

const effective = (day: Day, life: SwiftLife) => calendar('the effective date', 'at', later(day, life.asked.day), life);

function verdictOf(a: SwiftAction, life: SwiftLife): Verdict {
  const { sums, thing } = life;
  const { model, part, built } = a.asks;
  const key = `${model ? sums.model : ''}|${part ? thing.partNumber : ''}|${built ? sums.built : ''}`;
  const known = a.verdictByKind ? a.verdicts.get(key) : undefined;
  if (known) return known;
  const found = affected(a.groups, candidateOf(a, life));
  if (a.verdictByKind) {
    if (a.verdicts.size > 20_000) a.verdicts.clear();
    a.verdicts.set(key, found);
  }
  return found;
}

/** As `candidateOf`; where gaps leave uses open, each may have had all their hours. */
function candidateOf(a: SwiftAction, life: SwiftLife): Candidate {
  const { sums, thing, now } = life;
  let open_s = 0;
  for (let i = 0; i < now.spans; i++) if (isLot(sums, i)) open_s += spanHours_s(sums, i);
  const region: Region =
    open_s > 0
      ? { variables: [{ name: 'open', low: 0, high: open_s / SECONDS_PER_HOUR, integer: false }], constraints: [] }
      : SETTLED;
  const asked = a.groups.some((g) => g.uses);
  const terms: (readonly [number, number])[] = open_s > 0 ? [[0, 1]] : [];
  const facts = asked
    ? Object.fromEntries(
        sums.uses.map((u, i) => [`hours.${u}`, { constant: now.hours_s[i]! / SECONDS_PER_HOUR, terms }]),
      )
    : {};
  return {
    model: sums.model,
    serial: sums.serial,
    built: sums.built,
    partNumber: thing.partNumber,
    kits: [],
    region,
    facts,
    conditionOf: () => {
      throw new NotPlain('its group asks a condition');
    },
    forms: () => constantForm(0),
  };
}

const longestFirst = (sums: Sums, spans: readonly number[]): number[] =>
  [...spans].sort((a, b) => spanHours_s(sums, b) - spanHours_s(sums, a));

/** The paper that would settle a stretch. */
function paperOf(sums: Sums, span: number): string {
  const [from, to, use] = [sums.spans[span * SPAN]!, sums.spans[span * SPAN + 1]!, sums.spans[span * SPAN + 4]!];
  if (use < 0) return sums.gaps[-1 - use]!.paper;
  return `Work report or flight log of ${sums.registration} with a reading, ${dayFromNumber(from)} to ${dayFromNumber(to)}`;
}
