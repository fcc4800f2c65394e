import { type Day, dayNumber, directive } from '../engine/index.ts';
import { capital, count, datesInWords, day as dayWords, number, yearOf } from './display.ts';
import { emptySheet, f, type ShopNamed, t } from './frame.ts';
import type { Block, Cell, Sheet, Span, TableBlock } from './model.ts';
import { aboutWords, atOnce, dueWords, isOpen, shownRank, standingCell, type Told } from './standing.ts';

/** One part under one action: what stands now and what would stand. */
export interface TriedRow {
  readonly part: string;
  readonly was: directive.StandingLine | null;
  readonly would: directive.StandingLine | null;
  readonly change: directive.Change;
}
/** One aircraft held against a directive that is not adopted. Rows that neither affects are left out. */
export interface TriedAircraft {
  readonly id: string;
  readonly registration: string;
  readonly model: string;
  readonly rows: readonly TriedRow[];
  /** Kinds of part it looks at of which no entry says that one is fitted: treated as due. */
  readonly absent: readonly string[];
  /** Why it does not affect the aircraft, where it does not. */
  readonly whyNot: string | null;
  /** Why nothing of it could be computed: it is then treated as due. */
  readonly fault: string | null;
}
export interface TryInput {
  readonly shop: ShopNamed & { readonly id: string };
  readonly document: directive.DirectiveDocument;
  readonly day: Day;
  readonly aircraft: readonly TriedAircraft[];
  /** What is in force now, in words; null: nothing of this number. */
  readonly against: string | null;
  /** False where a later issue is adopted already: this one would not stand. */
  readonly stands: boolean;
}

interface Shown extends TriedRow, Told {
  readonly aircraft: TriedAircraft;
  readonly line: directive.StandingLine | null;
  readonly when: number;
}

/** A directive tried on the fleet: whom it would affect, who falls due, what hangs on a paper, what changes. Nothing is kept. */
export function trySheet(q: TryInput): Sheet {
  const d = q.document;
  const rows = q.aircraft.flatMap((a) => shownRows(a, q.day)).sort(worstFirst);
  const counts = countsOf(q, rows);
  return {
    ...emptySheet('directive', `${d.number} issue ${d.issue}, tried`, q.day, q.shop.invented === true),
    titleBlock: {
      fields: [
        { label: 'Tried', value: `${d.number} issue ${d.issue}`, small: d.title },
        { label: 'On', value: count(q.aircraft.length, 'aircraft', 'aircraft'), small: q.shop.name },
        { label: 'In force from', value: dayWords(d.effective) },
        { label: 'Held on', value: dayWords(q.day), small: 'nothing is kept' },
      ],
    },
    answer: answerOf(q, counts),
    because: q.against ? `Against ${q.against}: ${changesInWords(rows)}.` : `Nothing of ${d.number} is in force now.`,
    blocks: blocksOf(q, rows),
    warnings: [
      ...(q.stands ? [] : [`A later issue of ${d.number} is adopted: this issue would not stand.`]),
      ...noCredit(d, rows),
      ...(d.extract ? [`Only part of the official text was readable: ${d.extract}`] : []),
    ],
    provenance: { known: d.known, evidence: 'copy', invented: q.shop.invented === true },
  };
}

/** Work done under an earlier issue is lost in silence where the new text gives no credit for it. */
function noCredit(d: directive.DirectiveDocument, rows: readonly Shown[]): string[] {
  const done = new Set(rows.filter((r) => r.was?.lastDone && r.was.directive === d.number).map((r) => r.was!.action));
  const lost = d.actions.filter(
    (a) => done.has(a.id) && !a.credit?.some((c) => c.directive === d.number && c.action === a.id),
  );
  return lost
    .filter((a) => rows.some((r) => r.was?.issue !== d.issue && r.was?.action === a.id))
    .map((a) => `"${a.title}" was done under an earlier issue, and this text gives no credit for that work.`);
}

const toldOf = (l: directive.StandingLine, day: Day): Told => ({
  notComputed: l.notComputed ? 'it could not be computed' : null,
  standing: l.notComputed
    ? { worst: l.treatAs.standing === 'overdue' ? 'overdue' : 'due', best: 'due' }
    : { worst: l.treatAs.standing, best: l.couldBecome.standing },
  day,
  treatAs: l.treatAs,
});
const DUE = { dueAt: { total_s: null, landings: null, day: null, now: true }, left: null };
const unknown = (day: Day, because: string): Told => ({
  notComputed: because,
  standing: { worst: 'due', best: 'due' },
  day,
  treatAs: DUE,
});
const GONE: Told['standing'] = { worst: 'not affected', best: 'not affected' };

function shownRows(a: TriedAircraft, day: Day): Shown[] {
  const bare = (part: string, because: string): Shown => ({
    ...unknown(day, because),
    aircraft: a,
    part,
    was: null,
    would: null,
    line: null,
    change: 'newly affected',
    when: dayNumber(day),
  });
  return [
    ...(a.fault === null ? [] : [bare('All of it', a.fault)]),
    ...a.absent.map((what) => bare(capital(what.replaceAll('_', ' ')), 'no entry says that one is fitted')),
    ...a.rows.map((r): Shown => {
      const told = r.would ? toldOf(r.would, day) : { ...toldOf(r.was!, day), notComputed: null, standing: GONE };
      return { ...told, ...r, aircraft: a, line: r.would, when: whenOf(told, r.would) };
    }),
  ];
}
function whenOf(told: Told, line: directive.StandingLine | null): number {
  if (!isOpen(told)) return Number.POSITIVE_INFINITY;
  if (atOnce(told)) return dayNumber(told.day);
  const p50 = line?.dates?.treatAs.p50;
  if (p50) return p50.is === 'not before' ? dayNumber(`${p50.year}-07-01` as Day) : dayNumber(p50.day);
  return told.treatAs.dueAt.day ? dayNumber(told.treatAs.dueAt.day) : Number.POSITIVE_INFINITY;
}
const worstFirst = (a: Shown, b: Shown): number =>
  shownRank(a) - shownRank(b) || a.when - b.when || (a.aircraft.registration < b.aircraft.registration ? -1 : 1);

interface Counts {
  readonly affected: number;
  readonly dueThisYear: number;
  readonly hang: number;
}
function countsOf(q: TryInput, rows: readonly Shown[]): Counts {
  const planes = (those: (r: Shown) => boolean) => new Set(rows.filter(those).map((r) => r.aircraft.id)).size;
  const endOfYear = dayNumber(`${yearOf(q.day)}-12-31` as Day);
  return {
    affected: planes((r) => r.standing.worst !== 'not affected'),
    dueThisYear: planes((r) => isOpen(r) && r.when <= endOfYear),
    hang: planes((r) => hangsOn(r) !== null),
  };
}
function hangsOn(r: Shown): string | null {
  if (r.line === null) return r.notComputed;
  if (r.line.notComputed) return null;
  return r.line.hangsOn ?? (r.standing.worst === r.standing.best ? null : 'a paper that settles it');
}

/** "18 of 240 affected, 3 due this year, 5 hang on a missing paper" */
function answerOf(q: TryInput, c: Counts): Span[] {
  if (q.aircraft.length === 0) return [t('No aircraft is recorded yet: there is nothing to try it on.')];
  return [
    f(`${number(c.affected)} of ${number(q.aircraft.length)} affected`),
    t(', '),
    f(`${number(c.dueThisYear)} due this year`),
    t(`, ${number(c.hang)} ${c.hang === 1 ? 'hangs' : 'hang'} on a missing paper`),
    t('.'),
  ];
}
function changesInWords(rows: readonly Shown[]): string {
  const of = (c: directive.Change) => rows.filter((r) => r.change === c).length;
  const said = directive.CHANGES.flatMap((c) => (of(c) ? [`${number(of(c))} ${c}`] : []));
  return said.length ? `${said.join(', ')} (parts and actions)` : 'nothing changes';
}

function blocksOf(q: TryInput, rows: readonly Shown[]): Block[] {
  const planes = (c: directive.Change) => new Set(rows.filter((r) => r.change === c).map((r) => r.aircraft.id)).size;
  const changes: Block = {
    block: 'key-value',
    title: q.against ? `Change against ${q.against}` : 'Change',
    pairs: directive.CHANGES.map((c) => {
      const n = rows.filter((r) => r.change === c).length;
      const small = n ? `on ${count(planes(c), 'aircraft', 'aircraft')}` : '';
      return { key: capital(c), cell: { is: 'text', text: count(n, 'row'), ...(small ? { small } : {}) } };
    }),
  };
  return [table(q, rows), changes, notAffected(q, rows)];
}

const text = (words: string, small = ''): Cell =>
  words ? { is: 'text', text: words, ...(small ? { small } : {}) } : { is: 'nothing' };

function table(q: TryInput, rows: readonly Shown[]): TableBlock {
  return {
    block: 'table',
    title: 'What it would ask',
    columns: [
      { key: 'aircraft', title: 'Aircraft', align: 'left' },
      { key: 'part', title: 'Part', align: 'left' },
      { key: 'standing', title: 'Would be', align: 'left' },
      { key: 'was', title: 'Is now', align: 'left' },
      { key: 'change', title: 'Change', align: 'left' },
      { key: 'due', title: 'Due at', align: 'right' },
      { key: 'about', title: 'About', align: 'right' },
      { key: 'paper', title: 'Hangs on', align: 'left' },
    ],
    rows: rows.map((r, i) => ({
      id: `${r.aircraft.id}|${(r.line ?? r.was)?.part ?? r.part}|${(r.line ?? r.was)?.action ?? i}|${(r.line ?? r.was)?.directive ?? ''}`,
      cells: {
        aircraft: {
          is: 'link',
          text: r.aircraft.registration,
          href: `/${q.shop.id}/aircraft/${encodeURIComponent(r.aircraft.id)}`,
        },
        part: text(r.part, actionOf(q, r)),
        standing: standingCell(r),
        was: r.was ? nowCell(r.was, q.day) : text('not affected'),
        change: text(r.change),
        due: isOpen(r) ? text(dueWords(r.treatAs)) : { is: 'nothing' },
        about: isOpen(r) ? text(aboutWords(r, r.line?.dates ?? undefined, q.day)) : { is: 'nothing' },
        paper: text(datesInWords(hangsOn(r) ?? '')),
      },
      words: `${r.aircraft.model} ${r.change}`,
    })),
    empty: 'It would affect none of these aircraft.',
  };
}
function actionOf(q: TryInput, r: Shown): string {
  const line = r.line ?? r.was;
  if (!line) return '';
  return line.directive === q.document.number ? line.title : `${line.directive}: ${line.title}`;
}
function nowCell(l: directive.StandingLine, day: Day): Cell {
  const told = toldOf(l, day);
  const due = isOpen(told) ? dueWords(told.treatAs) : '';
  const about = isOpen(told) ? aboutWords(told, l.dates ?? undefined, day) : '';
  return { is: 'text', text: told.standing.worst, small: [due, about].filter(Boolean).join(', ') };
}

/** Those it leaves out, by reason: what a wrongly written group would show first. */
function notAffected(q: TryInput, rows: readonly Shown[]): TableBlock {
  const touched = new Set(rows.filter((r) => r.standing.worst !== 'not affected').map((r) => r.aircraft.id));
  const reasons = new Map<string, string[]>();
  for (const a of q.aircraft) {
    if (touched.has(a.id)) continue;
    const why = a.whyNot ?? 'it has none of the parts that it looks at';
    reasons.set(why, [...(reasons.get(why) ?? []), a.registration]);
  }
  const SHOWN = 12;
  return {
    block: 'table',
    title: 'Not affected, and why',
    columns: [
      { key: 'why', title: 'Reason', align: 'left' },
      { key: 'aircraft', title: 'Aircraft', align: 'left' },
      { key: 'count', title: 'How many', align: 'right' },
    ],
    rows: [...reasons]
      .sort((a, b) => b[1].length - a[1].length)
      .map(([why, names]) => ({
        id: why,
        cells: {
          why: text(capital(datesInWords(why))),
          aircraft: text(names.slice(0, SHOWN).join(', ') + (names.length > SHOWN ? ' and more' : '')),
          count: { is: 'quantity', value: names.length, unit: '', places: 0, text: number(names.length) },
        },
      })),
    empty: 'It would affect every aircraft.',
  };
}
