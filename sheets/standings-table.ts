import type { Day, record } from '../engine/index.ts';
import { alternativeWords } from './approval-words.ts';
import { count, datesInWords, range, yearsOf } from './display.ts';
import type { Cell, TableBlock } from './model.ts';
import {
  type Assessment,
  aboutWords,
  atOnce,
  BEFORE_PAPERS,
  dueLine,
  dueWords,
  identity,
  isOpen,
  keyOf,
  leftWords,
  type Outlooks,
  partName,
  standingCell,
  unsettled,
  worstFirst,
} from './standing.ts';
import { shownSteps } from './working.ts';

/** Every action on every part, the worse side first. */
export function standingsTable(
  all: readonly Assessment[],
  outlooks: Outlooks,
  things: ReadonlyMap<string, record.Thing>,
  today: Day,
): TableBlock {
  return {
    block: 'table',
    title: 'Where it stands',
    columns: [
      { key: 'part', title: 'Part', align: 'left' },
      { key: 'directive', title: 'Directive', align: 'left' },
      { key: 'standing', title: 'Standing', align: 'left' },
      { key: 'line', title: 'Next ten years', align: 'left' },
      { key: 'counted', title: 'Counted', align: 'right' },
      { key: 'left', title: 'Left', align: 'right' },
      { key: 'due', title: 'Due at', align: 'right' },
      { key: 'about', title: 'About', align: 'right' },
    ],
    rows: saidOnce(worstFirst(all, outlooks)).map((a) => {
      const o = outlooks.get(keyOf(a));
      const thing = things.get(a.subject);
      const open = isOpen(a);
      const left = a.treatAs.left;
      const cells: Record<string, Cell> = {
        part: { is: 'text', text: partName(thing, a.subject), small: identity(thing) },
        directive: {
          is: 'text',
          text: `${a.directive} issue ${a.issue}`,
          small: [open || a.affected.yes ? a.action.title : whyNot(a), alternativeWords(a)].filter(Boolean).join('; '),
        },
        standing: standingCell(a),
        line: dueLine(a, o, today),
        counted: a.counted
          ? {
              is: 'quantity',
              value: { low: a.counted.low, high: a.counted.high },
              unit: a.counted.unit,
              places: a.counted.unit === 'h' ? 1 : 0,
              text: `${range(a.counted, a.counted.unit === 'h' ? 1 : 0)} ${a.counted.unit === 'h' ? 'h' : a.counted.called.split(' ').at(-1)}`,
            }
          : { is: 'nothing' },
        left: open && left ? text(leftOf(a, left)) : { is: 'nothing' },
        due: open ? text(dueWords(a.treatAs)) : { is: 'nothing' },
        about: open ? text(aboutWords(a, o, today)) : { is: 'nothing' },
      };
      return { id: keyOf(a), cells, working: shownSteps(a.working) };
    }),
    empty: 'No directive is adopted by this shop. Adopt one, and it stands here.',
  };
}
/** What does not affect a part is said once for a directive and a reason, not for each of its actions. */
const saidOnce = (all: readonly Assessment[]): Assessment[] => {
  const said = new Set<string>();
  return all.filter((a) => {
    const words = `${a.subject}|${a.directive}|${a.affected.because}`;
    if (isOpen(a) || a.affected.yes) return true;
    return !said.has(words) && said.add(words);
  });
};
/** Nothing is left where it is due now, whatever its limit leaves: a paper is missing, or the directive acts at once. */
const leftOf = (a: Assessment, left: NonNullable<Assessment['treatAs']['left']>): string =>
  left.value < 0
    ? `overdue by ${unsettled(a) ? 'up to ' : ''}${leftWords(left)}`
    : atOnce(a)
      ? 'none'
      : leftWords(left);
const text = (s: string): Cell => (s ? { is: 'text', text: s } : { is: 'nothing' });

/** An action that waits for a finding is named; a directive that does not affect the part gives its reason. */
const whyNot = (a: Assessment): string =>
  a.affected.because.startsWith('no finding') ? `${a.action.title}: ${a.affected.because}` : a.affected.because;
const PAPERS = 4;
type Paper = Assessment['papers'][number];
/** Both ends of what a paper would give, the sooner first: the reading at which it is due need not rise with what is left. */
const inOrder = (p: Paper): Paper['ifWorst']['dueAt'][] => {
  const [a, b] = [p.ifWorst.dueAt, p.ifBest.dueAt];
  const later =
    (a.total_s ?? 0) > (b.total_s ?? Number.POSITIVE_INFINITY) ||
    (a.landings ?? 0) > (b.landings ?? Number.POSITIVE_INFINITY) ||
    (a.day !== null && b.day !== null && a.day > b.day);
  return later ? [b, a] : [a, b];
};
/** Papers that would settle it, best first, for what bites first. */
export function papersTable(a: Assessment, title: string): TableBlock {
  const due = (d: Assessment['papers'][number]['ifWorst']['dueAt']): string => dueWords({ ...a.treatAs, dueAt: d });
  const unit = unitWords(a);
  const rest = a.papers.length - PAPERS;
  return {
    block: 'table',
    title,
    columns: [
      { key: 'paper', title: 'Paper', align: 'left' },
      { key: 'if', title: 'Then due at', align: 'right' },
      { key: 'wide', title: 'Stays open', align: 'right' },
    ],
    rows: [
      ...a.papers.slice(0, PAPERS).map((p, i) => {
        const words = datesInWords(p.paper);
        const told = words.includes(p.from.slice(0, 4)) && words.includes(p.to.slice(0, 4));
        return {
          id: `${p.gap}:${i}`,
          cells: {
            paper: { is: 'text', text: words, ...(told ? {} : { small: yearsOf(p) }) } as Cell,
            if: text(between(...(inOrder(p).map(due) as [string, string]))),
            wide: text(
              p.staysWide === 0
                ? 'settled'
                : `by ${range({ low: p.staysWide, high: p.staysWide }, unit === 'h' ? 1 : 0)} ${unit}`,
            ),
          },
        };
      }),
      {
        id: 'nothing',
        cells: {
          paper: {
            is: 'text',
            text: 'Nothing found: the worse side counts',
            ...(rest > 0 ? { small: `${count(rest, 'more paper')} would tell less` } : {}),
          } as Cell,
          if: text(dueWords(a.treatAs)),
          wide: { is: 'nothing' } as Cell,
        },
      },
    ],
    empty: 'Nothing is missing.',
  };
}
/** In what the answer stays open: the unit of the limit that governs. */
const unitWords = (a: Assessment): string => {
  const unit = a.treatAs.left?.unit ?? a.couldBecome.left?.unit ?? 'counted';
  return unit === 'counted' ? (a.counted?.called ?? 'counted') : unit;
};
/** "4 654 to 4 832 landings": the unit once. */
const between = (w: string, b: string): string => {
  if (w === b) return w;
  const unit = [' landings', ' h'].find((u) => w.endsWith(u) && b.endsWith(u));
  if (w === BEFORE_PAPERS) return `from ${w} to ${b}`;
  return `${unit ? w.slice(0, -unit.length) : w} to ${b}`;
};
