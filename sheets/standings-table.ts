import type { Day, record } from '../engine/index.ts';
import { datesInWords, range } from './display.ts';
import type { Cell, TableBlock } from './model.ts';
import {
  type Assessment,
  aboutWords,
  dueLine,
  dueWords,
  identity,
  isOpen,
  keyOf,
  leftWords,
  type Outlooks,
  partName,
  standingCell,
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
    rows: worstFirst(all, outlooks).map((a) => {
      const o = outlooks.get(keyOf(a));
      const thing = things.get(a.subject);
      const open = isOpen(a);
      const left = a.treatAs.left;
      const cells: Record<string, Cell> = {
        part: { is: 'text', text: partName(thing, a.subject), small: identity(thing) },
        directive: {
          is: 'text',
          text: `${a.directive} issue ${a.issue}`,
          small: open ? a.action.title : a.affected.yes ? a.action.title : a.affected.because,
        },
        standing: standingCell(a),
        line: dueLine(a, o, today),
        counted: a.counted
          ? {
              is: 'quantity',
              value: { low: a.counted.low, high: a.counted.high },
              unit: a.counted.unit,
              places: a.counted.unit === 'h' ? 1 : 0,
              text: range(a.counted, a.counted.unit === 'h' ? 1 : 0),
            }
          : { is: 'nothing' },
        left:
          open && left ? text(left.value < 0 ? `overdue by ${leftWords(left)}` : leftWords(left)) : { is: 'nothing' },
        due: open ? text(dueWords(a.treatAs)) : { is: 'nothing' },
        about: open ? text(aboutWords(a, o, today)) : { is: 'nothing' },
      };
      return { id: keyOf(a), cells, working: shownSteps(a.working) };
    }),
    empty: 'No directive is adopted by this shop. Adopt one, and it stands here.',
  };
}
const text = (s: string): Cell => (s ? { is: 'text', text: s } : { is: 'nothing' });

/** Papers that would settle it, best first, for what bites first. */
export function papersTable(a: Assessment, title: string): TableBlock {
  const due = (d: Assessment['papers'][number]['ifWorst']['dueAt']): string => dueWords({ ...a.treatAs, dueAt: d });
  return {
    block: 'table',
    title,
    columns: [
      { key: 'paper', title: 'Paper', align: 'left' },
      { key: 'if', title: 'Then due at', align: 'right' },
      { key: 'wide', title: 'Stays open', align: 'right' },
    ],
    rows: [
      ...a.papers.map((p, i) => {
        const [w, b] = [due(p.ifWorst.dueAt), due(p.ifBest.dueAt)];
        return {
          id: `${p.gap}:${i}`,
          cells: {
            paper: {
              is: 'text',
              text: datesInWords(p.paper),
              small: `${p.from.slice(0, 4)} to ${p.to.slice(0, 4)}`,
            } as Cell,
            if: text(w === b ? w : `${w} to ${b}`),
            wide: text(p.staysWide === 0 ? 'settled' : `by ${range({ low: p.staysWide, high: p.staysWide })}`),
          },
        };
      }),
      {
        id: 'nothing',
        cells: {
          paper: { is: 'text', text: 'Nothing found: the worse side counts' } as Cell,
          if: text(dueWords(a.treatAs)),
          wide: { is: 'nothing' } as Cell,
        },
      },
    ],
    empty: 'Nothing is missing.',
  };
}
