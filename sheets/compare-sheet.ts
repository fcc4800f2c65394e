import type { Bounds, Day, record } from '../engine/index.ts';
import { findingsBlock } from './aircraft-sheet.ts';
import { capital, count, day as dayWords, number, range, yearsOf } from './display.ts';
import { aircraftBlock, emptySheet, evidenceOf, f, type ShopNamed, t } from './frame.ts';
import type { Block, Cell, Sheet, Span, TableBlock } from './model.ts';
import {
  type Assessment,
  aboutWords,
  dueAtWords,
  dueWords,
  isOpen,
  keyOf,
  needsAct,
  type Outlooks,
  partInSentence,
  partName,
  shownOutlooks,
  shownWorst,
  unsettled,
  withoutPaper,
  worstFirst,
} from './standing.ts';

/** One aircraft on one set of papers. */
export interface Side {
  readonly thing: record.Thing;
  readonly parts: readonly record.Thing[];
  readonly lives: ReadonlyMap<string, record.Life>;
  readonly assessments: readonly Assessment[];
  readonly outlooks: Outlooks;
  readonly model: record.RecordModel;
  readonly day: Day;
}
export interface CompareInput {
  readonly before: Side;
  readonly after: Side;
  readonly shop: ShopNamed;
  /** What is taken otherwise, as the beginning of a sentence: "With these 3 entries". */
  readonly otherwise: string;
  /** Number of the last entry that is written: findings name the others as what is about to be written. */
  readonly last?: number;
}

const nothing: Cell = { is: 'nothing' };
const text = (s: string, small?: string): Cell => (s ? { is: 'text', text: s, ...(small ? { small } : {}) } : nothing);
const standing = (a: Assessment): string => shownWorst(a);
const due = (a: Assessment): string => (isOpen(a) ? dueWords(a.treatAs) : '');
const about = (a: Assessment, s: Side): string => aboutWords(a, s.outlooks.get(keyOf(a)), s.day);
const could = (a: Assessment): string => (isOpen(a) && !a.notComputed && unsettled(a) ? a.standing.best : '');
const couldDue = (a: Assessment): string => (isOpen(a) && !a.notComputed ? dueWords(a.couldBecome) : '');
const told = (a: Assessment, s: Side): string =>
  JSON.stringify([standing(a), could(a), due(a), couldDue(a), about(a, s), a.notComputed]);

interface Pair {
  readonly key: string;
  readonly before: Assessment | undefined;
  readonly after: Assessment | undefined;
}
/** Every action on every part, as it stands and as it would stand; the worse of the two decides the order. */
function pairsOf(q: CompareInput): Pair[] {
  const by = (s: Side) => new Map(s.assessments.map((a) => [keyOf(a), a]));
  const [b, a] = [by(q.before), by(q.after)];
  const ranked = worstFirst([...q.after.assessments, ...q.before.assessments], q.after.outlooks).map(keyOf);
  return [...new Set(ranked)].map((key) => ({ key, before: b.get(key), after: a.get(key) }));
}
const changed = (q: CompareInput, p: Pair): boolean =>
  !p.before || !p.after || told(p.before, q.before) !== told(p.after, q.after);

/** What entries that are not written, or a forecast made otherwise, would change: before beside after. */
export function compareSheet(given: CompareInput): Sheet {
  const shown = (s: Side): Side => ({ ...s, outlooks: shownOutlooks(s.assessments, s.outlooks) });
  const q: CompareInput = { ...given, before: shown(given.before), after: shown(given.after) };
  const { after } = q;
  const pairs = pairsOf(q);
  const moved = pairs.filter((p) => changed(q, p));
  const figures = figuresTable(q);
  const found = newFindings(q.after, q.before).map((x) => named(x, q.last));
  const settled = newFindings(q.before, q.after);
  const base = emptySheet('aircraft', 'Before and after', after.day, q.shop.invented === true);
  return {
    ...base,
    subject: partName(after.thing),
    titleBlock: aircraftBlock(after.thing, after.lives.get(after.thing.id), after.parts, after.day),
    answer: answer(q, moved, figures),
    because: because(q, pairs.length - moved.length, found.length),
    blocks: [standingsBlock(q, moved, pairs.length), figures, ...gapsBlock(q), ...findingsOf(found, settled)],
    warnings: [],
    provenance: { ...base.provenance, evidence: evidenceOf(after.parts.length ? after.parts : [after.thing]) },
  };
}

function answer(q: CompareInput, moved: readonly Pair[], figures: TableBlock): Span[] {
  const [first] = moved.filter((p) => p.after && isOpen(p.after)).concat(moved);
  const start = `${q.otherwise}, `;
  if (!first && figures.rows.length === 0) return [t(`${start}no standing and no figure of this aircraft changes.`)];
  if (!first) return [t(`${start}no standing changes; the figures of what was lived through do.`)];
  const a = first.after ?? first.before!;
  const name = partInSentence(q.after.model.things.get(a.subject) ?? q.before.model.things.get(a.subject), a.subject);
  const words = (x: Assessment | undefined, s: Side): string => {
    if (!x) return 'nothing asked';
    const then = about(x, s);
    const when = !then || then === 'now' || then.startsWith('not before') ? then.replace('now', '') : `about ${then}`;
    const at = [isOpen(x) ? dueAtWords(x.treatAs) : '', when].filter(Boolean).join(', ');
    return `${unsettled(x) || x.notComputed ? 'treat as ' : ''}${standing(x)}${at ? ` ${at}` : ''}`;
  };
  return [
    t(`${start}${name} (${a.directive}) goes from ${words(first.before, q.before)} to `),
    f(words(first.after, q.after)),
    t('.'),
    ...(moved.length > 1 ? [t(` ${capital(count(moved.length - 1, 'more standing'))} would change.`)] : []),
  ];
}
function because(q: CompareInput, same: number, found: number): string {
  const days = q.before.day === q.after.day ? `On ${dayWords(q.after.day)}` : `Up to ${dayWords(q.after.day)}`;
  return [
    `${days}; nothing of this is written yet.`,
    same
      ? `${capital(count(same, 'standing'))} ${same === 1 ? 'stays' : 'stay'} as ${same === 1 ? 'it is' : 'they are'}.`
      : '',
    found
      ? `${capital(count(found, 'finding'))} would come up: read ${found === 1 ? 'it' : 'them'} before writing.`
      : '',
  ]
    .filter(Boolean)
    .join(' ');
}

const arrow = (before: string, after: string): string =>
  before === after ? before || after : `${before || 'nothing'} → ${after || 'nothing'}`;
function standingsBlock(q: CompareInput, moved: readonly Pair[], all: number): TableBlock {
  return {
    block: 'table',
    title: 'Standings: before and after',
    columns: [
      { key: 'part', title: 'Part', align: 'left' },
      { key: 'directive', title: 'Directive', align: 'left' },
      { key: 'treat', title: 'Treat as', align: 'left' },
      { key: 'could', title: 'Could become', align: 'left' },
      { key: 'due', title: 'Due at', align: 'left' },
      { key: 'about', title: 'About', align: 'left' },
    ],
    rows: moved.map(({ key, before: b, after: a }) => {
      const x = a ?? b!;
      const cell = (of: (y: Assessment, s: Side) => string, absent = ''): Cell =>
        text(arrow(b ? of(b, q.before) : absent, a ? of(a, q.after) : absent));
      return {
        id: key,
        cells: {
          part: text(partName(q.after.model.things.get(x.subject), x.subject)),
          directive: text(`${x.directive} issue ${x.issue}`, x.action.title),
          treat: {
            is: 'standing',
            worst: standing(x),
            best: x.notComputed ? 'due' : x.standing.best,
            act: a ? needsAct(a) : false,
            text: arrow(b ? standing(b) : 'not looked at', a ? standing(a) : 'not looked at'),
            ...(a?.notComputed ? { small: `not computed: ${a.notComputed}` } : {}),
          },
          could: cell((y) => could(y) || 'the same'),
          due: cell(due),
          about: cell(about),
        },
      };
    }),
    empty: all ? 'Every standing stays as it is.' : 'No directive is held against this aircraft.',
  };
}

/** How the bounds of hours and landings move, part by part; parts that keep their figures are left out. */
function figuresTable(q: CompareInput): TableBlock {
  const of = (s: Side, id: string, fact: string): Bounds | null => {
    const life = s.lives.get(id);
    return life?.factNames.includes(fact) ? life.figure(fact, s.day).value : null;
  };
  const ids = [...new Set([...q.after.lives.keys(), ...q.before.lives.keys()])];
  const rows = ids.flatMap((id) => {
    const name = partName(q.after.model.things.get(id) ?? q.before.model.things.get(id), id);
    return (
      [
        ['hours.total', 'h', 1],
        ['landings.total', 'landings', 0],
      ] as const
    ).flatMap(([fact, unit, places]) => {
      const [b, a] = [of(q.before, id, fact), of(q.after, id, fact)];
      const [was, is] = [b ? range(b, places) : 'not known', a ? range(a, places) : 'not known'];
      if (was === is) return [];
      return [
        {
          id: `${id}:${fact}`,
          cells: {
            part: text(name),
            unit: text(unit === 'h' ? 'hours' : 'landings'),
            before: text(was),
            after: text(is),
            change: text(narrowing(b, a, unit, places)),
          } as Record<string, Cell>,
        },
      ];
    });
  });
  return {
    block: 'table',
    title: 'What each part has lived through: before and after',
    columns: [
      { key: 'part', title: 'Part', align: 'left' },
      { key: 'unit', title: 'Counted in', align: 'left' },
      { key: 'before', title: 'Before', align: 'right' },
      { key: 'after', title: 'After', align: 'right' },
      { key: 'change', title: 'What it does', align: 'left' },
    ],
    rows,
    empty: 'Hours and landings of every part stay as they are.',
  };
}
function narrowing(b: Bounds | null, a: Bounds | null, unit: string, places: number): string {
  if (!b || !a) return '';
  const [was, is] = [b.high - b.low, a.high - a.low];
  const half = 0.5 * 10 ** -places;
  if (is < half && was >= half) return `settled: it was open by ${number(was, places)} ${unit}`;
  if (was - is >= half) return `narrower by ${number(was - is, places)} ${unit}`;
  if (is - was >= half) return `wider by ${number(is - was, places)} ${unit}`;
  const by = a.high - b.high;
  return `${by < 0 ? 'less' : 'more'} by ${number(Math.abs(by), places)} ${unit}`;
}

/** Stretches without paper that these entries close, leave or open. */
function gapsBlock(q: CompareInput): TableBlock[] {
  const of = (s: Side) =>
    new Map(
      [...s.lives.values()]
        .flatMap((l) => l.gaps.filter(withoutPaper))
        .map((g) => [`${g.from} ${g.to} ${g.because}`, g]),
    );
  const [b, a] = [of(q.before), of(q.after)];
  const row = (g: record.Gap, what: string) => ({
    id: `${what} ${g.id} ${g.from}`,
    cells: {
      years: text(yearsOf(g), `${dayWords(g.from)} to ${dayWords(g.to)}`),
      because: text(g.because),
      what: text(what),
    },
  });
  const rows = [
    ...[...b].filter(([k]) => !a.has(k)).map(([, g]) => row(g, closedWords(g, [...a.values()]))),
    ...[...a].filter(([k]) => !b.has(k)).map(([, g]) => row(g, openedWords(g, [...b.values()]))),
  ];
  if (!rows.length) return [];
  return [
    {
      block: 'table',
      title: 'Stretches without paper',
      columns: [
        { key: 'years', title: 'Stretch', align: 'left' },
        { key: 'because', title: 'As declared or found', align: 'left' },
        { key: 'what', title: 'With these papers', align: 'left' },
      ],
      rows,
      empty: '',
    },
  ];
}
const overlaps = (a: record.Gap, b: record.Gap): boolean => a.from <= b.to && b.from <= a.to;
const closedWords = (g: record.Gap, left: readonly record.Gap[]): string =>
  left.some((x) => overlaps(x, g)) ? 'closed in part' : 'closed';
const openedWords = (g: record.Gap, before: readonly record.Gap[]): string =>
  before.some((x) => overlaps(x, g)) ? 'what stays of it' : 'opened';

const named = (x: record.Finding, last: number | undefined): record.Finding =>
  last === undefined
    ? x
    : {
        ...x,
        entries: x.entries
          .map((id) => (Number(id) > last ? 'one of these' : id))
          .filter((id, i, all) => all.indexOf(id) === i),
      };
const lineOf = (x: record.Finding): string => `${x.code}|${x.text}`;
function newFindings(of: Side, than: Side): record.Finding[] {
  const all = (s: Side) => [...s.model.findings, ...[...s.lives.values()].flatMap((l) => l.findings)];
  const known = new Set(all(than).map(lineOf));
  return [...new Map(all(of).map((x) => [lineOf(x), x])).values()].filter((x) => !known.has(lineOf(x)));
}
function findingsOf(found: readonly record.Finding[], settled: readonly record.Finding[]): Block[] {
  const of = (all: readonly record.Finding[], title: string): Block[] =>
    all.length ? [{ ...(findingsBlock(all) as Extract<Block, { block: 'findings' }>), title }] : [];
  return [...of(found, 'Would be found in the papers'), ...of(settled, 'No longer found in the papers')];
}
