import {
  aboardOf,
  bearsNumber,
  type Finding,
  type RecordModel,
  SIDE_WORDS,
  type Thing,
  wordsOf,
} from '../record/index.ts';
import { type Accomplished, byMoment } from './accomplished.ts';
import type { DirectiveDocument, Limit } from './document.ts';
import { limitsOf } from './read.ts';
import { plain } from './words.ts';

type Side = 'left' | 'right';
/** Why an accomplishment does not prove that its own part was worked on. */
export interface Doubt {
  readonly code: 'directive.paper-names-other-side' | 'directive.one-line-both-sides';
  readonly because: string;
  /** Entries that rest on the same line of the paper, itself included. */
  readonly entries: readonly string[];
}

const SIDES = ['left', 'right'] as const;
/** The sides that a line names: by a person who says so, else by its words, or a stamp or serial of a part on that side. */
function sidesNamed(line: readonly Accomplished[], parts: readonly Thing[]): Set<Side> {
  const said = line.flatMap((e) => e.body.paper_names ?? []);
  if (said.includes('both')) return new Set(SIDES);
  if (said.length) return new Set(said as Side[]);
  const words = line.map(wordsOf).join(' ');
  const numbered = parts.filter((p) =>
    [p.attributes.stamp, p.attributes.serial].some((n) => bearsNumber(words, n?.value)),
  );
  return new Set([...SIDES.filter((s) => SIDE_WORDS[s].test(words)), ...numbered.map((p) => p.hand as Side)]);
}
/** Entries on one line of one paper speak of one happening; without page and row nobody can tell lines apart. */
const lineOf = (e: Accomplished): string =>
  e.paper?.row === undefined
    ? `entry ${e.id}`
    : JSON.stringify([e.body.directive, e.body.action, e.day, e.paper.title, e.paper.page ?? '', e.paper.row]);

const memo = new WeakMap<RecordModel, ReadonlyMap<string, Doubt>>();
/**
 * Accomplishments that do not prove the side they are recorded on, by the id of their entry.
 *
 * The line of the paper names the other side only, or it was entered for both sides and names neither. What no paper
 * tells (which panel was open, what the mechanic looked at) is not guessed at.
 */
export function doubtsOf(model: RecordModel): ReadonlyMap<string, Doubt> {
  let found = memo.get(model);
  if (!found) {
    found = findDoubts(model);
    memo.set(model, found);
  }
  return found;
}
function findDoubts(model: RecordModel): Map<string, Doubt> {
  const doubts = new Map<string, Doubt>();
  const lines = new Map<string, Accomplished[]>();
  for (const e of model.entries)
    if (e.kind === 'accomplished') lines.set(lineOf(e), [...(lines.get(lineOf(e)) ?? []), e]);
  for (const line of lines.values()) {
    const things = line.map((e) => model.things.get(e.subject));
    const whats = new Set(things.map((t) => t?.what));
    const handed = [...model.things.values()].filter((t) => t.hand !== 'none' && whats.has(t.what));
    const named = sidesNamed(line, handed);
    const entries = line.map((e) => e.id);
    const hands = new Set(things.flatMap((t) => (t && t.hand !== 'none' ? [t.hand] : [])));
    line.forEach((e, i) => {
      const hand = things[i]?.hand ?? 'none';
      if (hand === 'none' || named.has(hand)) return;
      const [only] = named;
      if (only)
        doubts.set(e.id, {
          code: 'directive.paper-names-other-side',
          because: `its paper names the ${only} side only`,
          entries,
        });
      else if (hands.size === 2)
        doubts.set(e.id, {
          code: 'directive.one-line-both-sides',
          because: 'one line of the paper is entered for both sides, and it names neither',
          entries,
        });
    });
  }
  return doubts;
}

/** What counts as work under an action, whatever the issue: its own, what it gives credit for, what a limit looks back to. */
export function worksUnder(
  d: DirectiveDocument,
  work: { readonly directive: string; readonly action: string },
): DirectiveDocument['actions'] {
  const back = (l: Limit) =>
    'since' in l && typeof l.since === 'object' && 'last_look' in l.since ? l.since.last_look : [];
  return d.actions.filter((a) =>
    [{ directive: d.number, action: a.id }, ...(a.credit ?? []), ...limitsOf(a).flatMap(back)].some(
      (w) => w.directive === work.directive && w.action === work.action,
    ),
  );
}
/** Parts that an action looks at and that sat in what the entry is written on: it proves none of them. */
function partsOfWhole(d: DirectiveDocument, model: RecordModel, e: Accomplished): Thing[] {
  const own = model.things.get(e.subject);
  const kinds = new Set(worksUnder(d, e.body).map((a) => a.looks_at));
  if (!own || kinds.has(own.what)) return [];
  const named = sidesNamed([e], []);
  return [...model.things.values()].filter(
    (t) =>
      kinds.has(t.what) &&
      (t.hand === 'none' || named.size === 0 || named.has(t.hand)) &&
      aboardOf(model, t.id, e).includes(e.subject),
  );
}

const proven = new WeakMap<RecordModel, RecordModel>();
const variants = new WeakMap<RecordModel, Map<DirectiveDocument, readonly RecordModel[]>>();
/**
 * The record as a directive may read it: first only with work proven for its part, then with all that is alleged:
 * lines that name another side, and work written on an aircraft or wing as a whole. One record where both are the same.
 */
export function readingsOf(d: DirectiveDocument, model: RecordModel): readonly RecordModel[] {
  const made = variants.get(model) ?? new Map<DirectiveDocument, readonly RecordModel[]>();
  variants.set(model, made);
  let found = made.get(d);
  if (!found) {
    found = readBoth(d, model);
    made.set(d, found);
  }
  return found;
}
function readBoth(d: DirectiveDocument, model: RecordModel): readonly RecordModel[] {
  const done = model.entries.filter((e): e is Accomplished => e.kind === 'accomplished');
  if (done.length === 0) return [model];
  const doubts = doubtsOf(model);
  const copies = done.flatMap((e) => partsOfWhole(d, model, e).map((t) => ({ ...e, subject: t.id })));
  const bears = copies.length > 0 || done.some((e) => doubts.has(e.id) && worksUnder(d, e.body).length > 0);
  if (!bears) return [model];
  let sure = proven.get(model);
  if (!sure) {
    sure = doubts.size ? { ...model, entries: model.entries.filter((e) => !doubts.has(e.id)) } : model;
    proven.set(model, sure);
  }
  return [sure, copies.length ? { ...model, entries: [...model.entries, ...copies].sort(byMoment) } : model];
}

/**
 * What is said of sides: accomplishments that prove another side than their own, and those written on a whole.
 *
 * @param of subjects whose entries are asked; absent: all
 */
export function sideFindings(
  documents: readonly DirectiveDocument[],
  model: RecordModel,
  of?: ReadonlySet<string>,
): Finding[] {
  const done = model.entries.filter(
    (e): e is Accomplished => e.kind === 'accomplished' && (of === undefined || of.has(e.subject)),
  );
  const doubts = doubtsOf(model);
  const out: Finding[] = [];
  for (const e of done) {
    const what = `${e.body.directive}, ${plain(e.body.action)} of ${e.day}`;
    const doubt = doubts.get(e.id);
    if (doubt)
      out.push({
        code: doubt.code,
        text: `${what} is recorded for ${nameOf(model, e.subject)}, but ${doubt.because}: it is not proven for that part, and the worse side counts.`,
        entries: doubt.entries,
        remedy: 'Read the line again: correct the entry and say which side the paper names, or take the entry back',
      });
    const parts = new Set(documents.flatMap((d) => partsOfWhole(d, model, e)));
    if (parts.size)
      out.push({
        code: 'directive.done-on-the-whole',
        text: `${what} is recorded on ${nameOf(model, e.subject)} as a whole, but it looks at each part: it is not proven for ${[...parts].map((p) => nameOf(model, p.id)).join(' and ')}, and the worse side counts.`,
        entries: [e.id],
        remedy: 'Record it for each part that the paper names, with its own finding',
      });
  }
  return out;
}
function nameOf(model: RecordModel, id: string): string {
  const t = model.things.get(id);
  if (!t || t.kind === 'aircraft') return t?.attributes.registration?.value ?? id;
  return `the ${t.hand === 'none' ? '' : `${t.hand} `}${plain(t.what)}`;
}
